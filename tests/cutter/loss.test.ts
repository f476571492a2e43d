import { describe, expect, it } from 'vitest';
import { criticalRadius } from '../../src/cutter/critical.js';
import { enforce } from '../../src/cutter/enforce.js';
import { losses } from '../../src/cutter/loss.js';
import type { Rule } from '../../src/cutter/rule.js';
import type { Piece } from '../../src/geometry/artwork.js';
import { union } from '../../src/geometry/boolean.js';
import { type Contour, circle, polygon, reversedContour } from '../../src/geometry/region.js';

/*
 * Shapes whose losses are known by their making: a hole under 2r across fills, a limb under 2r goes (Serra 1982: the
 * opening and the closing by a disc of radius r). Where a figure is measured, its closed form stands beside it.
 */
const R = 2;

const piece = (name: string, ...contours: Contour[]): Piece => ({ name, region: { contours } });

function box(x: number, y: number, width: number, height: number): Contour {
  return polygon([
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]);
}

function joined(name: string, ...contours: Contour[]): Piece {
  return { name, region: union(contours.map((c) => ({ contours: [c] }))) };
}

const hole = (c: Contour): Contour => reversedContour(c);
const rule = (changes: Partial<Rule> = {}): Rule => ({ r: R, thin: 'drop', touch: 'part', ...changes });

function lost(pieces: readonly Piece[], changes: Partial<Rule> = {}, ends = false): string[] {
  const asked = rule(changes);
  return losses({ pieces }, enforce({ pieces }, asked), asked.r, ends).map((l) => `${l.kind} ${l.piece}`);
}

const ring = (across: number): Piece => piece('ring', circle(3, 4, 20), hole(circle(3, 4, across / 2)));

describe('parts and holes', () => {
  it('a hole of 1.9 r across fills, at its place and of its size; one of 2.1 r stays', () => {
    const pieces = [ring(1.9 * R)];
    const [filled, ...more] = losses({ pieces }, enforce({ pieces }, rule()), R);
    expect(more).toEqual([]);
    expect(filled).toMatchObject({ kind: 'filled', piece: 'ring' });
    expect(filled.at[0]).toBeCloseTo(3, 6);
    expect(filled.at[1]).toBeCloseTo(4, 6);
    expect(filled.size).toBeCloseTo(1.9 * R, 6);
    expect(lost([ring(2.1 * R)])).toEqual([]);
  });

  it('of two holes the one that filled is named by its place', () => {
    const pieces = [piece('eight', box(0, 0, 60, 30), hole(circle(15, 15, 6)), hole(circle(42, 13, 1.5)))];
    const found = losses({ pieces }, enforce({ pieces }, rule()), R);
    expect(found.map((l) => [l.kind, l.at.map(Math.round)])).toEqual([['filled', [42, 13]]]);
  });

  it('a dumb-bell with a bar of 1.8 r is cut apart in the middle of the bar; one of 2.2 r is not', () => {
    const bell = (bar: number): Piece =>
      joined('bell', circle(-25, 0, 8), circle(25, 0, 8), box(-25, -bar / 2, 50, bar));
    const pieces = [bell(1.8 * R)];
    const found = losses({ pieces }, enforce({ pieces }, rule()), R, true);
    expect(found.map((l) => `${l.kind} ${l.piece}`)).toEqual(['split bell']);
    expect(Math.abs(found[0].at[0])).toBeLessThan(18);
    expect(Math.abs(found[0].at[1])).toBeLessThan(2);
    expect(lost([bell(2.2 * R)])).toEqual([]);
  });

  it('a dot of 1.9 r across vanishes, whole or as a part of its piece', () => {
    expect(lost([piece('dot', circle(0, 0, 0.95 * R))])).toEqual(['vanished dot']);
    expect(lost([piece('i', box(-3, -20, 6, 20), circle(0, 8, 0.95 * R))])).toEqual(['vanished i']);
    expect(lost([piece('i', box(-3, -20, 6, 20), circle(0, 8, 1.05 * R))])).toEqual([]);
  });

  it('two squares 1.9 r apart become one when they are joined, and stay two when parted or further apart', () => {
    const squares = (gap: number): Piece[] => [
      piece('a', box(0, 0, 15, 15)),
      piece('b', box(15 + gap, 0, 15, 15)),
    ];
    const pieces = squares(1.9 * R);
    const found = losses({ pieces }, enforce({ pieces }, rule({ touch: 'join' })), R);
    expect(found.map((l) => `${l.kind} ${l.piece}`)).toEqual(['merged a / b']);
    expect(found[0].at[0]).toBeCloseTo(15 + 0.95 * R, 6);
    expect(lost(pieces)).toEqual([]);
    expect(lost(squares(2.1 * R), { touch: 'join' })).toEqual([]);
  });

  it('two parts of one piece that grow together are told, and pieces drawn over each other are not', () => {
    expect(lost([piece('colon', box(0, 0, 12, 12), box(0, 12 + 1.5 * R, 12, 12))])).toEqual(['merged colon']);
    expect(lost([piece('a', box(0, 0, 20, 20)), piece('b', box(10, 5, 30, 10))])).toEqual([]);
    expect(lost([piece('a', box(0, 0, 20, 20)), piece('b', box(20, 0, 30, 20))], { touch: 'join' })).toEqual(
      [],
    );
  });

  it('a tile all round which others are joined is no part that vanished', () => {
    const tiles = [0, 1, 2].flatMap((i) =>
      [0, 1, 2].map((j) => piece(`tile ${i},${j}`, box(12 * i, 12 * j, 11, 11))),
    );
    expect(lost(tiles, { touch: 'join' })).toEqual(['merged tile 0,0 / tile 0,1 and 7 more']);
  });

  it('a ring whose wall is thin on one side opens, and a C whose mouth is narrow closes to a ring', () => {
    const thin = piece('o', circle(0, 0, 20), hole(circle(9, 0, 9.5)));
    expect(lost([thin], {}, true)).toEqual(['opened o']);
    const c = joined(
      'c',
      box(0, 0, 30, 8),
      box(0, 0, 8, 40),
      box(0, 32, 30, 8),
      box(22, 0, 8, 18.5),
      box(22, 21.5, 8, 18.5),
    );
    expect(lost([c], {}, true)).toEqual(['closed c']);
    // Said of its mouth, even where the crotch of a V, 23 degrees wide, was filled deeper.
    const v = piece(
      'v',
      polygon([
        [-16, 0],
        [16, 0],
        [16, 36],
        [1.5, 36],
        [1.5, 31],
        [6, 31],
        [0, 2],
        [-6, 31],
        [-1.5, 31],
        [-1.5, 36],
        [-16, 36],
      ]),
    );
    const [mouth, ...more] = losses({ pieces: [v] }, enforce({ pieces: [v] }, rule()), R);
    expect([mouth.kind, more]).toEqual(['closed', []]);
    expect(mouth.at[1]).toBeGreaterThan(30);
  });

  it('a hole with a waist of 1.5 r is divided', () => {
    const waist = union(
      [circle(-12, 0, 7), circle(12, 0, 7), box(-12, -0.75 * R, 24, 1.5 * R)].map((k) => ({ contours: [k] })),
    );
    expect(lost([piece('plate', box(-30, -20, 60, 40), ...waist.contours.map(hole))], {}, true)).toEqual([
      'divided plate',
    ]);
  });
});

