import { near } from './gap.js';
import type { Cluster, SetLine } from './set.js';
import type { Shape, Shapes } from './shapes.js';
import type { GroupedLine } from './spacing.js';

export type Joined = 'auto' | 'apart' | 'together';

/**
 * Finds which letters of a line are one piece: with `auto` those whose ink touches its neighbour's in the font as it is
 * designed (script faces, Arabic); with `apart` only what the font makes one glyph of; with `together` every word.
 *
 * @param shapes at the scale `scale`, mm a font unit
 */
export function groupLine(set: SetLine, shapes: Shapes, scale: number, joined: Joined): GroupedLine {
  const { clusters, line } = set;
  const groups: number[] = clusters.map(() => -1);
  const met = new Map<string, boolean>();
  let last = -1;
  let next = 0;
  clusters.forEach((cluster, i) => {
    if (line.text.slice(cluster.from, cluster.to).trim() === '') {
      last = -1;
      return;
    }
    const shape = shapes(cluster);
    if (!shape) return;
    const before = last < 0 ? null : clusters[last]!;
    const one =
      before !== null &&
      (joined === 'together' ||
        (joined === 'auto' && touch(before, shapes(before)!, cluster, shape, scale, met)));
    groups[i] = one ? groups[last]! : next++;
    last = i;
  });
  // A mark without ink of its own between two letters of a piece belongs to it.
  for (let i = 1; i + 1 < groups.length; i++)
    if (groups[i] === -1 && groups[i - 1]! >= 0 && groups[i - 1] === groups[i + 1])
      groups[i] = groups[i - 1]!;
  return { set, groups };
}

/** Ink this near, in cap heights, was meant to touch. */
const TOUCHES = 0.002;

function touch(
  a: Cluster,
  sa: Shape,
  b: Cluster,
  sb: Shape,
  scale: number,
  met: Map<string, boolean>,
): boolean {
  const s = (b.x + b.advance / 2 - a.x - a.advance / 2) * scale;
  const key = `${sa.key}|${sb.key}|${s.toFixed(6)}`;
  const known = met.get(key);
  if (known !== undefined) return known;
  const found = near(sa, sb, { x: s, y: 0, turn: 0 }, TOUCHES * REFERENCE) !== null;
  met.set(key, found);
  return found;
}

/** Cap height at which letters are drawn to be compared and measured, mm; other heights are scaled from it. */
export const REFERENCE = 100;
