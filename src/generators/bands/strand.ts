import { type Edge, endTangent, line, startTangent } from '../../geometry/edge.js';
import type { Parametric } from '../../geometry/parametric.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Band } from './band.js';
import { laidCurve, type Track } from './track.js';

/** The wavy line t = height cos(whole turns of u + phase), with u and phase in repeats. */
export function wavy(track: Track, height: number, phase: number): Parametric {
  const k = 2 * Math.PI;
  return {
    point: (u) => [u * track.repeat, height * cos(k * (u + phase))],
    tangent: (u) => [track.repeat, -height * k * sin(k * (u + phase))],
  };
}

/**
 * The shortest repeat, mm, of a wavy line of this height that a strap of this width can follow: at its crests, where
 * the radius is repeat^2 / (4 pi^2 height), the strap's inner side must still have a radius.
 */
export function shortestWave(height: number, strap: number): number {
  return 2 * Math.PI * Math.sqrt(height * ROOM * (strap / 2));
}

/** The least radius of a strap's middle line, in half widths. */
const ROOM = 1.15;

/** A wavy line laid from u0 to u1, in repeats. */
export function laidStrand(track: Track, curve: Parametric, u0: number, u1: number): Edge[] {
  return laidCurve(track, curve, u0, u1, Math.max(1, Math.ceil(4 * (u1 - u0))));
}

/** A wavy line the whole way; where it meets the neighbouring stave it runs straight on, past the window's end. */
export function wholeStrand({ track, beyond }: Band, curve: Parametric): Edge[] {
  const path = laidStrand(track, curve, 0, track.repeats);
  return track.ends === 'joint' ? ahead(before(path, beyond), beyond) : path;
}

/** The chain run straight on from its end by so many mm. */
export function ahead(path: Edge[], by: number): Edge[] {
  const last = path[path.length - 1]!;
  const [tx, ty] = endTangent(last);
  return [...path, line(last.x1, last.y1, last.x1 + by * tx, last.y1 + by * ty)];
}

/** The chain begun so many mm earlier, straight. */
export function before(path: Edge[], by: number): Edge[] {
  const first = path[0]!;
  const [tx, ty] = startTangent(first);
  return [line(first.x0 - by * tx, first.y0 - by * ty, first.x0, first.y0), ...path];
}
