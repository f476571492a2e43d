import type { Vector } from '../../geometry/bezier.js';
import { union } from '../../geometry/boolean.js';
import { footOn } from '../../geometry/nearest.js';
import { contains, distanceToBoundary, type Region } from '../../geometry/region.js';
import { stroke } from '../../geometry/stroke.js';
import { Refusal } from '../../schema/fault.js';
import { mm } from '../values.js';
import { framed } from './framed.js';
import { mitred, rounded } from './turns.js';

/** How a strap along a path is drawn. */
export interface StrapStyle {
  /** mm */
  readonly width: number;
  readonly turns: 'round' | 'mitred';
}

/** The strap along a path through points, rounded or square at its turns and its ends. */
export function strapAlong(points: readonly Vector[], style: StrapStyle, closed: boolean): Region {
  const round = style.turns === 'round';
  const path = round ? rounded(points, closed) : mitred(points, closed);
  return stroke(path, style.width, { closed, cap: round ? 'round' : 'butt' });
}

/**
 * A strap along a path larger than the field, cut off at the field's edge or at a frame there. Runs of the path that
 * would lie under the edge or crowd the frame are left out; where the path leaves for them, it goes straight to the edge.
 *
 * @param gap least gap between the frame and a run beside it, mm
 */
export function cutStrap(
  points: readonly Vector[],
  style: StrapStyle,
  gap: number,
  frame: boolean,
  field: Region,
): Region {
  const depth = frame ? 1.5 * style.width + gap : style.width / 2;
  const runs = keptRuns(points, field, depth, style.width);
  const straps = union(runs.map((r) => strapAlong(r, style, false)));
  const region = framed(straps, { strap: style.width, gap, frame, round: style.turns === 'round' }, field);
  if (region.contours.length > 0) return region;
  throw new Refusal(
    'nothing-fits',
    `pattern.gap: straps with gaps of ${mm(gap)} leave no run of the curve in the outline; make strap and gap smaller`,
  );
}

/** Points this much nearer than asked are kept, mm: a run that just fits must not fall to rounding. */
const ROUNDING = 1e-6;

/** The stretches of the path that lie `depth` inside the field, each with its way out at the ends where it goes on. */
function keptRuns(points: readonly Vector[], field: Region, depth: number, past: number): Vector[][] {
  const kept = points.map(
    ([x, y]) => contains(field, x, y) && distanceToBoundary(field, x, y) >= depth - ROUNDING,
  );
  const out: Vector[][] = [];
  for (let i = 0; i < points.length; i++) {
    if (!kept[i] || kept[i - 1]) continue;
    let end = i;
    while (kept[end + 1]) end++;
    // Two points or one would be a stub or a tight loop on the edge.
    if (end > i + 1) {
      const run = points.slice(i, end + 1);
      if (i > 0) run.unshift(wayOut(points[i]!, points[i - 1]!, field, past));
      if (end + 1 < points.length) run.push(wayOut(points[end]!, points[end + 1]!, field, past));
      out.push(run);
    }
    i = end;
  }
  return out;
}

/** Cosine of the angle to the shortest way out at which the path still keeps its own direction. */
const KEEPS_COURSE = 0.64;

/** Where the path from p towards `next` leaves the field, and `past` mm further; the shortest way out if that is much shorter. */
function wayOut(p: Vector, next: Vector, field: Region, past: number): Vector {
  let foot: Vector = p;
  let least = Number.POSITIVE_INFINITY;
  for (const c of field.contours)
    for (const e of c) {
      const q = footOn(e, p[0], p[1]);
      const d = distance(p, q);
      if (d < least) [foot, least] = [q, d];
    }
  const step = distance(p, next);
  const along: Vector = [(next[0] - p[0]) / step, (next[1] - p[1]) / step];
  const out: Vector = [(foot[0] - p[0]) / least, (foot[1] - p[1]) / least];
  const cosine = along[0] * out[0] + along[1] * out[1];
  if (cosine < KEEPS_COURSE) return [foot[0] + past * out[0], foot[1] + past * out[1]];
  const far = least / cosine + past;
  return [p[0] + far * along[0], p[1] + far * along[1]];
}

function distance(p: Vector, q: Vector): number {
  return Math.sqrt((q[0] - p[0]) * (q[0] - p[0]) + (q[1] - p[1]) * (q[1] - p[1]));
}
