import {
  chordLength,
  type Edge,
  parameterEnd,
  pointParameter,
  tangentAt,
  withEnds,
} from '../../../geometry/edge.js';
import { EdgesIndex } from '../../../geometry/edges-index.js';
import { distanceToEdge } from '../../../geometry/region.js';
import { type Chain, moved, type Stretch } from './chain.js';
import { ONE_POINT, Points } from './points.js';
import type { Repairs } from './repair.js';

export interface Lines {
  readonly open: readonly Stretch[];
  readonly closed: readonly Chain[];
}

/**
 * Where a loose end lies on the middle of another line (within `join` mm), that line is cut there and the end brought to
 * it. A closed chain that is cut goes over to the open stretches.
 */
export function cutAtTees({ open, closed }: Lines, join: number, repairs: Repairs): Lines {
  const within = Math.max(join, ONE_POINT);
  const points = new Points();
  const degree: number[] = [];
  const nodes = open.flatMap(({ edge: e }) => [points.at(e.x0, e.y0), points.at(e.x1, e.y1)]);
  for (const n of nodes) degree[n] = (degree[n] ?? 0) + 1;
  const loose = nodes.flatMap((n, i) => (degree[n] === 1 ? [i] : []));
  if (loose.length === 0) return { open, closed };
  const all = [...open, ...closed.flatMap((c) => c.stretches)];
  const edges = all.map((s) => s.edge);
  const index = new EdgesIndex(edges);
  const cuts = new Map<number, [number, number][]>();
  const to = new Map<number, readonly [number, number]>();
  for (const end of loose) {
    const own = edges[end >> 1]!;
    const [x, y] = end % 2 === 0 ? [own.x0, own.y0] : [own.x1, own.y1];
    let best = -1;
    let least = within;
    for (const i of index.near({ minX: x, minY: y, maxX: x, maxY: y }, within)) {
      if (i === end >> 1) continue;
      const d = distanceToEdge(edges[i]!, x, y);
      if (d <= least) [best, least] = [i, d];
    }
    if (best < 0) continue;
    const foot = footOn(edges[best]!, x, y);
    const list = cuts.get(best);
    if (list) list.push(foot);
    else cuts.set(best, [foot]);
    to.set(end, foot);
    if (least > ONE_POINT) repairs.add('joined', foot, least);
  }
  if (cuts.size === 0) return { open, closed };
  const cutUp = (s: Stretch, i: number): Stretch[] => {
    const e = i < open.length ? edges[i]! : s.edge;
    const pieces = pieceBy(s, cuts.get(i) ?? []);
    if (i >= open.length || pieces.length === 0) return pieces;
    const first = to.get(2 * i) ?? [e.x0, e.y0];
    const last = to.get(2 * i + 1) ?? [e.x1, e.y1];
    return pieces.map((p, k) => ({
      ...p,
      edge: moved(
        p.edge,
        k === 0 ? first[0] : p.edge.x0,
        k === 0 ? first[1] : p.edge.y0,
        k === pieces.length - 1 ? last[0] : p.edge.x1,
        k === pieces.length - 1 ? last[1] : p.edge.y1,
      ),
    }));
  };
  const made = open.flatMap(cutUp);
  const whole: Chain[] = [];
  let i = open.length;
  for (const chain of closed) {
    const from = i;
    i += chain.stretches.length;
    if (chain.stretches.some((_, k) => cuts.has(from + k)))
      chain.stretches.forEach((s, k) => {
        made.push(...cutUp(s, from + k));
      });
    else whole.push(chain);
  }
  return { open: made.filter((s) => chordLength(s.edge) > ONE_POINT), closed: whole };
}

/** The point of an edge nearest to one that lies within a little of it. */
function footOn(e: Edge, x: number, y: number): [number, number] {
  if (e.r !== 0) {
    const dx = x - e.cx;
    const dy = y - e.cy;
    const share = Math.abs(e.r) / Math.sqrt(dx * dx + dy * dy);
    return [e.cx + dx * share, e.cy + dy * share];
  }
  const [tx, ty] = tangentAt(e, x, y);
  const along = (x - e.x0) * tx + (y - e.y0) * ty;
  return [e.x0 + tx * along, e.y0 + ty * along];
}

/** The stretch cut at points that lie on it. */
function pieceBy(s: Stretch, points: readonly (readonly [number, number])[]): Stretch[] {
  const e = s.edge;
  const end = parameterEnd(e);
  const stops = points
    .map(([x, y]) => ({ t: pointParameter(e, x, y), x, y }))
    .filter(({ t }) => t > 0 && t < end)
    .sort((a, b) => a.t - b.t);
  const out: Stretch[] = [];
  let at = { t: 0, x: e.x0, y: e.y0 };
  for (const stop of [...stops, { t: end, x: e.x1, y: e.y1 }]) {
    const edge = withEnds(e, at.x, at.y, stop.x, stop.y);
    if (chordLength(edge) <= ONE_POINT) continue;
    out.push({ ...s, edge });
    at = stop;
  }
  return out;
}
