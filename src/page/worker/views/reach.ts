import { area } from '../../../geometry/region.js';
import { type Part, reachOf } from '../../../inspect/sums/reach/reach.js';
import type { Job } from '../../../output/job.js';
import { cutterRadius } from '../../../recipe/recipe.js';
import { lengthText, numberText, type Units } from '../../../schema/units.js';
import { pathOf } from '../path.js';
import type { Shape, View } from '../protocol.js';
import { faceShape, viewOf } from './view.js';

/** Less than this, mm2, is not worth a mark. */
const SPECK = 0.02;

/** Where the roughing cutter gets to in the pockets, what stands for the one that finishes, and what none gets to. */
export function reachView(job: Job, units: Units): View {
  const { recipe, outline, inlays } = job;
  const { roughing, cutter, passes } = recipe;
  const shapes: Shape[] = [faceShape(outline)];
  const finishing = cutterRadius(cutter);
  let [waste, swept, missed] = [0, 0, 0];
  for (const { pair } of inlays) {
    const at = (part: Part, radius: number, allowance: number) =>
      reachOf(recipe, outline, pair, part, radius, allowance);
    const fine = at('pocket', finishing, 0);
    shapes.push({ d: pathOf(pair.pocket.contours), look: 'finished' });
    waste += fine.areas.waste;
    if (roughing) {
      const rough = at('pocket', roughing.diameter / 2, passes.allowance);
      shapes.push({ d: pathOf(rough.reached.contours), look: 'roughed' });
      swept += rough.areas.reached;
    }
    if (area(fine.left) > SPECK) shapes.push({ d: pathOf(fine.left.contours), look: 'missed' });
    missed += area(fine.left) > SPECK ? area(fine.left) : 0;
  }
  const share = (mm2: number): string => `${numberText((100 * mm2) / waste, 1)} %`;
  const fineText = lengthText(cutter.diameter, units);
  return viewOf('reach', outline, {
    shapes,
    key: [
      ...(roughing
        ? [{ look: 'roughed', text: `the ${lengthText(roughing.diameter, units)} cutter roughs` }]
        : []),
      { look: 'finished', text: `only the ${fineText} cutter gets to` },
      ...(missed > 0 ? [{ look: 'missed', text: 'no cutter gets to' }] : []),
    ],
    says: [
      roughing
        ? `The roughing cutter takes ${share(swept)} of the pockets, with ${lengthText(passes.allowance, units)} left on the walls.`
        : `No roughing cutter is named: the ${fineText} cutter clears it all.`,
      missed > 0 ? `${share(missed)} is reached by none.` : `The ${fineText} cutter gets everywhere.`,
    ].join(' '),
  });
}
