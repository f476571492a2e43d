import { describe, expect, it } from 'vitest';
import { drawing } from '../../../src/generators/drawing/drawing.js';
import { repairRemarks } from '../../../src/generators/drawing/outlines/remarks.js';
import { Repairs } from '../../../src/generators/drawing/outlines/repair.js';
import { recorder } from '../../../src/generators/recorder.js';
import { area, distanceToBoundary, flatten, type Region } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { CUT, expectSound, outlineWith } from '../../support/artwork.js';
import { seeded } from '../../support/random.js';
import {
  arcEntity,
  as,
  circleEntity,
  dxf,
  lineEntity,
  lines,
  poly,
  rectangle,
  region,
  repairs,
  said,
} from './dxf-support.js';

type Place = [number, number];

/** Corners of a polygon on a closed curve, each off by up to `noise` mm. */
function noisy(n: number, noise: number, at: (a: number) => Place): Place[] {
  const random = seeded(n);
  return Array.from({ length: n }, (_, k): Place => {
    const [x, y] = at((k * 2 * Math.PI) / n);
    const l = Math.hypot(x, y);
    const off = 1 + ((2 * random() - 1) * noise) / l;
    return [x * off, y * off];
  });
}

/** The farthest that any point of `a` lies from the boundary of `b`. */
function farthest(a: Region, b: Region): number {
  let worst = 0;
  for (const c of a.contours)
    for (const [x, y] of flatten(c, 1e-4)) worst = Math.max(worst, distanceToBoundary(b, x, y));
  return worst;
}

const whole = (points: Place[]): Region => region(dxf(poly(points)), as({ refit: 0 }));

describe('joining', () => {
  const square = (gap: number) =>
    dxf(
      lines([
        [gap, 0],
        [10, 0],
      ]) +
        lines([
          [10, 0],
          [10, 10],
          [0, 10],
          [0, 0],
        ]),
    );
  it('closes gaps up to join, and tells each with its place and size', () => {
    const text = square(0.04);
    expect(area(region(text))).toBeCloseTo(100, 9);
    expect(repairs(text)).toEqual([
      { kind: 'joined', at: [expect.closeTo(-5, 9), -5], size: expect.closeTo(0.04, 9), count: 1 },
    ]);
    expect(repairs(square(0))).toEqual([]);
  });

  it('runs lines on to their corner, so that no side turns', () => {
    const text = dxf(
      lines([
        [0.03, 0],
        [10, 0],
        [10, 10],
        [0, 10],
        [0, 0.02],
      ]),
    );
    const [corner] = region(text).contours[0].filter((e) => e.x0 < 0 && e.y0 < 0);
    expect([corner.x0, corner.y0]).toEqual([expect.closeTo(-5, 9), expect.closeTo(-5, 9)]);
  });

  it('cuts lines that run past their corner back to it', () => {
    const text = dxf(
      lines([
        [-0.03, 0],
        [10.02, 0],
      ]) +
        lines([
          [10, -0.02],
          [10, 10],
          [0, 10],
          [0, -0.03],
        ]),
    );
    expect(area(region(text))).toBeCloseTo(100, 9);
  });

  it('goes by size as made: a drawing scaled up has its gaps scaled up', () => {
    expect(() => region(square(0.04), as(), 2)).toThrow(/is 0\.080 mm away, more than join, 0\.05 mm/);
    expect(area(region(square(0.08), as(), 0.5))).toBeCloseTo(25, 9);
  });

  it('joins an arc to its neighbours, keeping its sweep', () => {
    const text = dxf(arcEntity(0, 0, 10, 0.1, 180) + lineEntity(-10, 0, 10, 0));
    expect(Math.abs(area(region(text)) - 50 * Math.PI)).toBeLessThan(0.2);
    expect(repairs(text)[0]).toMatchObject({
      kind: 'joined',
      size: expect.closeTo(20 * Math.sin(Math.PI / 3600), 6),
    });
  });

  it('names every gap it leaves, up to eight: place, size, entity and what to do', () => {
    const open = (x: number): string =>
      lines([
        [x, 0],
        [x + 5, 0],
        [x + 5, 5],
        [x, 5],
        [x, 0.7],
      ]);
    expect(said(dxf(open(3)))).toBe(
      'part.dxf:28: LINE: ends open at (3, 0) mm: the nearest other end, of the LINE on line 64, is 0.700 mm away, more than join, 0.05 mm; close the gap, or set join to 0.701 mm or more',
    );
    expect(area(region(dxf(open(3)), as({ join: 0.701 })))).toBeCloseTo(25, 9);
    const many = said(dxf(Array.from({ length: 12 }, (_, k) => open(10 * k)).join(''))).split('\n');
    expect(many.length).toBe(9);
    expect(many[8]).toBe('part.dxf: and 4 more open places');
  });

  it('says so of a line far from any other', () => {
    expect(said(dxf(rectangle(0, 0, 9, 9) + lineEntity(20, 0, 40, 0)))).toMatch(
      /LINE: ends open at \(20, 0\) mm: its own other end, is 20\.000 mm away, .*take the line out$/,
    );
  });
});

