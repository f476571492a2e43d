import { coupon } from '../../../coupon.js';
import { ladder } from '../../../fit/ladder.js';
import type { Assets } from '../../../generators/generator.js';
import type { Job } from '../../../output/job.js';
import { lengthText, type Units } from '../../../schema/units.js';
import { down, setPlug } from '../figure.js';
import { pathOf } from '../path.js';
import type { View } from '../protocol.js';
import { counted, faceShape, viewOf } from './view.js';

/** The trial piece that finds the clearance, as `inlaywright coupon` makes it when nothing else is asked. */
export function couponView({ recipe }: Job, assets: Assets, units: Units): View {
  const { repeatability } = recipe.machine;
  const { job, steps } = coupon(recipe, assets, { ladder: ladder({ repeatability }), size: null });
  const { outline } = job;
  const { box } = outline;
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const face = down(box);
  return viewOf('coupon', outline, {
    box: { ...face, minY: face.minY - size * 0.04 },
    shapes: [
      faceShape(outline),
      ...steps.flatMap(({ pair, dots }) => [
        { d: pathOf(pair.pocket.contours), look: 'gap' },
        { d: pathOf(setPlug(pair).contours), look: 'seated' },
        { d: pathOf(dots), look: 'dot' },
      ]),
    ],
    labels: steps.map(({ clearance, box: own }) => ({
      x: (own.minX + own.maxX) / 2,
      // Above its step: on it, marks and shapes would be in the way.
      y: down(own).minY - size * 0.012,
      text: lengthText(clearance, units),
      size: size * 0.022,
    })),
    key: [
      { look: 'gap', text: 'gap, drawn wider than it is' },
      { look: 'dot', text: 'dots that number the steps' },
    ],
    says: `The hardest spots of the pattern, ${counted(steps.length, 'step')} from the tightest to the loosest. Make it with inlaywright coupon, and note what fits.`,
  });
}
