import { type Badge, placed } from '../../output/badges.js';
import type { Pencilled } from '../worker/protocol.js';
import type { Point } from './camera.js';

/** A numbered mark, in pixels from where the middle of the piece lies on the screen. */
export interface Mark {
  readonly finding: Pencilled;
  /** What it points at, and where it stands itself. */
  readonly at: Point;
  readonly disc: Point;
}

/** Far enough from the corner that no mark meets an edge: marks stand where they stand, and the room cuts them off. */
const FAR = 1e6;

/**
 * Where the marks of findings stand at a zoom, worst first. It depends on the zoom alone, so that pushing the paper moves
 * them all alike. `radius` in pixels.
 */
export function standing(findings: readonly Pencilled[], scale: number, radius: number): Mark[] {
  const pointed = findings.filter((f) => f.at !== null);
  const badges: Badge[] = placed(
    pointed.map(({ number, at }) => ({ number, at: [at![0] * scale + FAR, at![1] * scale + FAR] as const })),
    { radius, width: 2 * FAR, height: 2 * FAR },
  );
  return badges.map(({ at, disc }, k) => ({
    finding: pointed[k]!,
    at: [at[0] - FAR, at[1] - FAR],
    disc: [disc[0] - FAR, disc[1] - FAR],
  }));
}

/** The mark after or before one, round and round, as the arrow keys go; the first when none is given. */
export function beside(
  findings: readonly Pencilled[],
  number: number | null,
  step: 1 | -1,
): Pencilled | undefined {
  const pointed = findings.filter((f) => f.at !== null);
  const k = pointed.findIndex((f) => f.number === number);
  if (k < 0) return pointed[0];
  return pointed[(k + step + pointed.length) % pointed.length];
}
