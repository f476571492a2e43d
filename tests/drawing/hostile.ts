import {
  blockBomb,
  bomb,
  dxf,
  groups,
  inserted,
  junk,
  MILLION,
  manyPoints,
  manyVertices,
  selfInsert,
  square,
  stairs,
  svg,
  uses,
} from './hostile-texts.js';

/** A drawing meant to harm: what lies in the file, or how large it is; how the recipe names it; what the refusal says. */
export interface Hostile {
  readonly title: string;
  readonly file: string;
  readonly content?: () => string | Uint8Array;
  /** Bytes of a file that holds nothing but zeros. */
  readonly size?: number;
  /** The file as the recipe names it, if that is not its name. */
  readonly named?: string;
  /** The piece's name. */
  readonly name?: string;
  readonly says: RegExp;
}

export const HOSTILE: readonly Hostile[] = [
  { title: 'an XML bomb', file: 'a.svg', content: bomb, says: /declares entities in its DOCTYPE/ },
  {
    title: 'an entity from outside',
    file: 'a.svg',
    content: () => `<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>${svg('<desc>&x;</desc>')}`,
    says: /declares entities in its DOCTYPE/,
  },
  {
    title: 'a DOCTYPE from outside, and a style sheet and image from the net',
    file: 'a.svg',
    content: () =>
      `<!DOCTYPE svg SYSTEM "http://localhost:1/x.dtd">${svg('<style>@import url(http://localhost:1/x.css)</style><image xlink:href="http://localhost:1/x.png" width="9" height="9"/>')}`,
    says: /image/,
  },
  {
    title: 'ten thousand groups in each other',
    file: 'a.svg',
    content: () => svg(`${'<g>'.repeat(10_000)}<rect width="9" height="9"/>${'</g>'.repeat(10_000)}`),
    says: /nested deeper than \d+/,
  },
  { title: 'a trillion uses', file: 'a.svg', content: uses, says: /the drawing has more than \d+ edges/ },
  {
    title: 'a hundred megabytes of SVG',
    file: 'a.svg',
    size: 1e8,
    says: /holds 100\.0 MB; a drawing is \d+ MB at most/,
  },
  {
    title: 'a hundred megabytes of DXF',
    file: 'a.dxf',
    size: 1e8,
    says: /holds 100\.0 MB; a DXF is \d+ MB at most/,
  },
  { title: 'a million points', file: 'a.svg', content: manyPoints, says: /a\.svg/ },
  {
    title: 'a million points in two characters each',
    file: 'a.svg',
    content: stairs,
    says: /more than \d+ edges/,
  },
  { title: 'a million vertices', file: 'a.dxf', content: manyVertices, says: /more than \d+ edges/ },
  {
    title: 'shapes of no size',
    file: 'a.svg',
    content: () => svg('<rect width="0" height="9"/><path d="M5 5z"/><circle r="0"/><path d="M0 0L9 9z"/>'),
    says: /encloses nothing/,
  },
  {
    title: 'circles and outlines of no size',
    file: 'a.dxf',
    content: () =>
      dxf(
        groups(0, 'CIRCLE', 8, 0, 10, 5, 20, 5, 40, 0) +
          groups(0, 'LWPOLYLINE', 8, 0, 90, 3, 70, 1, 10, 1, 20, 1, 10, 1, 20, 1, 10, 1, 20, 1),
      ),
    says: /a\.dxf/,
  },
  {
    title: 'coordinates that are no numbers',
    file: 'a.svg',
    content: () =>
      svg('<path d="M0 0L1e308 1e308L-1e308 NaN"/><rect x="1e308" width="1e308" height="1e999"/>'),
    says: /a\.svg:1: <path>/,
  },
  {
    title: 'vertices that are no numbers',
    file: 'a.dxf',
    content: () =>
      dxf(
        groups(
          0,
          'LWPOLYLINE',
          8,
          0,
          90,
          3,
          70,
          1,
          10,
          'NaN',
          20,
          '1e308',
          10,
          '-1e308',
          20,
          0,
          10,
          'inf',
          20,
          9,
        ),
      ),
    says: /a\.dxf:\d+/,
  },
  {
    title: 'a circle wider than the world',
    file: 'a.dxf',
    content: () => dxf(square + groups(0, 'CIRCLE', 8, 0, 10, 0, 20, 0, 40, '1e300')),
    says: /a\.dxf/,
  },
  {
    title: 'a trillion blocks',
    file: 'a.dxf',
    content: blockBomb,
    says: /the drawing has more than \d+ edges/,
  },
  { title: 'a block that holds itself', file: 'a.dxf', content: selfInsert, says: /a\.dxf/ },
  {
    title: 'a thousand million rows and columns',
    file: 'a.dxf',
    content: () => inserted(groups(70, 32_767, 71, 32_767, 44, 1, 45, 1)),
    says: /the drawing has more than \d+ edges/,
  },
  {
    title: 'a spline of the degree a million',
    file: 'a.dxf',
    content: () =>
      dxf(
        groups(0, 'SPLINE', 8, 0, 70, 9, 71, MILLION, 72, 8, 73, 4, 40, 0, 40, 1, 10, 0, 20, 0, 10, 9, 20, 9),
      ),
    says: /a\.dxf:\d+: SPLINE/,
  },
  { title: 'junk named as an SVG', file: 'a.svg', content: junk, says: /a\.svg/ },
  { title: 'junk named as a DXF', file: 'a.dxf', content: junk, says: /a\.dxf/ },
  { title: 'an empty file', file: 'a.svg', content: () => '', says: /a\.svg/ },
  { title: 'a DXF named as an SVG', file: 'a.svg', content: () => dxf(square), says: /a\.svg.* DXF/ },
  {
    title: 'an SVG named as a DXF',
    file: 'a.dxf',
    content: () => svg('<rect width="9" height="9"/>'),
    says: /a\.dxf.* SVG/,
  },
  {
    title: 'a PNG by its first bytes',
    file: 'a.svg',
    content: () => Uint8Array.of(137, 80, 78, 71, 13, 10, 26, 10, 0),
    says: /a\.svg/,
  },
  {
    title: 'a file of the system',
    file: 'a.svg',
    named: '/etc/passwd',
    says: /must be a path from the recipe's folder/,
  },
  {
    title: 'an address',
    file: 'a.svg',
    named: 'file:///etc/passwd',
    says: /must be a path from the recipe's folder/,
  },
  { title: 'a way up to the system', file: 'a.svg', named: `${'../'.repeat(20)}etc/passwd`, says: /passwd/ },
  {
    title: 'a device that never ends',
    file: 'a.svg',
    named: `${'../'.repeat(20)}dev/zero`,
    says: /is not a file that can be read/,
  },
  {
    title: 'a name that leads out of the folder',
    file: 'a.svg',
    content: () => svg('<rect width="60" height="60"/>'),
    name: '../../evil',
    says: /name/,
  },
  {
    title: 'a name that is a path',
    file: 'a.svg',
    content: () => svg('<rect width="60" height="60"/>'),
    name: '/tmp/evil',
    says: /name/,
  },
];
