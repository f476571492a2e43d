import {
  chordLength,
  type Edge,
  edgeLength,
  midpoint,
  parameterEnd,
  part,
  pointAt,
  pointParameter,
  tangentAt,
} from '../../../geometry/edge.js';
import { EdgesIndex } from '../../../geometry/edges-index.js';
import { distanceToEdge } from '../../../geometry/region.js';
import type { Chain, Stretch } from './chain.js';
import type { Repairs } from './repair.js';

/** Lines this near all along, mm, are one line drawn twice. */
const ONE_LINE = 0.002;

/** Lines that turn from each other by more than this, radians, only touch. */
const PARALLEL = 2e-3;

/** What of the drawing counts as one line within a tolerance of `join` mm. */
export function sameLine(join: number): number {
  return Math.min(join, ONE_LINE);
}

/**
 * Open stretches less what runs along another: along a closed chain, or along a longer open stretch (or an earlier one
 * as long). What is taken away is told to `repairs`.
 */
export function withoutOverlaps(
  open: readonly Stretch[],
  closed: readonly Chain[],
  join: number,
  repairs: Repairs,
): Stretch[] {
  const same = sameLine(join);
  if (same === 0 || open.length === 0) return [...open];
  const solid = closed.flatMap((c) => c.stretches);
  const edges = [...solid, ...open].map((s) => s.edge);
  const lengths = edges.map(edgeLength);
  const index = new EdgesIndex(edges);
  const before = (i: number, j: number): boolean =>
    i < solid.length || lengths[i]! > lengths[j]! + same || (lengths[i]! > lengths[j]! - same && i < j);
  return open.flatMap((s, k) => {
    const j = solid.length + k;
    const spans: [number, number][] = [];
    let twin = false;
    for (const i of index.nearEdge(j, same)) {
      if (i === j || !before(i, j)) continue;
      const span = along(edges[j]!, edges[i]!, same);
      if (!span) continue;
      spans.push(span);
      if (Math.abs(lengths[i]! - lengths[j]!) <= 2 * same) twin = true;
    }
    if (spans.length === 0) return [s];
    const left = rest(edges[j]!, spans, same);
    const size = lengths[j]! - left.reduce((sum, e) => sum + edgeLength(e), 0);
    repairs.add(left.length === 0 && twin ? 'duplicate' : 'overlap', midpoint(s.edge), size);
    return left.map((edge) => ({ ...s, edge }));
  });
}

/** The parameters of `e` between which it runs along `other`; null when it does not. */
function along(e: Edge, other: Edge, same: number): [number, number] | null {
  const end = parameterEnd(e);
  const stops = [0, end];
  for (const [x, y] of [
    [other.x0, other.y0],
    [other.x1, other.y1],
  ] as const)
    if (distanceToEdge(e, x, y) <= same) stops.push(Math.min(end, Math.max(0, pointParameter(e, x, y))));
  stops.sort((a, b) => a - b);
  let span: [number, number] | null = null;
  for (let k = 0; k + 1 < stops.length; k++) {
    const [from, to] = [stops[k]!, stops[k + 1]!];
    const piece = part(e, from, to);
    // A stretch no longer than the tolerance is an end that touches, not a line drawn twice.
    if (chordLength(piece) <= 4 * same && chordLength(piece) < 0.9 * chordLength(e)) continue;
    if (!liesOn(piece, other, same)) continue;
    span = span ? [span[0], to] : [from, to];
  }
  return span;
}

function liesOn(piece: Edge, other: Edge, same: number): boolean {
  const end = parameterEnd(piece);
  const few = Math.max(PARALLEL, (2 * same) / chordLength(piece));
  for (const share of [0, 0.25, 0.5, 0.75, 1]) {
    const [x, y] = pointAt(piece, end * share);
    if (distanceToEdge(other, x, y) > same) return false;
    const [ax, ay] = tangentAt(piece, x, y);
    const [bx, by] = tangentAt(other, x, y);
    if (Math.abs(ax * by - ay * bx) > few) return false;
  }
  return true;
}

/** What of an edge lies in none of the spans. */
function rest(e: Edge, spans: readonly [number, number][], same: number): Edge[] {
  const out: Edge[] = [];
  const keep = (from: number, to: number): void => {
    if (to <= from) return;
    const piece = part(e, from, to);
    if (edgeLength(piece) > same) out.push(piece);
  };
  let at = 0;
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0])) {
    keep(at, from);
    at = Math.max(at, to);
  }
  keep(at, parameterEnd(e));
  return out;
}
