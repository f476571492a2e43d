import { describe, expect, it } from 'vitest';
import { openDrawing } from '../../../src/generators/drawing/open.js';
import { AS_DRAWN } from '../../../src/generators/drawing/outlines/options.js';
import { readSvg } from '../../../src/generators/drawing/read-svg.js';
import {
  area,
  bounds,
  circle,
  distanceToBoundary,
  flatten,
  type Region,
} from '../../../src/geometry/region.js';
import { placedRegion } from '../../../src/geometry/transform.js';
import { drawingDxf } from '../../../src/output/dxf.js';
import type { Marks } from '../../../src/output/marks.js';
import { frameOf } from '../../../src/output/ring.js';
import { BadInput } from '../../../src/schema/fault.js';
import { expectSound } from '../../support/artwork.js';
import { combined, differenceArea } from '../../support/reference.js';
import { ringsOf } from '../../support/rings.js';
import { as, circleEntity, dxf, lines, poly, read, rectangle, region, repairs } from './dxf-support.js';
import { corpusText } from './support.js';

const kinds = (text: string) => repairs(text).map((r) => r.kind);

describe('what outlines enclose', () => {
  it('goes by the even-odd rule: rings in rings', () => {
    const text = dxf([9, 7, 5, 3].map((r) => circleEntity(0, 0, r)).join(''));
    expect(area(region(text))).toBeCloseTo(Math.PI * (81 - 49 + 25 - 9), 9);
    expect(read(text).figures(1).length).toBe(2);
  });

  it('agrees with Clipper2 on two shapes that cross', () => {
    const text = dxf(rectangle(0, 0, 20, 10) + rectangle(5, 5, 8, 20));
    const r = region(text);
    const both: [number, number][][] = [
      [
        [-10, -12.5],
        [10, -12.5],
        [10, -2.5],
        [-10, -2.5],
      ],
      [
        [-5, -7.5],
        [3, -7.5],
        [3, 12.5],
        [-5, 12.5],
      ],
    ];
    // In one but not in both: 200 + 160 - 2 x 40.
    expect(area(r)).toBeCloseTo(280, 9);
    expect(differenceArea(ringsOf(r.contours, 1e-3), combined('xor', [both[0]], [both[1]]))).toBeLessThan(
      1e-4,
    );
    expect(
      repairs(text)
        .filter((k) => k.kind === 'crossing')
        .map((k) => k.at.map((v) => Math.round(v * 1e6) / 1e6)),
    ).toEqual(
      expect.arrayContaining([
        [-5, -2.5],
        [3, -2.5],
      ]),
    );
  });

  it('joins loose lines given in any order and sense', () => {
    const text = dxf(
      lines([
        [0, 0],
        [10, 0],
      ]) +
        lines([
          [0, 10],
          [10, 10],
        ]) +
        lines([
          [10, 10],
          [10, 0],
        ]) +
        lines([
          [0, 0],
          [0, 10],
        ]),
    );
    expect(area(region(text))).toBeCloseTo(100, 9);
    expect(kinds(text)).toEqual([]);
  });

  it('takes the outline round shapes that share a line, and says what it left out', () => {
    // A honeycomb of seven cells whose walls are drawn once: 3 sqrt(3) / 2 s^2 each.
    const side = 10;
    const walls = new Map<string, [number, number][]>();
    const centres: [number, number][] = [[0, 0]];
    for (let k = 0; k < 6; k++)
      centres.push([
        Math.sqrt(3) * side * Math.cos((k * Math.PI) / 3 + Math.PI / 6),
        Math.sqrt(3) * side * Math.sin((k * Math.PI) / 3 + Math.PI / 6),
      ]);
    const at = (v: number): number => Math.round(v * 1e4) / 1e4;
    for (const [x, y] of centres)
      for (let k = 0; k < 6; k++) {
        const [p, q] = [k, k + 1].map((j): [number, number] => [
          at(x + side * Math.cos((j * Math.PI) / 3)),
          at(y + side * Math.sin((j * Math.PI) / 3)),
        ]);
        walls.set([p, q].map(String).sort().join(), [p, q]);
      }
    const text = dxf([...walls.values()].map(lines).join(''));
    expect(Math.abs(area(region(text)) - 7 * 1.5 * Math.sqrt(3) * 100)).toBeLessThan(0.02);
    const [left] = repairs(text).filter((r) => r.kind === 'left-out');
    expect(left).toMatchObject({ count: 12, what: 'line between shapes' });
  });

  it('takes a room built on to the middle of a wall', () => {
    const text = dxf(
      rectangle(0, 0, 10, 10) +
        lines([
          [10, 2],
          [15, 2],
          [15, 8],
          [10, 8],
        ]),
    );
    expect(area(region(text))).toBeCloseTo(130, 9);
  });

  it('keeps a fillet that leaves a shared wall tangentially', () => {
    const text = dxf(
      rectangle(0, 0, 20, 10) +
        poly(
          [
            [5, 10, Math.SQRT2 - 1],
            [10, 15],
            [0, 15],
            [0, 10],
          ],
          false,
        ),
    );
    const r = region(text);
    expectSound(r);
    // The room is 10 x 5 less the corner (10, 10), a square of 5 round a quarter circle about (5, 15).
    expect(area(r)).toBeCloseTo(200 + 50 - (25 - (25 * Math.PI) / 4), 9);
  });
});

