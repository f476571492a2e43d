import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { enforce } from '../../src/cutter/enforce.js';
import { tightPlaces } from '../../src/cutter/tight.js';
import {
  area,
  bulgedContour,
  type Contour,
  circle,
  polygon,
  reversedContour,
} from '../../src/geometry/region.js';
import { Refusal } from '../../src/schema/fault.js';
import { randomPolygon, regular, seeded } from '../support/random.js';

const piece = (name: string, ...contours: Contour[]) => ({ name, region: { contours } });
const rule = { r: 1.6, thin: 'drop', touch: 'part' } as const;

function star(points: number, outer: number, inner: number): Contour {
  return polygon(
    Array.from({ length: 2 * points }, (_, i): [number, number] => {
      const a = (i * Math.PI) / points;
      const d = i % 2 === 0 ? outer : inner;
      return [d * Math.cos(a), d * Math.sin(a)];
    }),
  );
}

/** Two squares of side 10 standing on their tips, `gap` mm apart. */
function tipToTip(gap: number): [Contour, Contour] {
  const half = 5 * Math.SQRT2;
  return [regular(4, -half - gap / 2, 0, half), regular(4, half + gap / 2, 0, half)];
}

describe('corners alone', () => {
  it('makes a 12-pointed star 24 lines and 24 arcs of exactly r, its lines where they were', () => {
    const source = star(12, 46, 30);
    const safe = enforce({ pieces: [piece('star', source)] }, { ...rule, r: 1.9 });
    const [contour] = safe.region.contours;
    const arcs = contour!.filter((e) => e.r !== 0);
    expect([contour!.length, arcs.length, safe.changes.length]).toEqual([48, 24, 0]);
    for (const a of arcs) {
      expect(Math.abs(a.r)).toBe(1.9);
      for (const [x, y] of [
        [a.x0, a.y0],
        [a.x1, a.y1],
      ] as const)
        expect(Math.hypot(x - a.cx, y - a.cy)).toBeCloseTo(1.9, 10);
    }
    for (const e of contour!.filter((l) => l.r === 0)) {
      const home = source.find((s) => offLine(s, e.x0, e.y0) < 1e-9 && offLine(s, e.x1, e.y1) < 1e-9);
      expect(home).toBeDefined();
    }
  });

  it('loses at each corner what the closed form says, convex and concave', () => {
    // r^2 (cot(a/2) - (pi - a)/2) for the corner's angle a: lost where convex, gained where concave.
    const l = polygon([
      [0, 0],
      [20, 0],
      [20, 8],
      [8, 8],
      [8, 20],
      [0, 20],
    ]);
    const safe = enforce({ pieces: [piece('L', l)] }, rule);
    const corner = rule.r * rule.r * (1 - Math.PI / 4);
    expect(area(safe.region)).toBeCloseTo(20 * 8 + 12 * 8 - 5 * corner + corner, 9);
  });

  it('merges collinear edges first: one line an edge', () => {
    const square = polygon([
      [0, 0],
      [5, 0],
      [9, 0],
      [20, 0],
      [20, 20],
      [0, 20],
    ]);
    expect(enforce({ pieces: [piece('s', square)] }, rule).region.contours[0]!.length).toBe(8);
  });

  it('rounds corners between lines and arcs, and between arcs', () => {
    const half = bulgedContour([
      { x: -20, y: 0, bulge: 0 },
      { x: 20, y: 0, bulge: 0.6 },
    ]);
    const lens = bulgedContour([
      { x: -20, y: 40, bulge: 0.5 },
      { x: 20, y: 40, bulge: 0.5 },
    ]);
    const safe = enforce({ pieces: [piece('half', half), piece('lens', lens)] }, rule);
    expect(safe.changes).toEqual([]);
    for (const c of safe.region.contours) {
      expect(c.filter((e) => Math.abs(e.r) === rule.r).length).toBe(2);
      expect(tightPlaces([c], rule.r)).toEqual([]);
    }
  });

  it('leaves what is already round alone, bit for bit in the places that matter', () => {
    const once = enforce({ pieces: [piece('star', star(9, 40, 26))] }, rule);
    const twice = enforce({ pieces: once.pieces }, rule);
    const [a, b] = [once.region.contours[0]!, twice.region.contours[0]!];
    expect(b.length).toBe(a.length);
    a.forEach((e, i) => {
      expect(Math.hypot(e.x0 - b[i]!.x0, e.y0 - b[i]!.y0)).toBeLessThan(1e-9);
    });
  });
});

