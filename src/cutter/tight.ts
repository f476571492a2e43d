import { type Edge, endTangent, parameterEnd, pointAt, reversed, startTangent } from '../geometry/edge.js';
import { EdgesIndex } from '../geometry/edges-index.js';
import { movedLeft } from '../geometry/inset.js';
import { type Contour, edgeBox } from '../geometry/region.js';
import { nearStretches } from '../geometry/too-near.js';
import { TIGHT } from '../geometry/tolerances.js';

/** A kink the proof would not take for a smooth joint (0.1 degree = 0.00175). */
const KINK = 1e-3;

/**
 * Places where a ball of radius r cannot roll along both sides of the contours touching every point: each a point of
 * the boundary. Empty when the boundary has reach r on both sides (Federer 1959), give or take TIGHT.
 * Stops after the first when `first` is set.
 */
export function tightPlaces(contours: readonly Contour[], r: number, first = false): [number, number][] {
  const edges: Edge[] = contours.flat();
  const index = new EdgesIndex(edges);
  const out: [number, number][] = [];
  let base = 0;
  for (const c of contours) {
    for (let i = 0; i < c.length; i++) {
      const e = c[i]!;
      const after = c[(i + 1) % c.length]!;
      if (kinked(e, after)) out.push([e.x1, e.y1]);
      else {
        const own = { base, length: c.length, at: i };
        const place = tightSide(e, r, own, edges, index) ?? tightSide(reversed(e), r, own, edges, index);
        if (place) out.push(place);
      }
      if (first && out.length > 0) return out;
    }
    base += c.length;
  }
  return out;
}

function kinked(e: Edge, after: Edge): boolean {
  const [ax, ay] = endTangent(e);
  const [bx, by] = startTangent(after);
  return ax * bx + ay * by <= 0 || Math.abs(ax * by - ay * bx) > KINK;
}

interface Place {
  readonly base: number;
  readonly length: number;
  readonly at: number;
}

/** A place on the edge where the ball on its left does not fit, or null. */
function tightSide(
  e: Edge,
  r: number,
  own: Place,
  edges: readonly Edge[],
  index: EdgesIndex,
): [number, number] | null {
  if (e.r > 0 && e.r < r - TIGHT) return pointAt(e, parameterEnd(e) / 2);
  const moved = movedLeft(e, r);
  // An arc of just r: its ball stands still, and the neighbours' balls at their ends are the same ball.
  if (!moved) return null;
  for (const j of index.near(edgeBox(moved), r - TIGHT)) {
    if (isNeighbour(j, own, edges)) continue;
    nears.length = 0;
    nearStretches(moved, edges[j]!, r - TIGHT, 0, nears);
    if (nears.length > 0) return pointAt(e, (nears[0]! + nears[1]!) / 2);
  }
  return null;
}

const nears: number[] = [];

/** The edge itself, or a smooth neighbour: next to each other they cannot trouble a ball that fits each alone. */
function isNeighbour(j: number, own: Place, edges: readonly Edge[]): boolean {
  const k = j - own.base;
  if (k < 0 || k >= own.length) return false;
  const apart = Math.abs(k - own.at);
  const steps = Math.min(apart, own.length - apart);
  if (steps <= 1) return true;
  if (steps > 2) return false;
  // Line, corner arc, line: the ball stops where the arc begins, and the arc is the ball's own circle or gentler.
  const between = own.base + ((apart === steps ? Math.min(k, own.at) : Math.max(k, own.at)) + 1) % own.length;
  return edges[j]!.r === 0 && edges[own.base + own.at]!.r === 0 && edges[between]!.r !== 0;
}
