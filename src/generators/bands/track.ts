import type { Vector } from '../../geometry/bezier.js';
import { chained } from '../../geometry/chain.js';
import {
  arc,
  bulged,
  type Edge,
  line,
  pointAt,
  splitArc,
  startTangent,
  sweep,
  tangentAt,
} from '../../geometry/edge.js';
import { curveArcs, type Parametric } from '../../geometry/parametric.js';
import { tan } from '../../geometry/trig.js';

/** What the strip's point (s, t) becomes on the face: the place, mm, and how it moves per mm along and across. */
export interface Spot {
  readonly at: Vector;
  readonly along: Vector;
  readonly across: Vector;
}

/**
 * The way a band runs. A band is drawn on a straight strip, s mm along its middle and t mm across (to the left of the
 * way), and laid on the face through `spot`. Lines across the strip stay straight on every track.
 */
export interface Track {
  /** closed: the end meets the start; joint: both ends meet the neighbouring staves; free: the ends are seen. */
  readonly ends: 'closed' | 'joint' | 'free';
  /** A whole number of repeats. */
  readonly repeats: number;
  /** Length of one repeat on the strip, mm; on a rounded frame the true one differs a little from side to side. */
  readonly repeat: number;
  spot(s: number, t: number): Spot;
  /** The line along the strip at t, from s0 to s1. */
  along(t: number, s0: number, s1: number): Edge[];
}

/** Length of the whole track on the strip, mm. */
export function trackLength(track: Track): number {
  return track.repeats * track.repeat;
}

/** A smooth curve of the strip, laid on the face. Equal stretches of its parameter: as `curveArcs` asks. */
export function laidCurve(track: Track, curve: Parametric, from: number, to: number, pieces: number): Edge[] {
  return curveArcs(onTrack(track, curve), from, to, pieces).map((e) =>
    Math.abs(e.r) > AS_GOOD_AS_STRAIGHT ? line(e.x0, e.y0, e.x1, e.y1) : e,
  );
}

/** An arc of this radius leaves a chord of 100 mm by a hundred-thousandth and turns by a millionth, mm. */
const AS_GOOD_AS_STRAIGHT = 1e8;

/** The curve of the strip as a curve of the face. */
function onTrack(track: Track, curve: Parametric): Parametric {
  return {
    point: (v) => track.spot(...curve.point(v)).at,
    tangent(v) {
      const [s, t] = curve.point(v);
      const [ds, dt] = curve.tangent(v);
      const { along, across } = track.spot(s, t);
      return [along[0] * ds + across[0] * dt, along[1] * ds + across[1] * dt];
    },
  };
}

/** A chain of lines and arcs of the strip, laid on the face; its ends meet to the last bit. */
export function laid(track: Track, path: readonly Edge[]): Edge[] {
  return chained(path.flatMap((e) => laidEdge(track, e)));
}

function laidEdge(track: Track, e: Edge): Edge[] {
  if (e.r === 0 && e.y0 === e.y1) return track.along(e.y0, e.x0, e.x1);
  if (e.r === 0 && e.x0 === e.x1) {
    const [x0, y0] = track.spot(e.x0, e.y0).at;
    const [x1, y1] = track.spot(e.x1, e.y1).at;
    return [line(x0, y0, x1, y1)];
  }
  const end = e.r === 0 ? 1 : sweep(e);
  const at = (v: number): Vector =>
    e.r === 0
      ? [e.x0 + (e.x1 - e.x0) * v, e.y0 + (e.y1 - e.y0) * v]
      : pointAt(e, v >= end ? tan(end / 2) : tan(v / 2));
  const curve = {
    point: at,
    tangent: (v: number) => (e.r === 0 ? startTangent(e) : tangentAt(e, ...at(v))),
  };
  return laidCurve(track, curve, 0, end, 2);
}

/** An arc about a centre by radius and angles (radians), in pieces under half a turn. */
export function arcAbout([cx, cy]: Vector, from: Vector, to: Vector, swept: number): Edge[] {
  const n = Math.max(1, Math.ceil(Math.abs(swept) / 2));
  if (n === 1) return [bulged(from[0], from[1], to[0], to[1], tan(swept / 4))];
  const r = Math.sqrt((from[0] - cx) * (from[0] - cx) + (from[1] - cy) * (from[1] - cy));
  const whole = arc(from[0], from[1], to[0], to[1], cx, cy, swept > 0 ? r : -r);
  return splitArc(whole, Math.abs(swept));
}
