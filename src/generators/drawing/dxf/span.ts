import type { Vector } from '../../../geometry/bezier.js';
import { atan2 } from '../../../geometry/trig.js';
import { arcPoint } from '../ellipse.js';
import { apply, applyLinear } from '../matrix.js';
import type { EllipseArc, Step } from '../outline-path.js';
import type { Placed } from './place.js';

/** A box that holds every path, in the drawing's units: its longer side, and its middle. Curves count by their control points. */
export function spanOf(placed: readonly Placed[]): { extent: number; middle: Vector } {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = ([x, y]: Vector): void => {
    minX = Math.min(minX, x);
    maxX = Math.max(maxX, x);
    minY = Math.min(minY, y);
    maxY = Math.max(maxY, y);
  };
  for (const { path, matrix } of placed)
    for (const run of path) {
      take(apply(matrix, run.start));
      for (const step of run.steps) {
        take(apply(matrix, step.to));
        if (step.kind === 'arc') {
          const { centre, u, v, from, by } = step.arc;
          const there = {
            centre: apply(matrix, centre),
            u: applyLinear(matrix, u),
            v: applyLinear(matrix, v),
            from,
            by,
          };
          for (const p of extremes(there)) take(p);
        } else for (const p of handles(step)) take(apply(matrix, p));
      }
    }
  return { extent: Math.max(maxX - minX, maxY - minY), middle: [(minX + maxX) / 2, (minY + maxY) / 2] };
}

function handles(step: Step): readonly Vector[] {
  switch (step.kind) {
    case 'quadratic':
      return [step.handle];
    case 'cubic':
      return [step.first, step.second];
    case 'rational':
      return step.points;
    default:
      return [];
  }
}

/** The points of an arc where it runs level or upright. */
function extremes(arc: EllipseArc): Vector[] {
  const level = atan2(arc.v[1], arc.u[1]);
  const upright = atan2(arc.v[0], arc.u[0]);
  const turns = 2 * Math.PI;
  return [level, level + Math.PI, upright, upright + Math.PI].flatMap((t) => {
    const along = arc.by < 0 ? arc.from - t : t - arc.from;
    const on = along - Math.floor(along / turns) * turns;
    return on <= Math.abs(arc.by) ? [arcPoint(arc, t)] : [];
  });
}
