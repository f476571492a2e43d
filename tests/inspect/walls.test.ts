import { describe, expect, it } from 'vitest';
import { area, type Contour, circle, contains, polygon, reversedContour } from '../../src/geometry/region.js';
import { fieldWalls, plugLimbs, type ThinWall } from '../../src/inspect/sums/walls/walls.js';
import { outlineWith } from '../support/artwork.js';
import { regular, seeded } from '../support/random.js';
import { type Inside, insidePolygon, leastDistance } from './nearest-labels.js';
import { box, degree, face, type Given, pairOf, recipeOf } from './wall-shapes.js';

const walls = (contours: readonly Contour[], given: Given = {}, outline = face): readonly ThinWall[] =>
  fieldWalls(recipeOf(given), outline, pairOf(contours));
const limbs = (contours: readonly Contour[], given: Given = {}): readonly ThinWall[] =>
  plugLimbs(recipeOf(given), pairOf(contours));

const ring = (outer: number, inner: number): Contour[] => [
  circle(0, 0, outer),
  reversedContour(circle(0, 0, inner)),
];

/** A step of the axis, as the docstring of ThinWall has it. */
const step = (depth: number): number => depth / 37;

describe('a wall of field between two circles', () => {
  const [R, gap] = [10, 1];
  const circles = [circle(-R - gap / 2, 0, R), circle(R + gap / 2, 0, R)];
  it('is as wide as they are apart, and as long as it is under 1.5 times that', () => {
    const [wall, ...more] = walls(circles);
    expect(more).toEqual([]);
    expect(wall!.least.width).toBeCloseTo(gap, 9);
    expect(wall!.least.at[0]).toBeCloseTo(0, 6);
    expect(wall!.least.at[1]).toBeCloseTo(0, 6);
    expect(wall).toMatchObject({ beside: 'pocket', freeEnds: 0, closed: false, held: 'foot', height: 8 });
    // On the line between them, y from the middle: width 2 (sqrt((R + gap / 2)^2 + y^2) - R).
    const y = Math.sqrt((R + 0.75 * gap) ** 2 - (R + 0.5 * gap) ** 2);
    expect(Math.abs(wall!.length - 2 * y)).toBeLessThan(0.02);
  });
  it('beside the edge of the face is a wall too, unless the pocket runs over the edge', () => {
    // 96 / 2 - 2 x 20 = 8 mm, 40 deep.
    const [wall] = walls([circle(20, 0, 20)], { depth: 40 });
    expect(wall!.beside).toBe('edge');
    expect(wall!.least.width).toBeCloseTo(8, 9);
    expect(wall!.least.at[0]).toBeCloseTo(44, 5);
    expect(walls([circle(30, 0, 20)], { depth: 40 })).toEqual([]);
  });
  it('is none where there is nothing, or nothing near', () => {
    expect(walls([])).toEqual([]);
    expect(walls([circle(-20, 0, 9), circle(20, 0, 9)])).toEqual([]);
  });
});

describe('a wedge of field', () => {
  // Its sides open by 0.1 to either side of x = 0, from 1 mm at y = 0.
  const tan = 0.1;
  const cos = 1 / Math.sqrt(1 + tan * tan);
  const left = polygon([
    [-15, 0],
    [-0.5, 0],
    [-0.5 - 30 * tan, 30],
    [-15, 30],
  ]);
  const right = polygon([
    [0.5, 0],
    [15, 0],
    [15, 30],
    [0.5 + 30 * tan, 30],
  ]);
  /** Where a ball that touches both sides has this width: (0.5 + y tan) cos = width / 2. */
  const at = (width: number): number => (width / 2 / cos - 0.5) / tan;
  // Below y = 0 it is followed between the two corners until the contacts are 120 degrees apart.
  const below = 0.5 / Math.tan(60 * degree);
  it('is measured at its narrow end, and its length under a width is that of the closed form', () => {
    const [wall] = walls([left, right], { depth: 10 });
    expect(wall!.least.width).toBeCloseTo(1, 9);
    expect(wall!.least.at[1]).toBeCloseTo(0, 6);
    expect(Math.abs(wall!.length - (at(1.5) + below))).toBeLessThan(step(10));
    // Right across the grain 4 times is usual: too slender up to a width of 10 / 4, from where its sides are abreast.
    expect(Math.abs(wall!.over - at(2.5))).toBeLessThan(2 * step(10));
    expect(wall!.slender).toBe(true);
  });
});

