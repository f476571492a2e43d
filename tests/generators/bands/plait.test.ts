import { describe, expect, it } from 'vitest';
import { crossingsOf, PHASE } from '../../../src/generators/bands/plait.js';
import { distanceToBoundary, flatten } from '../../../src/geometry/region.js';
import { DISC, LID, pieces } from './helper.js';

describe('over and under in a plait', () => {
  // An alternating plait: along every strand over and under take turns, also where a closed band meets itself.
  for (const strands of [2, 3])
    it.each([1, 2, 3, 8])(`${strands} strands alternate over %i repeats`, (repeats) => {
      const all = crossingsOf(strands, repeats);
      // Every two strands cross twice a repeat.
      expect(all.length).toBe(strands * (strands - 1) * repeats);
      for (let k = 0; k < strands; k++) {
        const along = all.filter((c) => c.over === k || c.under === k).map((c) => c.over === k);
        expect(along.length).toBe(2 * (strands - 1) * repeats);
        along.forEach((over, i) => {
          expect(along[(i + 1) % along.length]).toBe(!over);
        });
      }
    });

  it('lies where the strands have one height', () => {
    for (const strands of [2, 3])
      for (const { u, over, under } of crossingsOf(strands, 2)) {
        const t = (k: number): number => Math.cos(2 * Math.PI * (u + k / strands + PHASE[strands]!));
        expect(t(over)).toBeCloseTo(t(under), 12);
        expect(u).toBeGreaterThanOrEqual(0);
        expect(u).toBeLessThan(2);
      }
  });
});

describe('the gaps where strands pass under', () => {
  it.each([
    ['guilloche', 2],
    ['guilloche', 3],
  ] as const)('%s of %i strands keeps its gap between all strands', (name, strands) => {
    const all = pieces(name, DISC, { strands, disc: 0, gap: 4.2 });
    expect(all.length).toBeGreaterThan(10);
    expect(least(all)).toBeGreaterThan(4.2 - 0.003);
    expect(least(all)).toBeLessThan(4.3);
  });

  it('an interlocked chain keeps its gap', () => {
    for (const on of [LID, DISC]) {
      const all = pieces('chain', on, { gap: 4 });
      expect(least(all)).toBeGreaterThan(4 - 0.003);
    }
  });
});

/** The least distance between two of the pieces, mm, measured from points along each. */
function least(all: ReturnType<typeof pieces>): number {
  let best = Number.POSITIVE_INFINITY;
  for (const a of all)
    for (const b of all) {
      if (a === b) continue;
      for (const [x, y] of a.region.contours.flatMap((c) => flatten(c, 0.002))) {
        best = Math.min(best, distanceToBoundary(b.region, x, y));
      }
    }
  return best;
}
