import { describe, expect, it } from 'vitest';
import { wallpaperGroups } from '../../../src/generators/symmetry/groups.js';
import { artworkWith, outlineWith } from '../../support/artwork.js';
import { type Motion, motionsOf, moved, type Shape, shape, shapesOf } from './drawing.js';
import { centreKinds, elementsOf, wallpaperGroupOf } from './recognise.js';

/**
 * Orbifold and order of the point group: International Tables for Crystallography, volume A, and Conway, Burgiel and
 * Goodman-Strauss, The Symmetries of Things, 2008; both from memory.
 */
const known: Readonly<Record<string, readonly [orbifold: string, order: number]>> = {
  p1: ['o', 1],
  p2: ['2222', 2],
  pm: ['**', 2],
  pg: ['xx', 2],
  cm: ['*x', 2],
  pmm: ['*2222', 4],
  pmg: ['22*', 4],
  pgg: ['22x', 4],
  cmm: ['2*22', 4],
  p4: ['442', 4],
  p4m: ['*442', 8],
  p4g: ['4*2', 8],
  p3: ['333', 3],
  p3m1: ['*333', 6],
  p31m: ['3*3', 6],
  p6: ['632', 6],
  p6m: ['*632', 12],
};

const CELL = 24;

function drawn(given: Record<string, number | string>): Shape[] {
  const outline = outlineWith('rectangle', { width: 168, height: 168, margin: 0 });
  return shapesOf(artworkWith('wallpaper', { cell: CELL, gap: 0.8, disc: 0, turn: 0.3, ...given }, outline));
}

function motions(shapes: readonly Shape[]): Motion[] {
  return motionsOf(shapes, { about: [2, -1], reach: 1.5 * CELL, half: [0.6 * CELL, 0.6 * CELL] });
}

/** What a feature costs: Conway, Burgiel and Goodman-Strauss, as above. */
function cost(orbifold: string): number {
  let sum = 0;
  let star = false;
  for (const c of orbifold) {
    if (c === 'o') sum += 2;
    else if (c === '*' || c === 'x') {
      sum += 1;
      star ||= c === '*';
    } else sum += (Number(c) - 1) / (star ? 2 * Number(c) : Number(c));
  }
  return sum;
}

describe('the 17 groups', () => {
  for (const [group, [orbifold, order]] of Object.entries(known)) {
    it(`${group}: the drawn pattern has its motions, and the centres of ${orbifold}, and no others`, () => {
      const found = motions(drawn({ group }));
      expect(wallpaperGroupOf(found)).toBe(group);
      expect(elementsOf(found).pointGroupOrder).toBe(order);
      const [off, on] = orbifold.split('*');
      const digits = (text = ''): number[] => [...text].map(Number).filter((n) => n > 0);
      expect(centreKinds(found)).toEqual({ off: digits(off), on: digits(on) });
    });

    it(`${group}: so has that of another motif, placed and turned by hand`, () => {
      const given = { group, motif: 'comma', place: 'apart', lean: 0.2, x: 0.3, y: -0.2, gap: 0.3 };
      expect(wallpaperGroupOf(motions(drawn(given)))).toBe(group);
    });
  }

  it('cost 2 each', () => {
    for (const [orbifold] of Object.values(known)) expect(cost(orbifold)).toBeCloseTo(2, 12);
    expect(Object.keys(known)).toEqual(wallpaperGroups.map((g) => g.name));
  });

  for (const group of ['p1', 'p2', 'pm', 'pg', 'cm', 'pmm', 'pmg', 'pgg', 'cmm'])
    it(`${group} stays itself on a square cell, which has more symmetry than it`, () => {
      const shapes = drawn({ group, motif: 'bird', proportion: 1, angle: Math.PI / 2 });
      expect(wallpaperGroupOf(motions(shapes))).toBe(group);
    });

  it('stay themselves on cells of any proportion and angle', () => {
    expect(wallpaperGroupOf(motions(drawn({ group: 'p2', proportion: 1.2, angle: 1.3 })))).toBe('p2');
    expect(wallpaperGroupOf(motions(drawn({ group: 'cmm', proportion: 1.4 })))).toBe('cmm');
    expect(wallpaperGroupOf(motions(drawn({ group: 'pg', proportion: 0.8 })))).toBe('pg');
  });
});

describe('the recogniser', () => {
  /** Each motif turned a little about its own middle: turns of the pattern survive this, mirrors and glides do not. */
  const turned = (shapes: readonly Shape[], angle: number): Shape[] =>
    shapes.map((s) => {
      const spin = { flips: false, angle, dx: 0, dy: 0 };
      const [x, y] = moved(spin, s.centre);
      const m = { ...spin, dx: s.centre[0] - x, dy: s.centre[1] - y };
      return shape(s.rings.map((r) => r.map((p) => moved(m, p))));
    });

  for (const [group, left] of Object.entries({
    pm: 'p1',
    pmm: 'p2',
    pmg: 'p2',
    pgg: 'p2',
    p4m: 'p4',
    p4g: 'p4',
    p3m1: 'p3',
    p31m: 'p3',
    p6m: 'p6',
  }))
    it(`sees ${left} in ${group} when each motif is turned by two degrees`, () => {
      const shapes = drawn({ group, gap: 1.5 });
      expect(wallpaperGroupOf(motions(turned(shapes, 0)))).toBe(group);
      expect(wallpaperGroupOf(motions(turned(shapes, 0.035)))).toBe(left);
    });

  it('sees p1 in p2 when every other motif is turned by six degrees', () => {
    const shapes = drawn({ group: 'p2', turn: 0 });
    const up = (s: Shape): boolean => Math.sin(s.heading) > 0;
    expect(wallpaperGroupOf(motions(shapes.map((s) => (up(s) ? s : turned([s], 0)[0]))))).toBe('p2');
    expect(wallpaperGroupOf(motions(shapes.map((s) => (up(s) ? s : turned([s], 0.1)[0]))))).toBe('p1');
  });
});
