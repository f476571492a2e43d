import { type Curvature, opening } from './gap.js';
import type { Cluster, SetLine } from './set.js';
import type { Shape, Shapes } from './shapes.js';

/** A cluster with ink on its base line. */
export interface Standing {
  readonly cluster: Cluster;
  readonly shape: Shape;
  /** Where the middle of its advance stands, mm along the base line. */
  readonly s: number;
  /** Clusters of one group of a line are one piece. */
  readonly group: number;
}

/** A place where two pieces had to be moved apart. */
export interface Opened {
  readonly left: Standing;
  readonly right: Standing;
  readonly by: number;
}

export interface SpacedLine {
  readonly set: SetLine;
  readonly letters: readonly Standing[];
  readonly opened: readonly Opened[];
  /** Ends of the ink along the base line, mm. */
  readonly from: number;
  readonly to: number;
}

/** A line with the groups of its clusters; those without ink have none. */
export interface GroupedLine {
  readonly set: SetLine;
  /** For each cluster the number of its group, -1 for none. */
  readonly groups: readonly number[];
}

/** So many letters back may still come near: what lies further is behind those between. */
const BACK = 6;

/** Openings found already, by letters and distance: a text has few different neighbours. */
export type Known = Map<string, number>;

/**
 * Stands a line's letters on a base line: advance, kerning and tracking, and where pieces come nearer than `gap` mm, just
 * as much more as clears them. Letters of one piece keep their places to each other.
 */
export function spaceLine(
  { set, groups }: GroupedLine,
  shapes: Shapes,
  { scale, tracking, curvature, gap }: { scale: number; tracking: number; curvature: Curvature; gap: number },
  known: Known,
): SpacedLine {
  const letters: Standing[] = [];
  const opened: Opened[] = [];
  const { clusters } = set;
  let shift = 0;
  let last = -1;
  for (let i = 0; i < clusters.length; ) {
    const group = groups[i]!;
    let to = i + 1;
    while (group >= 0 && to < clusters.length && groups[to] === group) to++;
    // Signs that steer joining or direction have no width, and no tracking.
    const silent = clusters[i]!.advance === 0 && !shapes(clusters[i]!);
    if (last >= 0 && !silent) shift += tracking;
    const own: Standing[] = [];
    for (let k = i; k < to; k++) {
      const cluster = clusters[k]!;
      const shape = shapes(cluster);
      if (shape) own.push({ cluster, shape, s: (cluster.x + cluster.advance / 2) * scale + shift, group });
    }
    const worst = clearing(letters, own, curvature, gap, known);
    if (worst) opened.push(worst);
    const by = worst?.by ?? 0;
    shift += by;
    letters.push(...own.map((l) => ({ ...l, s: l.s + by })));
    if (!silent) last = i;
    i = to;
  }
  return {
    set,
    letters,
    opened,
    from: Math.min(...letters.map((l) => l.s + l.shape.box.minX)),
    to: Math.max(...letters.map((l) => l.s + l.shape.box.maxX)),
  };
}

/** How far a piece must go on to be clear of those before it, and which of them says so; null when it is clear. */
function clearing(
  before: readonly Standing[],
  own: readonly Standing[],
  curvature: Curvature,
  gap: number,
  known: Known,
): Opened | null {
  let by = 0;
  let first: Opened | null = null;
  for (let round = 0; round < 20; round++) {
    let more = 0;
    for (const right of own.slice(0, BACK))
      for (const left of before.slice(-BACK)) {
        const s = right.s + by - left.s;
        const key = `${left.shape.key}|${right.shape.key}|${s.toFixed(6)}`;
        const need = known.get(key) ?? opening(left.shape, right.shape, s, curvature, gap);
        known.set(key, need);
        if (need <= more) continue;
        more = need;
        first = { left, right, by: 0 };
      }
    if (more === 0) break;
    by += more;
  }
  return first && { ...first, by };
}
