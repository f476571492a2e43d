import { describe, expect, test } from 'vitest';
import { angleOf, type Drawing, readDxf, readSvg, Unreadable } from '../../src/proof/index.js';
import { type Chain, circle, dxfOf, reversed, rounded, svgOf } from './drawn.js';

const head = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80">';
const svg = (d: string) => `${head}<g id="pocket"><path d="${d}"/></g></svg>`;

/** Signed area by Green's theorem over fine chords, from the vertices and bulges themselves. */
function areaOf(chain: Chain): number {
  let sum = 0;
  chain.forEach(([x, y, b], i) => {
    const [u, v] = chain[(i + 1) % chain.length]!;
    sum += (x * v - u * y) / 2;
    if (b === 0) return;
    const sweep = 4 * Math.atan(b);
    const r = Math.hypot(u - x, v - y) / 2 / Math.sin(sweep / 2);
    sum += (r * r * (sweep - Math.sin(sweep))) / 2;
  });
  return sum;
}

const teardrop: Chain = [
  [40, 20, 0],
  [50, 40, 1.9],
  [30, 40, 0],
];

describe('reading', () => {
  const shapes: Record<string, Chain> = {
    square: rounded(
      [
        [20, 20],
        [60, 20],
        [60, 50],
        [20, 50],
      ],
      0,
    ),
    rounded: rounded(
      [
        [20, 20],
        [60, 20],
        [60, 50],
        [20, 50],
      ],
      6,
    ),
    notched: rounded(
      [
        [20, 20],
        [60, 20],
        [60, 50],
        [40, 30],
        [20, 50],
      ],
      3,
    ),
    circle: circle(50, 40, 17),
    teardrop,
    halves: [
      [20, 40, 1],
      [60, 40, 1],
    ],
  };

  for (const [name, chain] of Object.entries(shapes)) {
    test(`${name}: area and vertices come back from SVG and DXF, in mm and inches, both ways round`, () => {
      for (const c of [chain, reversed(chain)]) {
        const area = areaOf(c);
        for (const d of [readSvg(svgOf('plug', [c])), readDxf(dxfOf('plug', [c]))]) {
          expect(d.name).toBe('plug');
          expect(d.nesting.area[0]).toBeCloseTo(area, 3);
          expect(d.edges.count).toBe(c.length);
          c.forEach(([x, y], i) => {
            expect(d.edges.x0[i]).toBeCloseTo(x, 5);
            expect(d.edges.y0[i]).toBeCloseTo(y, 5);
          });
        }
        const small = c.map(([x, y, b]) => [x / 10, y / 10, b] as const);
        const sheet = { unit: 'in', width: 20, height: 16 } as const;
        for (const d of [readSvg(svgOf('plug', [small], sheet)), readDxf(dxfOf('plug', [small], 'in'))]) {
          expect(d.unit).toBe('in');
          expect(d.nesting.area[0]! / (2.54 * 2.54 * area)).toBeCloseTo(1, 6);
        }
      }
    });
  }

  test('the lowest and highest points of arcs are where circles have them', () => {
    const box = readSvg(svgOf('pocket', [circle(50, 40, 17)])).index;
    expect(
      [box.tree!.minX, box.tree!.minY, box.tree!.maxX, box.tree!.maxY].map((v) => Math.round(v * 1e4) / 1e4),
    ).toEqual([33, 23, 67, 57]);
  });

  test('nesting: outer boundaries, holes, parts in holes', () => {
    const d = readSvg(
      svgOf('pocket', [circle(50, 50, 5), circle(50, 50, 20), circle(50, 50, 12), circle(120, 50, 20)]),
    );
    expect([...d.nesting.hole]).toEqual([0, 0, 1, 0]);
    expect(d.nesting.parts).toBe(3);
    expect([...d.nesting.insideLeft]).toEqual([1, 1, -1, 1]);
  });

  test('relative and repeated path commands, packed flags, numbers without spaces', () => {
    const plain = readSvg(svg('M10 10L30 10L30 20A5 5 0 0 1 25 25L10 25Z'));
    for (const d of [
      'm10,10h20v10a5 5 0 01-5 5H10z',
      'M10 10 30 10 30 20A5,5,0,0,1,25,25L10 25z',
      'M1e1+10l20 0 0 10a5 5 0 0 1-5 5L.1e2 25Z',
    ]) {
      expect([...readSvg(svg(d)).edges.x0], d).toEqual([...plain.edges.x0]);
      expect([...readSvg(svg(d)).edges.y1], d).toEqual([...plain.edges.y1]);
    }
    // y points up: the first corner is 10 from the upper edge of an 80 mm sheet.
    expect(plain.edges.y0[0]).toBe(70);
  });

  test('a viewBox in other units and off the origin', () => {
    const text =
      '<svg width="2in" height="1in" viewBox="10 20 200 100"><g id="plug"><path d="M10 120h100v-50h-100z"/></g></svg>';
    const d = readSvg(text);
    expect([d.width, d.height]).toEqual([50.8, 25.4]);
    expect(d.edges.x1[0]).toBeCloseTo(25.4, 12);
    expect(d.edges.y1[1]).toBeCloseTo(12.7, 12);
    expect(d.nesting.area[0]).toBeCloseTo(25.4 * 12.7, 9);
  });

  test('marks are not looked at, comments and declarations are stepped over', () => {
    const text = `<?xml version="1.0"?><!DOCTYPE svg><!-- <g id="pocket"> -->${head}<g id="marks" transform="scale(2)"><path d="C"/><circle r="3"/></g><g id="pocket"><path d="M1 1h9v9z"/></g></svg>`;
    expect(readSvg(text).edges.count).toBe(3);
  });

  test('angles agree with the engine to 1e-15', () => {
    for (let k = -200; k <= 200; k++) {
      const [x, y] = [Math.cos(k / 60), Math.sin(k / 60)];
      expect(Math.abs(angleOf(y, x) - Math.atan2(y, x))).toBeLessThan(1e-15);
    }
    expect(angleOf(0, -1)).toBe(Math.PI);
  });
});

