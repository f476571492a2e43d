import { type Edge, midpoint, pointAt, sweep } from '../../geometry/edge.js';
import { bounds, type Contour, type Region } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import { grown } from './box.js';
import type { Place, Spot } from './spot.js';

/** Radii up to so many times the tightest are as tight, and turns of this share of the sharpest as sharp. */
const AS_TIGHT = 1.1;
const AS_SHARP = 0.95;

/** What turns by less than 20 degrees, radians, is hardly a corner, and counts only where there is no other. */
const SLIGHT = (20 / 180) * Math.PI;

/** Arcs of one circle: centres and radii this near, mm. */
const SAME_CIRCLE = 1e-6;

/** A bend of more than this many corner radii is a gentle curve and no corner (our own choice). */
const GENTLE = 6;

/** One arc of a boundary, which the kernel may hold in several edges. */
interface Bend {
  readonly edges: readonly Edge[];
  readonly radius: number;
  readonly turn: number;
}

/**
 * The tightest corners of a region on one side: of the smallest radius, and among those the ones that turn the most.
 * Null when nothing but gentle curves bends that way.
 *
 * @param side pocket: convex corners, which the cutter turns inside the pocket; plug: concave ones, from outside the plug
 * @param r corner radius, mm
 */
export function corners(region: Region, side: 'pocket' | 'plug', r: number): Spot | null {
  const all = region.contours
    .flatMap(bendsOf)
    .filter((b) => b.radius <= GENTLE * r && b.edges[0]!.r > 0 === (side === 'pocket'));
  if (all.length === 0) return null;
  const turning = all.filter((b) => b.turn >= SLIGHT);
  const bends = turning.length > 0 ? turning : all;
  const radius = bends.reduce((least, b) => Math.min(least, b.radius), Number.POSITIVE_INFINITY);
  const tight = bends.filter((b) => b.radius <= radius * AS_TIGHT);
  const turn = tight.reduce((most, b) => Math.max(most, b.turn), 0);
  const sharp = tight.filter((b) => b.turn >= turn * AS_SHARP);
  const size = sharp.reduce((least, b) => Math.min(least, b.radius), Number.POSITIVE_INFINITY);
  return { kind: `${side}-corner`, size, turn, places: sharp.map((b) => place(b, r)) };
}

function bendsOf(contour: Contour): Bend[] {
  const bends: Edge[][] = [];
  for (const e of contour) {
    const last = bends.at(-1);
    if (last && sameCircle(last.at(-1)!, e)) last.push(e);
    else bends.push([e]);
  }
  // The contour may start in the middle of an arc.
  if (bends.length > 1 && sameCircle(bends.at(-1)!.at(-1)!, bends[0]![0]!))
    bends[0] = [...bends.pop()!, ...bends[0]!];
  return bends
    .filter((b) => b[0]!.r !== 0)
    .map((edges) => ({
      edges,
      radius: Math.abs(edges[0]!.r),
      turn: edges.reduce((sum, e) => sum + sweep(e), 0),
    }));
}

function sameCircle(e: Edge, f: Edge): boolean {
  if (e.r === 0 || f.r === 0) return false;
  const near = (a: number, b: number): boolean => Math.abs(a - b) < SAME_CIRCLE;
  return near(e.r, f.r) && near(e.cx, f.cx) && near(e.cy, f.cy);
}

function place(bend: Bend, r: number): Place {
  return { at: middle(bend), box: grown(bounds([bend.edges]), r / 4) };
}

/** The point half way along. */
function middle({ edges, turn }: Bend): [number, number] {
  let left = turn / 2;
  for (const e of edges) {
    const s = sweep(e);
    if (left <= s) return pointAt(e, sin(left) / (1 + cos(left)));
    left -= s;
  }
  return midpoint(edges.at(-1)!);
}
