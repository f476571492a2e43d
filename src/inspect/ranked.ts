import type { Finding } from './finding.js';

/** A finding with its number in lists and pictures, from 1. */
export interface Ranked {
  readonly number: number;
  readonly finding: Finding;
}

const SEVERITY = ['stop', 'warn', 'note'] as const;

/**
 * What comes first among findings of one severity: what may hurt somebody or wreck the cutter, what may spoil the piece,
 * then the rest in the order found. Our own choice.
 */
const FIRST: readonly string[] = [
  'down-cut-packs',
  'collet-meets-clamps',
  'collet-meets-neighbour',
  'collet-meets-face',
  'under-bridge',
  'short-lift',
  'dust-shoe-meets',
  'clamped-on-flutes',
  'board-too-thin',
  'loose-small-parts',
  'loose-field-parts',
  'shank-rubs',
  'press-crushes',
  'press-bursts',
  'thick-chips',
  'full-depth-contact',
  'thin-walls',
  'thin-limbs',
  'thin-chips',
];

/** Findings worst first, numbered. Equals keep the order they are in. */
export function ranked(findings: readonly Finding[]): Ranked[] {
  const weight = (f: Finding): number => {
    const place = FIRST.indexOf(f.code);
    return SEVERITY.indexOf(f.severity) * 1000 + (place < 0 ? FIRST.length : place);
  };
  return findings
    .map((finding, k) => ({ finding, k, weight: weight(finding) }))
    .sort((a, b) => a.weight - b.weight || a.k - b.k)
    .map(({ finding }, k) => ({ number: k + 1, finding }));
}
