import { describe, expect, it } from 'vitest';
import { breakingLoad, slenderLimit } from '../../src/shop/short-grain.js';

describe('slenderness that is usual', () => {
  it('is 4 across the grain and 8 along it (common practice, no source), and 6 half way', () => {
    expect(slenderLimit(0)).toBe(4);
    expect(slenderLimit(1)).toBe(8);
    expect(slenderLimit(-1)).toBe(8);
    expect(slenderLimit(Math.SQRT1_2)).toBeCloseTo(6, 12);
    expect(slenderLimit(Math.cos(Math.PI / 6))).toBeCloseTo(7, 12);
  });
});

describe('load that breaks a wall', () => {
  // White ash, tension perpendicular to the grain 6500 kPa (Wood Handbook table 5-3a, transcribed) = 6.5 N/mm2.
  const wall = { thickness: 2, height: 16, length: 20 };
  it('at its foot: M = q h, section modulus b t^2 / 6 (strength of materials)', () => {
    // A strip 1 mm wide: modulus 4 / 6 mm3, moment it bears 6.5 x 4 / 6 = 4.333 N mm, arm 16 mm: 0.2708 N.
    expect(breakingLoad('white ash', { ...wall, held: 'foot' })).toBeCloseTo(4.3333 / 16, 4);
    // Half as thick bears a quarter, twice as high bears half.
    const q = breakingLoad('white ash', { ...wall, held: 'foot' })!;
    expect(breakingLoad('white ash', { ...wall, thickness: 1, held: 'foot' })).toBeCloseTo(q / 4, 12);
    expect(breakingLoad('white ash', { ...wall, height: 32, held: 'foot' })).toBeCloseTo(q / 2, 12);
  });
  it('from end to end: M = q l^2 / 8, and from one end M = q l^2 / 2', () => {
    // Section 16 wide, 2 thick: modulus 16 x 4 / 6 = 10.667 mm3, moment it bears 69.33 N mm.
    expect(breakingLoad('ash', { ...wall, held: 'both ends' })).toBeCloseTo((8 * 69.3333) / 400, 4);
    expect(breakingLoad('ash', { ...wall, held: 'one end' })).toBeCloseTo((2 * 69.3333) / 400, 4);
  });
  it('is not known for a wood without that figure, nor where nothing holds the wall', () => {
    expect(breakingLoad('sugar maple', { ...wall, held: 'foot' })).toBeNull();
    expect(breakingLoad('no such wood', { ...wall, held: 'foot' })).toBeNull();
    expect(breakingLoad('white ash', { ...wall, held: 'nowhere' })).toBeNull();
  });
  it('asks for sizes over zero', () => {
    expect(() => breakingLoad('white ash', { ...wall, thickness: 0, held: 'foot' })).toThrow(/thickness/);
    expect(() => breakingLoad('white ash', { ...wall, height: -1, held: 'foot' })).toThrow(/height/);
    expect(() => breakingLoad('white ash', { ...wall, length: 0, held: 'one end' })).toThrow(/length/);
  });
});
