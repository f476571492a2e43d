import { describe, expect, it } from 'vitest';
import { readRecipe } from '../../src/recipe/read.js';
import { BadInput } from '../../src/schema/fault.js';
import { exampleText } from './example.js';

const read = (changes: Record<string, unknown>) => readRecipe(exampleText(changes), 'x.json');
const faults = (changes: Record<string, unknown>): string[] => {
  try {
    read(changes);
  } catch (e) {
    if (e instanceof BadInput) return e.faults.map((f) => `${f.where}: ${f.message}`);
    throw e;
  }
  return [];
};

describe('cutters and machine', () => {
  it('take what is derived from what is given', () => {
    const r = read({ 'roughing.flute': 25, machine: { slowest: 20_000 } });
    expect(r.roughing).toMatchObject({ flute: 25, stickout: 25, shank: 6.35, rpm: 20_000, open: false });
    expect(r.cutter).toMatchObject({ stickout: 22, rpm: 20_000, feed: null });
    expect(r.passes.roughingStep).toBe(6.35);
    expect(read({ roughing: undefined }).passes.roughingStep).toBe(3.175);
    expect(read({ roughing: null }).roughing).toBeNull();
  });

  it('a list of cutters is read in mm, sorted, each once', () => {
    expect(read({ cutters: ['1/4in', '3mm', 6.35] }).cutters).toEqual([3, 6.35]);
    expect(read({ cutters: null }).cutters).toBeNull();
  });

  it('an empty list of cutters, or one with a bad entry, is a fault with its place', () => {
    expect(faults({ cutters: [] })).toEqual([
      'cutters: is an empty list: name at least one diameter, or leave it out for what shops stock',
    ]);
    expect(faults({ cutters: ['3mm', '40mm'] })[0]).toContain('cutters.1: "40mm" is out of range');
    expect(faults({ cutters: 3 })[0]).toContain('must be a list of diameters');
    expect(faults({ cutters: { a: 1 } })[0]).toContain('not an object');
    expect(faults({ cutters: Array(51).fill(3) })[0]).toContain('50 at most');
  });

  it('no turns, too many turns and a feed beyond the machine are faults', () => {
    expect(faults({ 'cutter.rpm': 0 })[0]).toBe('cutter.rpm: 0 is out of range: 1000 to 60000');
    expect(faults({ 'roughing.rpm': 40_000 })[0]).toContain('10000 to 30000');
    expect(faults({ 'cutter.feed': 4000 })[0]).toContain('at most 3000 mm');
    expect(faults({ machine: { slowest: 9000, fastest: 8000 } })[0]).toContain('use at most that');
  });

  it('a cutter that does not stand out far enough would put the collet into the wood', () => {
    // The plug is 12 high, the pocket 8 deep.
    expect(faults({ 'cutter.stickout': 10 })[0]).toBe(
      "cutter.stickout: 10 mm is shorter than the 12 mm that the plug's walls are high, so the collet would meet the wood: let it stand out at least 12 mm, or cut less deep",
    );
    expect(faults({ 'cutter.stickout': 12 })).toEqual([]);
    expect(faults({ 'roughing.stickout': 5 })[0]).toContain('roughing.stickout');
  });
});
