import { type Edge, parameterEnd, pointAt, pointParameter, tangentAt } from '../../geometry/edge.js';
import { EdgesIndex } from '../../geometry/edges-index.js';
import { footOn, nearestPoints } from '../../geometry/nearest.js';
import { bounds, distanceToEdge, edgeBox, type Region } from '../../geometry/region.js';
import { boxOf, grown } from './box.js';
import type { Place, Spot } from './spot.js';

/** As thin: within half a percent and two microns of the thinnest. */
const AS_THIN = 1.005;
const HAIR = 0.002;

/** Sine of the most that the way across may lean from the normals at its ends. */
const SQUARE = 0.02;

/** A ball that fits is not hindered by boundary it presses into by less than this, mm. */
const PRESS = 0.001;

/** Thicker than this is neither wall nor limb, mm: nothing that cracks or snaps when it is pressed (our own choice). */
export const MOST_THICK = 12;

/** The way across a wall or limb: its two feet on the boundary. */
interface Across {
  readonly p: readonly [number, number];
  readonly q: readonly [number, number];
  readonly distance: number;
}

/**
 * The thinnest wall (field between boundaries) or limb (pattern between boundaries) and every place as thin. Across it
 * the boundary is square to the way on both sides, and the ball on that way as its diameter is empty: so it is a least
 * thickness, and a corner, which has none, never counts. Null when there is none up to MOST_THICK.
 *
 * @param r corner radius, mm: nothing of a safe region is thinner than 2r
 */
export function thinnest(region: Region, kind: 'wall' | 'limb', r: number): Spot | null {
  const edges = region.contours.flat();
  const index = new EdgesIndex(edges);
  const round = circles(region, kind);
  for (let reach = 2.2 * r; ; reach = Math.min(2 * reach, MOST_THICK)) {
    const found = [...acrosses(edges, index, kind, reach), ...round];
    const least = found.reduce((d, a) => Math.min(d, a.distance), Number.POSITIVE_INFINITY);
    if (least <= reach) {
      const thin = found.filter((a) => a.distance <= least * AS_THIN + HAIR);
      return { kind, size: least, turn: 0, places: thin.map((a) => place(a, r)) };
    }
    if (reach === MOST_THICK) return null;
  }
}

function place({ p, q }: Across, r: number): Place {
  return { at: [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2], box: grown(boxOf([p, q]), r / 2) };
}

function acrosses(edges: readonly Edge[], index: EdgesIndex, kind: Spot['kind'], reach: number): Across[] {
  const out: Across[] = [];
  let least = reach;
  edges.forEach((e, i) => {
    // Only what is as thin as the thinnest so far is of use.
    const near = [...index.nearEdge(i, least * AS_THIN + HAIR)];
    for (const j of near) {
      if (j <= i) continue;
      const f = edges[j]!;
      for (const n of ways(e, f)) {
        if (n.distance < HAIR || n.distance > least * AS_THIN + HAIR) continue;
        if (!faces(e, n.p, n.q, kind) || !faces(f, n.q, n.p, kind) || !free(n, edges, index)) continue;
        out.push(n);
        least = Math.min(least, n.distance);
        break;
      }
    }
  });
  return out;
}

/**
 * Ways from e to f: in the middle of where they lie side by side, since parallel edges are as near anywhere and at their
 * ends something else may be nearer; and where they come nearest.
 */
function ways(e: Edge, f: Edge): Across[] {
  const nearest = nearestPoints([e], [f])!;
  const along = (x: number, y: number): number => {
    const [fx, fy] = footOn(e, x, y);
    return Math.min(parameterEnd(e), Math.max(0, pointParameter(e, fx, fy)));
  };
  const p = pointAt(e, (along(f.x0, f.y0) + along(f.x1, f.y1)) / 2);
  const q = footOn(f, p[0], p[1]);
  const distance = Math.sqrt((q[0] - p[0]) * (q[0] - p[0]) + (q[1] - p[1]) * (q[1] - p[1]));
  return [{ p, q, distance }, nearest];
}

/** Does the way from p on the edge to q leave it squarely, into the pattern (limb) or into the field (wall)? */
function faces(
  e: Edge,
  p: readonly [number, number],
  q: readonly [number, number],
  kind: Spot['kind'],
): boolean {
  const [tx, ty] = tangentAt(e, p[0], p[1]);
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const d = Math.sqrt(dx * dx + dy * dy);
  const left = (tx * dy - ty * dx) / d;
  return Math.abs(tx * dx + ty * dy) <= SQUARE * d && (kind === 'limb' ? left > 0 : left < 0);
}

/** Is the ball across the way empty? */
function free({ p, q, distance }: Across, edges: readonly Edge[], index: EdgesIndex): boolean {
  const x = (p[0] + q[0]) / 2;
  const y = (p[1] + q[1]) / 2;
  const box = { minX: x, minY: y, maxX: x, maxY: y };
  return [...index.near(box, distance / 2)].every(
    (k) => distanceToEdge(edges[k]!, x, y) >= distance / 2 - PRESS,
  );
}

/** Whole circles: as wide one way as the other, so no way across is the least; their diameter counts. */
function circles(region: Region, kind: Spot['kind']): Across[] {
  return region.contours.flatMap((c) => {
    const { cx, cy, r } = c[0]!;
    if (r === 0 || r > 0 !== (kind === 'limb')) return [];
    if (c.some((e) => Math.abs(e.cx - cx) + Math.abs(e.cy - cy) + Math.abs(e.r - r) > 1e-6)) return [];
    const b = edgeBox(c[0]!);
    const all = bounds([c]);
    if (b.maxX - b.minX > MOST_THICK) return [];
    // The field inside a hole, or the disc itself, must be empty of other contours.
    const others = region.contours.some(
      (o) =>
        o !== c &&
        o[0]!.x0 > all.minX &&
        o[0]!.x0 < all.maxX &&
        (o[0]!.x0 - cx) * (o[0]!.x0 - cx) + (o[0]!.y0 - cy) * (o[0]!.y0 - cy) < r * r,
    );
    const d = 2 * Math.abs(r);
    return others ? [] : [{ p: [cx - d / 2, cy] as const, q: [cx + d / 2, cy] as const, distance: d }];
  });
}