describe('crumbs', () => {
  it('are left out without leaving corners, wherever the contour starts', () => {
    const { points, r } = JSON.parse(
      readFileSync(new URL('../corpus/star-with-crumbs.json', import.meta.url), 'utf8'),
    ) as { points: [number, number][]; r: number };
    const sharp = polygon(points);
    for (let turn = 0; turn < 3; turn++) {
      const start = [...sharp.slice(turn), ...sharp.slice(0, turn)];
      const [contour] = enforce({ pieces: [piece('star', start)] }, rule).region.contours;
      const shortest = Math.min(...contour!.map((e) => Math.hypot(e.x1 - e.x0, e.y1 - e.y0)));
      expect(shortest).toBeGreaterThan(0.001);
      expect(tightPlaces([contour!], r)).toEqual([]);
    }
  });
});

describe('narrow places', () => {
  // Two 10 mm squares on their tips, 0.6 mm apart, r = 1.6: opening and closing in turn swings for ever between two
  // pieces of together 195.60 mm2 and one of 197.38 mm2.
  it('parts two pieces that nearly touch, evenly', () => {
    const [a, b] = tipToTip(0.6);
    const safe = enforce({ pieces: [piece('a', a), piece('b', b)] }, rule);
    expect(safe.region.contours.length).toBe(2);
    expect(area(safe.region)).toBeCloseTo(193.09, 2);
    expect(safe.changes.map((c) => c.kind)).toEqual(['parted']);
    const [left, right] = safe.pieces.map((p) => area(p.region));
    expect(left).toBeCloseTo(right!, 6);
    expect(tightPlaces(safe.region.contours, rule.r)).toEqual([]);
  });

  it('joins them by a strap 2r wide when asked', () => {
    const [a, b] = tipToTip(0.6);
    const safe = enforce({ pieces: [piece('a', a), piece('b', b)] }, { ...rule, touch: 'join' });
    expect(safe.region.contours.length).toBe(1);
    expect(area(safe.region)).toBeCloseTo(203.99, 2);
    expect(safe.changes.map((c) => c.kind)).toContain('joined');
    expect(tightPlaces(safe.region.contours, rule.r)).toEqual([]);
  });

  it('bridges a gap inside one piece without being asked, and says so', () => {
    const safe = enforce({ pieces: [piece('both', ...tipToTip(0.6))] }, rule);
    expect(safe.region.contours.length).toBe(1);
    expect(safe.changes.map((c) => c.kind)).toContain('filled');
  });

  it('keeps two hexagons 2 mm apart two pieces, though closing would weld them soundly', () => {
    const apart = 10 * Math.sqrt(3) + 2;
    const pieces = [
      piece('a', regular(6, 0, 0, 10, Math.PI / 6)),
      piece('b', regular(6, apart, 0, 10, Math.PI / 6)),
    ];
    const parted = enforce({ pieces }, rule);
    expect(parted.region.contours.map((c) => c.length)).toEqual([12, 12]);
    const [left, right] = parted.region.contours.map((c) => c.map((e) => e.x0));
    expect(Math.min(...right!) - Math.max(...left!)).toBeGreaterThan(2 * rule.r);
    expect(Math.min(...right!) - Math.max(...left!)).toBeLessThan(2 * rule.r + 0.01);
    expect(enforce({ pieces }, { ...rule, touch: 'join' }).region.contours.length).toBe(1);
  });

  it('settles touching and overlapping pieces', () => {
    const w = 10 * Math.sqrt(3);
    const three = [
      piece('a', regular(6, 0, 0, 10, Math.PI / 6)),
      piece('b', regular(6, w, 0, 10, Math.PI / 6)),
      piece('c', regular(6, w / 2, 15, 10, Math.PI / 6)),
    ];
    const parted = enforce({ pieces: three }, rule);
    expect(parted.region.contours.map((c) => c.length)).toEqual([12, 12, 12]);
    expect(tightPlaces(parted.region.contours, rule.r)).toEqual([]);
    const overlapping = enforce({ pieces: [piece('a', circle(0, 0, 8)), piece('b', circle(9, 0, 8))] }, rule);
    expect(overlapping.region.contours.length).toBe(1);
    expect(overlapping.changes.map((c) => c.kind)).toContain('merged');
  });

  it('drops a limb thinner than the cutter, or refuses it with its place', () => {
    // Two 10 mm squares joined by a bar 2 mm wide and 10 mm long.
    const dumbbell = polygon([
      [0, 0],
      [10, 0],
      [10, 4],
      [20, 4],
      [20, 0],
      [30, 0],
      [30, 10],
      [20, 10],
      [20, 6],
      [10, 6],
      [10, 10],
      [0, 10],
    ]);
    const safe = enforce({ pieces: [piece('bell', dumbbell)] }, rule);
    expect(safe.region.contours.length).toBe(2);
    expect(safe.changes.map((c) => c.kind)).toContain('split');
    const refused = (() => {
      try {
        enforce({ pieces: [piece('bell', dumbbell)] }, { ...rule, thin: 'refuse' });
      } catch (e) {
        return e as Refusal;
      }
      return null;
    })();
    expect(refused).toBeInstanceOf(Refusal);
    expect(refused!.code).toBe('thin-limb');
    expect(refused!.message).toContain('bell is narrower than 3.20 mm');
    expect(refused!.at![1]).toBeCloseTo(5, 1);
  });

  it('lists a piece, a hole and a part that vanish', () => {
    const speck = enforce({ pieces: [piece('dot', circle(3, 4, 1))] }, rule);
    expect(speck.region.contours).toEqual([]);
    expect(speck.changes).toEqual([{ kind: 'vanished', piece: 'dot', at: [3, 4], size: 2 }]);
    const plate = [regular(4, 0, 0, 20), reversedContour(circle(1, 2, 1.2))];
    const filled = enforce({ pieces: [piece('plate', ...plate)] }, rule);
    expect(filled.region.contours.length).toBe(1);
    expect(filled.changes.map((c) => [c.kind, c.at])).toEqual([['filled', [1, 2]]]);
  });

  it('keeps gaps and limbs of exactly 2r', () => {
    const comb = polygon([
      [0, 0],
      [16, 0],
      [16, 12],
      [12.8, 12],
      [12.8, 4],
      [9.6, 4],
      [9.6, 12],
      [6.4, 12],
      [6.4, 4],
      [3.2, 4],
      [3.2, 12],
      [0, 12],
    ]);
    const safe = enforce({ pieces: [piece('comb', comb)] }, rule);
    expect(safe.region.contours.length).toBe(1);
    // 3 teeth with round ends, 2 slots with round bottoms, two outer corners below.
    const corner = rule.r * rule.r * (1 - Math.PI / 4);
    expect(area(safe.region)).toBeCloseTo(16 * 4 + 3 * 3.2 * 8 - 8 * corner + 4 * corner, 4);
  });
});