describe('what cannot be read is refused with its place', () => {
  const refused = (read: (text: string) => Drawing, text: string, message: RegExp) => {
    expect(() => read(text)).toThrow(Unreadable);
    expect(() => read(text)).toThrow(message);
  };

  test('SVG', () => {
    refused(readSvg, '', /no <svg>/);
    refused(readSvg, 'hello', /no <svg>/);
    refused(readSvg, `${head}<g id="pocket"></g>`, /never closed/);
    refused(readSvg, `${head}</g></svg>`, /closes nothing.*line 1, column 90/);
    refused(
      readSvg,
      `${head}\n<g id="pocket">\n  <path d="M1 1h5\nv5q1 1 2 2z"/></g></svg>`,
      /command q.*line 4, column 3/,
    );
    refused(readSvg, svg('M1 1C1 2 3 4 5 6Z'), /command C/);
    refused(readSvg, svg('M1 1h5v5'), /open contour/);
    refused(readSvg, svg('M1 1h5v5M20 20h5v5z'), /open contour/);
    refused(readSvg, svg('h5v5z'), /must begin with M/);
    refused(readSvg, svg('M1 1h5v5zzz'), /must begin with M/);
    refused(readSvg, svg('M1 1 A5 4 0 0 1 9 9z'), /elliptical/);
    refused(readSvg, svg('M1 1 A0 0 0 0 1 9 9z'), /radius 0/);
    refused(readSvg, svg('M1 1 A5 5 0 2 1 9 9z'), /flag/);
    refused(readSvg, svg('M1 1 A5 5 0 1 1 1 1z'), /ends where it starts/);
    refused(readSvg, svg('M1 1h5vNaNz'), /number/);
    refused(readSvg, svg('M1 1h5v1e999z'), /number/);
    refused(readSvg, svg('M1 1z'), /without edges/);
    refused(
      readSvg,
      `${head}<g id="pocket" transform="scale(2)"><path d="M1 1h5v5z"/></g></svg>`,
      /transform/,
    );
    refused(
      readSvg,
      `${head}<g id="pocket"><path transform="scale(2)" d="M1 1h5v5z"/></g></svg>`,
      /transform/,
    );
    refused(
      readSvg,
      `${head}<g transform="scale(2)"><g id="pocket"><path d="M1 1h5v5z"/></g></g></svg>`,
      /directly in <svg>/,
    );
    refused(readSvg, `${head}<g id="pocket"><circle r="4"/></g></svg>`, /only <path>/);
    refused(readSvg, `${head}<g id="pocket"><path/></g></svg>`, /no d/);
    refused(readSvg, `${head}<g id="pocket"/><g id="plug"/></svg>`, /second group/);
    refused(readSvg, `${head}</svg>`, /nothing to cut/);
    refused(readSvg, '<svg width="10" height="10mm" viewBox="0 0 1 1"></svg>', /width must be a length/);
    refused(readSvg, '<svg width="10mm" height="10in" viewBox="0 0 1 1"></svg>', /different units/);
    refused(readSvg, '<svg width="10mm" height="10mm" viewBox="0 0 1 2"></svg>', /scale is not certain/);
    refused(readSvg, '<svg width="10mm" height="10mm"></svg>', /viewBox/);
  });

  test('DXF', () => {
    const good = dxfOf('pocket', [circle(20, 20, 5)]);
    expect(readDxf(good).edges.count).toBe(3);
    expect(readDxf(good.replaceAll('\n', '\r\n')).edges.count).toBe(3);
    refused(readDxf, '', /no EOF/);
    refused(readDxf, good.slice(0, good.length / 2), /EOF|breaks off|has no value/);
    refused(readDxf, good.replace('\n70\n4\n', '\n70\n5\n'), /INSUNITS/);
    refused(readDxf, good.replace('$INSUNITS', '$OTHER'), /INSUNITS is not set/);
    refused(readDxf, good.replace('\n90\n3\n70\n1\n', '\n90\n3\n70\n0\n'), /open contour/);
    refused(readDxf, good.replace('\n90\n3\n', '\n90\n4\n'), /3 vertices where group 90 says 4/);
    refused(readDxf, good.replace('POCKET', 'OTHER'), /nothing on layer/);
    refused(readDxf, good.replace('\nMARKS', '\nPOCKET'), /LINE on layer POCKET/);
    refused(readDxf, good.replace('\n42\n', '\n42\nx'), /expected a number.*line \d+/);
    refused(readDxf, good.replace('\n42\n', '\n4x\n'), /group code/);
    refused(readDxf, good.replace('\n90\n3\n', '\n230\n-1\n90\n3\n'), /turned over/);
  });

  test('damaged text of some size is refused at once, not after a long search', () => {
    const long = 'M1 1h5v5z '.repeat(40_000);
    expect(() => readSvg(`${head}<g id="pocket"><path d="${long}`)).toThrow(/closing quote/);
    expect(() => readSvg(`${head}${'<!--'.repeat(100_000)}`)).toThrow(/never closed/);
    expect(() => readSvg(svg(`${long}Q`))).toThrow(/command Q/);
    expect(() => readSvg(`${head}${'<g>'.repeat(100_000)}`)).toThrow(/never closed/);
    expect(() => readDxf('0\n'.repeat(300_000))).toThrow(/EOF/);
  });
});