describe('an SVG of outlines', () => {
  const how = { ...AS_DRAWN, lines: 'outlines' as const };
  const page = (inside: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">${inside}</svg>`;
  const sum = (inside: string): number =>
    readSvg(page(inside), 'a.svg', how)
      .figures(1)
      .reduce((n, p) => n + area(p.region), 0);
  it('takes lines as the outlines of shapes, whatever their width', () => {
    const line = 'fill="none" stroke="black" stroke-width=".1"';
    expect(sum(`<rect x="5" y="5" width="20" height="10" ${line}/>`)).toBeCloseTo(200, 6);
    expect(
      sum(`<g ${line}><path d="M5 5h20"/><path d="M25 5v10h-20"/><path d="M5 15v-10"/></g>`),
    ).toBeCloseTo(200, 6);
    expect(sum(`<g ${line}><circle cx="30" cy="30" r="10"/><circle cx="30" cy="30" r="5"/></g>`)).toBeCloseTo(
      75 * Math.PI,
      6,
    );
    // White inside its line is a shape; white by itself takes away; a filled shape needs no line.
    expect(sum('<rect x="5" y="5" width="20" height="10" fill="#fff" stroke="#000"/>')).toBeCloseTo(200, 6);
    expect(
      sum(
        `<rect x="5" y="5" width="20" height="10" ${line}/><rect x="5" y="5" width="5" height="10" fill="#fff"/>`,
      ),
    ).toBeCloseTo(150, 6);
    expect(
      sum('<rect x="5" y="5" width="20" height="10" fill="#000" stroke="#000" stroke-width="3"/>'),
    ).toBeCloseTo(200, 6);
  });

  it('names the place of a gap on the page', () => {
    const open = '<path id="wing" d="M5 5h20v10h-20v-9" fill="none" stroke="black"/>';
    expect(() => sum(open)).toThrow(
      /^a\.svg:1: <path id="wing">: ends open at \(5, 5\) mm: its own other end, is 1\.000 mm away/,
    );
  });

  it('still shows strokes as bands where not asked', () => {
    const [piece] = readSvg(page('<path d="M5 5h20" stroke="black" stroke-width="2"/>'), 'a.svg').figures(1);
    expect(area(piece.region)).toBeCloseTo(40, 9);
  });
});

describe('choosing the reader', () => {
  const open = (name: string, text: string) =>
    openDrawing({ drawings: new Map([[name, text]]), fonts: new Map() }, name, 'pattern.file');
  const own = dxf(rectangle(0, 0, 5, 5));
  it('goes by what the file holds', () => {
    expect(open('a.dxf', own).extent).toBe(5);
    expect(open('a.DXF', `999\nmade by hand\n${own}`).extent).toBe(5);
    expect(open('a.drawing', own.replaceAll('\n', '\r\n')).extent).toBe(5);
    expect(open('a.svg', corpusText('shapes')).page).not.toBe(null);
  });

  it('tells of a wrong ending', () => {
    expect(() => open('a.svg', own)).toThrow(
      'a.svg: holds a DXF drawing, though its name ends in .svg; rename it to end in .dxf',
    );
    expect(() => open('a.dxf', corpusText('shapes'))).toThrow(
      /holds an SVG drawing.*rename it to end in \.svg/,
    );
    expect(() => open('a.dxf', 'junk')).toThrow(BadInput);
    expect(() => open('b.svg', 'junk')).toThrow(BadInput);
  });
});

const marks: Marks = {
  outline: [],
  datum: { circle: circle(0, 0, 1), lines: [] },
  square: circle(0, 0, 1),
  label: { text: 'not to be cut', x: 0, y: 0, height: 1 },
};

/** The farthest that a point of one boundary lies from the other, mm, both ways. */
function farthest(a: Region, b: Region): number {
  let worst = 0;
  for (const [p, q] of [
    [a, b],
    [b, a],
  ])
    for (const c of p.contours)
      for (const [x, y] of flatten(c, 0.001)) worst = Math.max(worst, distanceToBoundary(q, x, y));
  return worst;
}

function centred(r: Region): Region {
  const b = bounds(r.contours);
  return placedRegion(r, -(b.minX + b.maxX) / 2, -(b.minY + b.maxY) / 2);
}

describe('our own files read back', () => {
  it.each([
    ['path-commands', 'mm'],
    ['arcs', 'in'],
    ['shapes', 'mm'],
    ['strokes', 'in'],
  ] as const)('%s in %s gives the same region to the grid of the file', (name, units) => {
    const whole: Region = {
      contours: readSvg(corpusText(name), 'a.svg')
        .figures(1)
        .flatMap((p) => p.region.contours),
    };
    const text = drawingDxf('POCKET', whole, marks, frameOf({ width: 300, height: 300 }, units));
    // Their marks hold text, which is no outline.
    expect(() => read(text).figures(1)).toThrow(/TEXT on layer "MARKS": is text/);
    const back = read(text, as({ layer: 'POCKET', refit: 0, speck: 0 }));
    const again: Region = { contours: back.figures(1).flatMap((p) => p.region.contours) };
    expect(back.unit).toBe(units);
    expect(again.contours.length).toBe(whole.contours.length);
    // A millionth of the unit: 1e-6 mm, or 2.54e-5 mm; half of that each way, and the arcs' middles a little more.
    expect(farthest(centred(again), centred(whole))).toBeLessThan(units === 'mm' ? 1e-5 : 2.54e-5);
    expect(back.repairsAt(1)).toEqual([]);
  });

  it('would see an edge moved by 1e-4 mm', () => {
    const a = region(dxf(rectangle(0, 0, 10, 10)));
    const b = region(dxf(rectangle(0, 0, 10.0002, 10)));
    expect(farthest(a, b)).toBeGreaterThan(0.9e-4);
  });
});