describe('ends', () => {
  const comb = (arm: number, gap: number, long: number): Piece =>
    joined(
      'comb',
      box(0, 0, 3 * arm + 2 * gap + 20, 12),
      ...[0, 1, 2].map((k) => box(10 + k * (arm + gap), 6, arm, 6 + long)),
    );

  it("a comb's arms of 1.5 r are lost when they are long, and its slots of 1.5 r are", () => {
    expect(lost([comb(1.5 * R, 12, 12)], {}, true)).toEqual(['limb comb', 'limb comb', 'limb comb']);
    expect(lost([comb(12, 1.5 * R, 12)], {}, true)).toEqual(['gap comb', 'gap comb']);
    expect(lost([comb(1.5 * R, 12, 12)])).toEqual([]);
    expect(lost([comb(2.2 * R, 2.2 * R, 12)], {}, true)).toEqual([]);
  });

  it('an arm 2 r long, which is a bump, is not', () => {
    expect(lost([comb(1.5 * R, 12, 2 * R)], {}, true)).toEqual([]);
  });

  it('a sharp point is not, however far it reached: it loses its tip at every size', () => {
    // A point of 20 degrees loses r (1 / sin 10 degrees - 1) = 4.8 r (a disc in the angle, school geometry).
    const h = 12 / Math.tan((10 / 180) * Math.PI);
    // A dot beside it vanishes, so that the piece is looked at.
    const dot = circle(-50, -40, 0.9 * R);
    const tip = piece(
      'tip',
      polygon([
        [-12, 0],
        [-12, -20],
        [12, -20],
        [12, 0],
        [0, h],
      ]),
      dot,
    );
    expect(lost([tip], {}, true)).toEqual(['vanished tip']);
    const notch = piece(
      'notch',
      polygon([
        [-30, -20],
        [30, -20],
        [30, h],
        [12, h],
        [0, 0],
        [-12, h],
        [-30, h],
      ]),
      dot,
    );
    expect(lost([notch], {}, true)).toEqual(['vanished notch']);
  });

  it('a blade cut off slantwise is: the point of its end explains a part only', () => {
    // 30 degrees lose 2.9 r of the end; the blade is 12 r long.
    const w = 1.4 * R;
    const blade = joined(
      'blade',
      box(-20, -20, 40, 20),
      polygon([
        [0, -2],
        [w, -2],
        [w, 20],
        [0, 20 + w / Math.tan(Math.PI / 6)],
      ]),
    );
    expect(lost([blade], {}, true)).toEqual(['limb blade']);
  });
});

describe('the critical corner radius', () => {
  const critical = (p: Piece): number => criticalRadius({ pieces: [p] }, rule({ r: 20 }))!;

  it.each([3, 5.5])('of a ring with a hole %d mm across is half of that, within one percent', (d) => {
    expect(critical(ring(d)) / (d / 2)).toBeGreaterThan(0.99);
    expect(critical(ring(d)) / (d / 2)).toBeLessThanOrEqual(1 + 1e-3);
  });

  it.each([4, 7.3])('of a bar %d mm wide is half of that, within one percent', (w) => {
    const bar = critical(piece('bar', box(0, 0, 60, w)));
    expect(bar / (w / 2)).toBeGreaterThan(0.99);
    expect(bar / (w / 2)).toBeLessThanOrEqual(1 + 1e-3);
  });

  it('is none for what has no width anywhere it is cut', () => {
    expect(criticalRadius({ pieces: [piece('hair', box(0, 0, 60, 0.02))] }, rule({ r: 2 }))).toBe(null);
  });
});
