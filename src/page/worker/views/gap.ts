import type { Job } from '../../../output/job.js';
import { cornerRadius } from '../../../recipe/recipe.js';
import { lengthText, type Units } from '../../../schema/units.js';
import { setPlug } from '../figure.js';
import { pathOf } from '../path.js';
import type { View } from '../protocol.js';
import { faceShape, viewOf } from './view.js';

const SHARE = { plug: 'the plug', pocket: 'the pocket', both: 'both, half each' } as const;

/** The plug in its pocket, the gap drawn wider than it is. */
export function gapView(job: Job, units: Units): View {
  const { outline, inlays, recipe } = job;
  const { clearance, from } = recipe.fit;
  const r = cornerRadius(recipe.cutter);
  const c = from === 'both' ? clearance / 2 : clearance;
  const plug = from === 'pocket' ? 0 : c;
  const pocket = from === 'plug' ? 0 : c;
  const len = (mm: number): string => lengthText(mm, units);
  return viewOf('gap', outline, {
    shapes: [
      faceShape(outline),
      ...inlays.map(({ pair }) => ({ d: pathOf(pair.pocket.contours), look: 'gap' })),
      ...inlays.map(({ pair }) => ({ d: pathOf(setPlug(pair).contours), look: 'seated' })),
    ],
    key: [
      { look: 'gap', text: 'gap, drawn wider than it is' },
      { look: 'seated', text: 'plug' },
    ],
    says:
      clearance === 0
        ? 'No gap: plug and pocket are drawn alike. Cut a coupon first.'
        : `${len(clearance)} on each side all round, taken from ${SHARE[from]}. Inside corners: ${len(r + pocket)} or more in the outline of the pocket's islands and ${len(r - pocket)} in its corners, ${len(r + plug)} in the plug. Zoom in to see its true width.`,
  });
}