describe('random fields', () => {
  it.each(['part', 'join'] as const)('have reach r on both sides, %s, 60 dense fields', (touch) => {
    let settled = 0;
    for (let seed = 0; seed < 60; seed++) {
      const random = seeded(seed * 7919 + 13);
      const size = 12 + random() * 30;
      const pieces = Array.from({ length: 2 + Math.floor(random() * 12) }, (_, i) =>
        piece(`p${i}`, randomPolygon(random, random() * size, random() * size, 3 + random() * 8)),
      );
      const r = 1.2 + random() * 0.8;
      const safe = enforce({ pieces }, { r, thin: 'drop', touch });
      expect(tightPlaces(safe.region.contours, r), `seed ${seed}`).toEqual([]);
      if (safe.changes.some((c) => c.kind === 'parted' || c.kind === 'joined')) settled++;
    }
    // Guard against a pass on fields where nothing interacts.
    expect(settled).toBeGreaterThan(20);
  });
});

function offLine(e: { x0: number; y0: number; x1: number; y1: number }, x: number, y: number): number {
  const l = Math.hypot(e.x1 - e.x0, e.y1 - e.y0);
  return Math.abs((x - e.x0) * (e.y1 - e.y0) - (y - e.y0) * (e.x1 - e.x0)) / l;
}

describe('what is nothing but a line', () => {
  const strip = (width: number): Contour =>
    polygon([
      [0, 0],
      [20, 0],
      [20, width],
      [0, width],
    ]);
  const changes = (...contours: Contour[]) =>
    enforce({ pieces: [{ name: 'strip', region: { contours } }] }, { r: 1.6, thin: 'drop', touch: 'part' })
      .changes;

  it('is said to have vanished, as a hole to be filled, and a speck goes without a word', () => {
    const where = { piece: 'strip', at: [10, 5e-10], size: 20 };
    expect(changes(strip(1e-9))).toEqual([{ kind: 'vanished', ...where }]);
    const plate = polygon([
      [-9, -9],
      [29, -9],
      [29, 9],
      [-9, 9],
    ]);
    expect(changes(plate, reversedContour(strip(1e-9)))).toEqual([{ kind: 'filled', ...where }]);
    expect(
      changes(
        plate,
        polygon([
          [0, 0],
          [0.0005, 0],
          [0, 0.0005],
        ]),
      ),
    ).toEqual([]);
  });
});
