import { islandsOf } from '../fit/islands.js';
import type { Contour } from '../geometry/region.js';
import { mirrorX } from '../geometry/transform.js';
import type { Coupon } from './coupon.js';
import { couponSheet } from './coupon-sheet.js';
import { PICTURE_WIDTH } from './draw.js';
import { drawingDxf } from './dxf.js';
import type { Files } from './job.js';
import { type Marks, marksOf } from './marks.js';
import { type Label, numberHeight } from './numbers.js';
import { pictureSvg } from './picture.js';
import type { Renderer } from './renderer.js';
import { frameOf } from './ring.js';
import { drawingSvg } from './svg.js';

/** Greatest height of a part's number, mm. */
const TALLEST = 3;

/** Every file of a coupon but job.json, in memory. */
export function drawCoupon(coupon: Coupon, renderer: Renderer): Files {
  const { job, steps } = coupon;
  const { name, units } = job.recipe;
  const { pocket, plug, mirrored } = job.pair;
  const frame = frameOf(job.sheet, units);
  const forPocket = stepMarks(coupon, false);
  const forPlug = stepMarks(coupon, mirrored);
  const picture = pictureSvg(
    job,
    steps.flatMap((s) => s.dots),
  );
  return new Map<string, string | Uint8Array>([
    ['pocket.svg', drawingSvg('pocket', `${name}: pocket`, pocket, forPocket, frame)],
    ['plug.svg', drawingSvg('plug', `${name}: plug${mirrored ? ', mirrored' : ''}`, plug, forPlug, frame)],
    ['pocket.dxf', drawingDxf('POCKET', pocket, forPocket, frame)],
    ['plug.dxf', drawingDxf('PLUG', plug, forPlug, frame)],
    ['picture.svg', picture],
    ['picture.png', renderer.png(picture, PICTURE_WIDTH)],
    ['sheet.html', couponSheet(coupon, picture)],
  ]);
}

/**
 * The marks of a job with the dots, and with every part numbered by its step: 2.3 is the third part of step 2. Loose
 * parts of two steps look alike, and their sizes differ by hundredths.
 */
function stepMarks({ job, steps }: Coupon, mirrored: boolean): Marks {
  const dots: readonly Contour[] = steps.flatMap((s) => s.dots);
  return {
    ...marksOf(job, mirrored),
    numbers: steps.flatMap((s) =>
      islandsOf(s.pair).map(({ number, at: [x, y], room }) =>
        label(`${s.number}.${number}`, mirrored ? -x : x, y, room),
      ),
    ),
    dots: mirrored ? mirrorX({ contours: dots }).contours : dots,
  };
}

function label(text: string, x: number, y: number, room: number): Label {
  return { text, x, y, height: numberHeight(text, room, TALLEST) };
}
