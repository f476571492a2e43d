import type { Jig } from '../bowl/jig.js';
import { circle, polygon } from '../geometry/region.js';
import { drawingDxf } from './dxf.js';
import type { Units } from './format.js';
import { MARKS_BORDER, type Marks, referenceSide, squareAt } from './marks.js';
import { frameOf } from './ring.js';
import { drawingSvg } from './svg.js';

/** Arms of the datum, mm. */
const ARM = 3;

/** The drawings of a clamp jig for CAM: the opening on the cut layer, the board's edge as a mark. */
export function jigFiles(
  jig: Jig,
  title: string,
  units: Units,
): { readonly svg: string; readonly dxf: string } {
  const half = jig.board / 2;
  const sheet = { width: jig.board + 2 * MARKS_BORDER, height: jig.board + 2 * MARKS_BORDER };
  const side = referenceSide(units);
  const marks: Marks = {
    outline: [
      polygon([
        [-half, -half],
        [half, -half],
        [half, half],
        [-half, half],
      ]),
    ],
    datum: {
      circle: circle(-half, -half, ARM / 2),
      lines: [
        [-half - ARM, -half, -half + ARM, -half],
        [-half, -half - ARM, -half, -half + ARM],
      ],
    },
    ...squareAt(half - side, -half - (MARKS_BORDER + side) / 2, sheet, units),
  };
  const frame = frameOf(sheet, units);
  return {
    svg: drawingSvg('pocket', title, jig.opening, marks, frame),
    dxf: drawingDxf('POCKET', jig.opening, marks, frame),
  };
}