describe('lines drawn twice', () => {
  it('takes shapes drawn twice once, from whichever corner and in whichever sense', () => {
    const text = dxf(
      rectangle(0, 0, 10, 20) +
        poly([
          [10, 20],
          [10, 0],
          [0, 0],
          [0, 20],
        ]) +
        circleEntity(50, 0, 5) +
        circleEntity(50, 0, 5),
    );
    expect(area(region(text))).toBeCloseTo(200 + 25 * Math.PI, 9);
    expect(repairs(text).map((r) => [r.kind, r.size])).toEqual([
      ['duplicate', 60],
      ['duplicate', expect.closeTo(10 * Math.PI, 9)],
    ]);
  });

  it('takes loose lines drawn twice once', () => {
    const ring: Place[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
      [0, 0],
    ];
    const text = dxf(lines(ring) + lines([...ring].reverse()) + lines(ring));
    expect(area(region(text))).toBeCloseTo(100, 9);
    expect(repairs(text).filter((r) => r.kind === 'duplicate').length).toBe(8);
  });

  it('takes a line on the side of a closed shape once', () => {
    const text = dxf(rectangle(0, 0, 10, 10) + lineEntity(2, 10, 8, 10));
    expect(area(region(text))).toBeCloseTo(100, 9);
    expect(repairs(text)).toEqual([{ kind: 'overlap', at: [0, 5], size: 6, count: 1 }]);
  });

  it('merges stretches that lines and arcs share', () => {
    const text = dxf(
      arcEntity(0, 0, 10, 0, 100) +
        arcEntity(0, 0, 10, 60, 180) +
        lineEntity(-10, 0, 4, 0) +
        lineEntity(10, 0, -3, 0),
    );
    expect(area(region(text))).toBeCloseTo(50 * Math.PI, 6);
    expect(repairs(text).map((r) => [r.kind, r.size])).toEqual(
      expect.arrayContaining([
        ['overlap', expect.closeTo((10 * 40 * Math.PI) / 180, 6)],
        ['overlap', expect.closeTo(7, 6)],
      ]),
    );
  });
});

describe('crossings and specks', () => {
  it('resolves a bow tie, and tells its crossing', () => {
    const text = dxf(
      poly([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]),
    );
    expect(area(region(text))).toBeCloseTo(50, 9);
    expect(repairs(text)).toEqual([
      { kind: 'crossing', at: [expect.closeTo(0, 9), expect.closeTo(0, 9)], size: 0, count: 1 },
    ]);
  });

  it('drops what is smaller across than speck, shapes and holes and open crumbs', () => {
    const text = dxf(
      rectangle(0, 0, 10, 10) +
        circleEntity(20, 5, 0.09) +
        circleEntity(5, 5, 0.08) +
        lineEntity(15, 5, 15.1, 5),
    );
    expect(area(region(text))).toBeCloseTo(100, 9);
    expect(
      repairs(text)
        .filter((r) => r.kind === 'speck')
        .map((r) => Number(r.size.toFixed(6))),
    ).toEqual(expect.arrayContaining([0.18, 0.16, 0.1]));
    const kept = dxf(rectangle(0, 0, 10, 10) + circleEntity(20, 5, 0.11));
    expect(area(region(kept))).toBeCloseTo(100 + Math.PI * 0.0121, 9);
  });
});