describe('a wall between two slots', () => {
  const slots = [box(-10, -9, 10, -1), box(-10, 1, 10, 9)];
  // Their wall runs along x, 2 mm wide and 12 high: slenderness 6. Limits 4 + 4 cos^2 of the angle.
  it.each([
    [0, 0, 8, false],
    [90, 90, 4, true],
    [30, 30, 7, false],
    [150, 30, 7, false],
    [-60, 60, 5, true],
  ])('with the grain at %i runs at %i degrees to it', (grain, angle, limit, slender) => {
    const [wall, ...more] = walls(slots, { depth: 12, grain });
    expect(more).toEqual([]);
    expect(wall!.least.width).toBeCloseTo(2, 9);
    expect(wall!.worst.angle / degree).toBeCloseTo(angle, 6);
    expect(wall!.worst.limit).toBeCloseTo(limit, 9);
    expect(wall!.worst.over).toBeCloseTo(6 / limit, 9);
    expect(wall!.slender).toBe(slender);
    // 20 mm of slot, and on between the corners until the contacts are 120 degrees apart.
    expect(Math.abs(wall!.length - (20 + 2 / Math.tan(60 * degree)))).toBeLessThan(2 * step(12));
    // White ash 6.5 N/mm2 (Wood Handbook table 5-3a): 6.5 x 2^2 / (6 x 12).
    expect(wall!.breaks).toBeCloseTo(26 / 72, 9);
  });
  it('cut through is held at its ends only, and a thin skin is as good as none', () => {
    const through = walls(slots, { depth: 12, floor: 0 })[0]!;
    expect(through).toMatchObject({ held: 'both ends', skinHolds: true });
    expect(through.breaks).toBeCloseTo((4 * 6.5 * 12 * 4) / (3 * through.length ** 2), 9);
    expect(walls(slots, { depth: 12, floor: 1 })[0]).toMatchObject({ held: 'foot', skinHolds: true });
    expect(walls(slots, { depth: 12, floor: 1.5 })[0]).toMatchObject({ held: 'foot', skinHolds: false });
  });
  it('that is shorter than wide is not too slender, as its ends hold it', () => {
    const short = [box(-0.4, -9, 0.4, -1), box(-0.4, 1, 0.4, 9)];
    const [wall] = walls(short, { depth: 12, grain: 90 });
    expect(wall!.worst.over).toBeCloseTo(1.5, 9);
    expect(wall!.slender).toBe(false);
  });
  it('ends where it comes to lie between other pockets: three walls meet at a T', () => {
    const three = [box(-20, 1, 20, 9), box(-20, -9, -1, -1), box(1, -9, 20, -1)];
    const angles = walls(three, { depth: 12 }).map((w) => Math.round(w.worst.angle / degree));
    expect(angles).toEqual([90, 0, 0]);
    expect(walls(three, { depth: 12 }).map((w) => w.freeEnds)).toEqual([0, 0, 0]);
  });
  it('is the bands that are coloured', () => {
    const [wall] = walls(slots, { depth: 12, grain: 90 });
    expect(area(wall!.bands)).toBeGreaterThan(2 * 20 * 0.95);
    expect(area(wall!.bands)).toBeLessThan(2 * 21);
    expect(contains(wall!.bands, 0, 0)).toBe(true);
  });
});

describe('a ring of field', () => {
  it('closes on itself, and is too slender where it crosses the grain', () => {
    const [wall, ...more] = walls([circle(0, 0, 10), ...ring(30, 11.5)]);
    expect(more).toEqual([]);
    expect(wall!.least.width).toBeCloseTo(1.5, 9);
    expect(wall).toMatchObject({ closed: true, freeEnds: 0 });
    const round = 2 * Math.PI * 10.75;
    expect(Math.abs(wall!.length / round - 1)).toBeLessThan(0.002);
    // To the nearest of the balls set along the circle.
    expect(Math.abs(wall!.worst.angle - 90 * degree)).toBeLessThan(step(8) / 10);
    // 8 / 1.5 = 5.33 = 4 + 4 cos^2: too slender while cos^2 < 1/3.
    const share = 1 - Math.acos(Math.sqrt(1 / 3)) / (Math.PI / 2);
    expect(Math.abs(wall!.over / round - share)).toBeLessThan((4 * step(8)) / round);
    // Slenderness over every limit: all of it, drawn as a ring.
    const [all] = walls([circle(0, 0, 10), ...ring(30, 11.5)], { depth: 13 });
    expect(all!.over / round).toBeCloseTo(1, 2);
    expect(Math.abs(area(all!.bands) / (round * 1.5) - 1)).toBeLessThan(0.02);
  });
});

