import type { Vector } from '../../geometry/bezier.js';
import { resolve } from '../../geometry/boolean.js';
import { type Contour, EMPTY, type Region } from '../../geometry/region.js';
import { stroke as band } from '../../geometry/stroke.js';
import type { Stroke } from './display.js';
import { apply, applyLinear, determinant, evenScale, type Matrix, multiply } from './matrix.js';
import { ellipsePath, rectanglePath, type Subpath } from './outline-path.js';
import { refuseTangle } from './tangle.js';
import { closedContour, closing, mapped, traced } from './trace.js';

/**
 * What a stroke covers, mm: the band along each run of a path, dots where a run has no length.
 * @param m from the path's coordinates to mm
 * @param pixel mm a pixel of the page, for strokes of fixed width
 */
export function strokeRegion(path: readonly Subpath[], stroke: Stroke, m: Matrix, pixel: number): Region {
  if (stroke.fixed) return bands(path, stroke, m, stroke.width * pixel);
  const even = evenScale(m);
  if (even !== null) return bands(path, stroke, m, stroke.width * even);
  // The pen itself is squeezed: draw the band at about its size first, then squeeze that.
  const s = Math.sqrt(Math.abs(determinant(m)));
  const plain = bands(path, stroke, [s, 0, 0, s, 0, 0], stroke.width * s);
  return resolve(mapped(plain, multiply(m, [1 / s, 0, 0, 1 / s, 0, 0])), 'nonzero');
}

function bands(path: readonly Subpath[], stroke: Stroke, m: Matrix, width: number): Region {
  const contours: Contour[] = [];
  const runs = path.map((run) => ({ run, edges: traced(run, m) }));
  refuseTangle(runs.map((r) => r.edges));
  for (const { run, edges } of runs) {
    if (edges.length === 0) {
      contours.push(...dot(run, stroke.cap, m, width));
      continue;
    }
    const chain = run.closed ? closing(edges) : edges;
    const { join, cap, miterLimit } = stroke;
    contours.push(...band(chain, width, { closed: run.closed, join, cap, miterLimit }).contours);
  }
  return path.length > 1 ? resolve(contours, 'nonzero') : { contours };
}

/** A run of no length shows as its caps alone (SVG 2, section 13.5.4), a lone move not at all. */
function dot(run: Subpath, cap: Stroke['cap'], m: Matrix, width: number): readonly Contour[] {
  if (cap === 'butt' || (run.steps.length === 0 && !run.closed)) return EMPTY.contours;
  const half = width / 2;
  const centre: Vector = [0, 0];
  const shape =
    cap === 'round' ? ellipsePath(centre, half, half) : [rectanglePath(-half, -half, width, width)];
  // A square stands along the path's own x.
  const [x, y] = applyLinear(m, [1, 0]);
  const l = Math.sqrt(x * x + y * y);
  const [px, py] = apply(m, run.start);
  const contour = closedContour(shape[0]!, [x / l, y / l, -y / l, x / l, px, py]);
  return contour ? resolve([contour], 'nonzero').contours : [];
}