describe('refitting', () => {
  it('makes a circle of a circle in 720 noisy segments', () => {
    const points = noisy(720, 0.004, (a) => [20 * Math.cos(a), 20 * Math.sin(a)]);
    const fitted = region(dxf(poly(points)));
    expect(fitted.contours[0].length).toBe(4);
    expect(farthest(fitted, whole(points))).toBeLessThan(0.01);
    expect(farthest(whole(points), fitted)).toBeLessThan(0.01);
    expect(repairs(dxf(poly(points))).map((r) => r.kind)).toEqual(['refitted']);
  });

  it('makes few arcs of any curve in short segments, within refit both ways', () => {
    const points = noisy(2000, 0.003, (a) => [
      (30 + 4 * Math.sin(5 * a)) * Math.cos(a),
      (30 + 4 * Math.sin(5 * a)) * Math.sin(a),
    ]);
    for (const refit of [0.01, 0.05]) {
      const fitted = region(dxf(poly(points)), as({ refit }));
      expectSound(fitted);
      expect(fitted.contours[0].length).toBeLessThan(80);
      const before = whole(points);
      expect(farthest(fitted, before)).toBeLessThan(refit);
      expect(farthest(before, fitted)).toBeLessThan(refit);
      expect(Math.abs(area(fitted) - area(before))).toBeLessThan(refit * 220);
    }
  });

  it('keeps corners: a square whose sides are noisy has four', () => {
    const random = seeded(3);
    const side = (x0: number, y0: number, x1: number, y1: number): Place[] =>
      Array.from({ length: 100 }, (_, k): Place => {
        const off = k === 0 ? 0 : (random() - 0.5) * 0.008;
        return [
          x0 + ((x1 - x0) * k) / 100 + (x0 === x1 ? off : 0),
          y0 + ((y1 - y0) * k) / 100 + (y0 === y1 ? off : 0),
        ];
      });
    const points = [
      ...side(0, 0, 20, 0),
      ...side(20, 0, 20, 20),
      ...side(20, 20, 0, 20),
      ...side(0, 20, 0, 0),
    ];
    const [contour] = region(dxf(poly(points))).contours;
    expect(contour.map((e) => `${e.x0.toFixed(2)} ${e.y0.toFixed(2)}`).sort()).toEqual([
      '-10.00 -10.00',
      '-10.00 10.00',
      '10.00 -10.00',
      '10.00 10.00',
    ]);
  });

  it('leaves what is drawn with care alone: polygons, tangent arcs, and all of it at 0', () => {
    const octagon = noisy(8, 0, (a) => [20 * Math.cos(a), 20 * Math.sin(a)]);
    expect(region(dxf(poly(octagon))).contours[0].length).toBe(8);
    const slot = dxf(
      poly([
        [0, 0],
        [20, 0, 1],
        [20, 10],
        [0, 10, 1],
      ]),
    );
    expect(repairs(slot)).toEqual([]);
    const points = noisy(720, 0.004, (a) => [20 * Math.cos(a), 20 * Math.sin(a)]);
    expect(whole(points).contours[0].length).toBe(720);
  });

  it('refits arcs that meet at angles', () => {
    const points = noisy(120, 0.004, (a) => [20 * Math.cos(a), 20 * Math.sin(a)]);
    const text = dxf(
      poly(points.map(([x, y], i): [number, number, number] => [x, y, i % 2 ? 0.004 : 0.008])),
    );
    expect(region(text, as({ refit: 0.03 })).contours[0].length).toBe(4);
    expect(region(text, as({ refit: 0 })).contours[0].length).toBe(120);
  });
});