describe('limbs of the plug', () => {
  const bar = polygon([
    [-15, -10],
    [15, -10],
    [15, 10],
    [1.5, 10],
    [1.5, 26],
    [-1.5, 26],
    [-1.5, 10],
    [-15, 10],
  ]);
  it('may have a free end, and are held by it when loose and by the carrier when on one', () => {
    const [limb, ...more] = limbs([bar], { depth: 15 });
    expect(more).toEqual([]);
    expect(limb!.least.width).toBeCloseTo(3, 9);
    expect(limb).toMatchObject({ freeEnds: 1, held: 'one end', beside: null, slender: true });
    const carrier = recipeOf({ depth: 15, changes: { 'fit.plug': 'carrier' } });
    const [held] = plugLimbs(carrier, pairOf([bar], true));
    expect(held).toMatchObject({ freeEnds: 1, held: 'foot' });
    expect(held!.height).toBeCloseTo(15 - carrier.fit.glueGap + carrier.fit.sawRoom, 9);
  });
  it('may be held at both ends, or be a bar by itself', () => {
    const dumbbell = polygon([
      [-30, -10],
      [-10, -10],
      [-10, -1.5],
      [10, -1.5],
      [10, -10],
      [30, -10],
      [30, 10],
      [10, 10],
      [10, 1.5],
      [-10, 1.5],
      [-10, 10],
      [-30, 10],
    ]);
    expect(limbs([dumbbell], { depth: 15 })[0]).toMatchObject({ freeEnds: 0, held: 'both ends' });
    const [alone] = limbs([box(-15, -1.5, 15, 1.5)], { depth: 15 });
    expect(alone).toMatchObject({ freeEnds: 2, held: 'nowhere', breaks: null });
  });
  it('have one free end where they grow into a body, however small', () => {
    // From 3 mm to 8 mm wide; looked at up to 0.375 x 15 = 5.6 mm.
    const blade = polygon([
      [-4, 0],
      [4, 0],
      [1.5, 18],
      [-1.5, 18],
    ]);
    expect(limbs([blade], { depth: 15 })[0]).toMatchObject({ freeEnds: 1, held: 'one end' });
  });
  it('of a mirrored plug are told in the coordinates of the pocket, with the grain as it lies on the piece', () => {
    // A bar that runs at 30 degrees on the piece, to the right of the middle.
    const [c, s] = [Math.cos(30 * degree), Math.sin(30 * degree)];
    const turned = polygon(
      [
        [-12, -1.5],
        [12, -1.5],
        [12, 1.5],
        [-12, 1.5],
      ].map(([x, y]) => [20 + x! * c - y! * s, 5 + x! * s + y! * c] as const),
    );
    const [limb] = plugLimbs(recipeOf({ depth: 15, grain: 30 }), pairOf([turned], true));
    expect(limb!.worst.angle).toBeCloseTo(0, 6);
    expect(contains({ contours: [turned] }, ...limb!.worst.at)).toBe(true);
    expect(
      plugLimbs(recipeOf({ depth: 15, grain: 150 }), pairOf([turned], true))[0]!.worst.angle / degree,
    ).toBeCloseTo(60, 6);
  });
});

it('the least wall of random patterns is that of a distance transform on a grid', () => {
  const random = seeded(66);
  const small = outlineWith('circle', { diameter: 60, margin: 0 });
  let told = 0;
  for (let k = 0; k < 8; k++) {
    const shapes: { contour: Contour; inside: Inside; at: readonly [number, number, number] }[] = [];
    for (let tries = 0; tries < 300 && shapes.length < 9; tries++) {
      const [x, y, size] = [50 * random() - 25, 50 * random() - 25, 3 + 5 * random()];
      // Circles about the shapes stay apart, so the shapes do.
      const apart = shapes.every(({ at: [u, v, other] }) => Math.hypot(u - x, v - y) > size + other + 0.3);
      if (!apart || Math.hypot(x, y) + size > 29.5) continue;
      const round = random() < 0.4;
      const contour = round
        ? circle(x, y, size)
        : regular(3 + Math.floor(random() * 4), x, y, size, 7 * random());
      const inside: Inside = round ? (u, v) => Math.hypot(u - x, v - y) < size : insidePolygon(contour);
      shapes.push({ contour, inside, at: [x, y, size] });
    }
    const brute = leastDistance([...shapes.map((s) => s.inside), (x, y) => Math.hypot(x, y) > 30], 31, 0.125);
    const found = walls(
      shapes.map((s) => s.contour),
      { depth: 12 },
      small,
    );
    // Walls are listed up to a third of the depth.
    if (brute > 3.8) continue;
    told++;
    expect(Math.abs(Math.min(...found.map((w) => w.least.width)) - brute), `pattern ${k}`).toBeLessThan(0.19);
  }
  expect(told).toBeGreaterThan(5);
}, 60_000);
