import { expect } from 'vitest';
import type { Strand } from '../../../src/generators/knots/strand.js';

export function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

/** Number of crossings; each is met twice, once over and once under. */
export function crossingsOf(strands: readonly Strand[]): number {
  const met = new Map<string, boolean[]>();
  for (const { crossing, over } of strands.flatMap((s) => s.nodes))
    met.set(crossing, [...(met.get(crossing) ?? []), over]);
  for (const overs of met.values()) expect(overs.sort()).toEqual([false, true]);
  return met.size;
}

export function expectAlternating(strands: readonly Strand[]): void {
  crossingsOf(strands);
  for (const { nodes } of strands)
    nodes.forEach((n, k) => {
      expect(n.over).not.toBe(nodes[(k + 1) % nodes.length].over);
    });
}