describe('telling of repairs', () => {
  const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });
  const remarksOf = (text: string, given: Values = {}) => {
    const defaults = Object.fromEntries(
      drawing.parameters.map((p) => [p.name, p.default] as [string, number | string | boolean]),
    );
    const pen = recorder();
    const drawings = new Map([['a.dxf', text]]);
    drawing.draw({ ...defaults, file: 'a.dxf', ...given }, lid, pen, { drawings, fonts: new Map() }, CUT);
    return pen.artwork().remarks ?? [];
  };
  const gaps = dxf(
    lines([
      [0.03, 0],
      [20, 0],
      [20, 30],
      [0, 30],
      [0, 0.04],
    ]),
  );

  it('says once of each kind how many, the largest and its place on the piece', () => {
    expect(remarksOf(gaps)).toEqual([
      {
        code: 'drawing-joined',
        at: [expect.closeTo(-10, 6), expect.closeTo(-15, 6)],
        numbers: { count: 1, size: expect.closeTo(0.05, 9) },
        text: 'the drawing: 1 gap between lines was joined, the widest 0.05 mm; look there, or set join smaller to be told instead',
      },
    ]);
  });

  it('places it where the figure is turned, mirrored and moved to', () => {
    const [said] = remarksOf(gaps, { turn: Math.PI / 2, mirror: true, x: 3, y: -4 });
    // (-10, -15) mirrored is (10, -15), a quarter turn on (15, 10).
    expect(said.at).toEqual([expect.closeTo(18, 6), expect.closeTo(6, 6)]);
  });

  it('joins by the size it is made at, width and fit too', () => {
    const tiny = dxf(
      lines([
        [0.003, 0],
        [2, 0],
        [2, 3],
        [0, 3],
        [0, 0],
      ]),
    );
    expect(remarksOf(tiny, { width: 20 })[0].numbers.size).toBeCloseTo(0.03, 6);
    expect(remarksOf(tiny, { width: 20, join: 0.04 })[0].code).toBe('drawing-joined');
    expect(() => remarksOf(tiny, { width: 20, join: 0.02 })).toThrow(/ends open at/);
  });

  it('has words for every kind', () => {
    const all = new Repairs();
    for (const kind of [
      'joined',
      'closed',
      'duplicate',
      'overlap',
      'crossing',
      'speck',
      'refitted',
    ] as const) {
      all.add(kind, [1, 2], 0.5);
      all.add(kind, [3, 4], 0.7);
    }
    all.add('left-out', [0, 0], 0, 'POINT, the first on line 7', 3);
    const said = repairRemarks(all.list(), (p) => p);
    expect(said.map((r) => r.text)).toMatchInlineSnapshot(`
      [
        "the drawing: 2 gaps between lines were joined, the widest 0.7 mm; look there, or set join smaller to be told instead",
        "the drawing: 2 outlines were closed over a gap, the widest 0.7 mm; look there, or set join smaller to be told instead",
        "the drawing: 2 lines or shapes drawn twice were taken once, the longest 0.7 mm",
        "the drawing: 2 lines running along another were taken once there, over 0.7 mm at the most",
        "the drawing: outlines cross at 2 places: what lies within an odd number of them is the figure; draw them apart to have it otherwise",
        "the drawing: 2 specks were dropped, the largest 0.7 mm across; set speck to 0 mm to keep them",
        "the drawing: 2 runs of short segments became lines and arcs, 0.7 mm off at the most; set refit to 0 mm to keep them",
        "the drawing: 3 POINT, the first on line 7, were left out: no outline is read from them",
      ]
    `);
    expect(
      said.every((r) => r.code === 'drawing-left-out' || r.at?.[0] === 3 || r.code === 'drawing-crossings'),
    ).toBe(true);
  });

  it('keeps count past those it keeps one by one', () => {
    const all = new Repairs();
    for (let k = 0; k < 2000; k++) all.add('speck', [k, 0], k / 1e4);
    expect(all.list().length).toBeLessThan(600);
    expect(repairRemarks(all.list(), (p) => p)[0]).toMatchObject({
      numbers: { count: 2000, size: 0.1999 },
      at: [1999, 0],
    });
  });
});
