import { type FigureShown, figureShown } from '../bowl/figure.js';
import { makeVessel } from '../bowl/vessel.js';
import { subtract } from '../geometry/boolean.js';
import { area, bounds, type Region } from '../geometry/region.js';
import { mirrorX, placedRegion } from '../geometry/transform.js';
import { inwards, lengthText, numberText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/** A share of the figure below this is a few samples at its edge. */
const SOME = 0.01;
/** Figures that differ by less than this share of their area from their mirror image look alike. */
const ALIKE = 0.02;
/** A figure that moves less than this between its faces is not seen to move, mm. Our own choice. */
const MOVES = 1;

/** What becomes of the figure when the staves are turned round: where it shows, and how it looks on the other face. */
export function vesselFigure({ recipe, pair }: Setup): Finding[] {
  const { bowl, depth, fit } = recipe;
  if (!bowl) return [];
  const shown = figureShown(makeVessel(bowl), pair.pocket, { depth, glueGap: fit.glueGap });
  return [...hidden(shown, recipe), ...cutAway(shown), ...otherFace(shown, pair.pocket, recipe)];
}

function hidden(shown: FigureShown, { depth, units }: Setup['recipe']): Finding[] {
  const text = (mm: number): string => lengthText(mm, units);
  const faces = (['outside', 'inside'] as const).filter((f) => shown[f].missing !== null);
  if (faces.length === 0) return [];
  const worst = faces.map((f) => shown[f].missing!).reduce((a, b) => (b.mm > a.mm ? b : a));
  const share = faces.map((f) => `${percent(1 - shown[f].shows)} of it ${f}`).join(' and ');
  const needed = depth + worst.mm;
  return [
    {
      code: 'not-through',
      severity: 'warn',
      where: worst.at,
      numbers: { depth, needed, short: worst.mm },
      do: `The plug's foot does not reach the finished wall everywhere: ${share} will not show. Make the pocket ${text(inwards(needed, units, Math.ceil))} deep (depth), or the wall thinner there.`,
    },
  ];
}

function cutAway(shown: FigureShown): Finding[] {
  const lost = (f: 'outside' | 'inside'): number => 1 - shown[f].survives;
  const gone = (['outside', 'inside'] as const).filter((f) => lost(f) > SOME);
  if (gone.length === 0) return [];
  const shares = gone.map((f) => `${percent(lost(f))} on the ${f}`);
  return [
    {
      code: 'carved-away',
      severity: 'note',
      where: null,
      numbers: { outside: lost('outside'), inside: lost('inside') },
      do: `Some of the figure lies where the stave is carved or sawn away: ${shares.join(', ')}. Move it from the edges (outline.margin), or let it be so.`,
    },
  ];
}

function otherFace({ shift }: FigureShown, pocket: Region, { units }: Setup['recipe']): Finding[] {
  if (!shift) return [];
  const out: Finding[] = [];
  const differs = unlikeMirror(pocket);
  if (differs > ALIKE)
    out.push({
      code: 'mirrored-inside',
      severity: 'note',
      where: null,
      numbers: { differs },
      do: 'The second face of the wall shows the mirror image of the first, and this figure differs from its own: letters would read backwards there.',
    });
  if (Math.abs(shift.rise.mm) > MOVES || shift.widest > 1 + 2 * ALIKE)
    out.push({
      code: 'moved-inside',
      severity: 'note',
      where: shift.rise.at,
      numbers: { rise: shift.rise.mm, widest: shift.widest },
      do: `From the outside to the inside the figure moves ${shift.rise.mm < 0 ? 'down' : 'up'} by up to ${lengthText(Math.abs(shift.rise.mm), units)}, and is up to ${numberText(100 * (shift.widest - 1), 1)} % wider round the wall.`,
    });
  return out;
}

/** The share of a figure that its mirror image, left for right about its own middle, does not cover. */
function unlikeMirror(figure: Region): number {
  const { minX, maxX } = bounds(figure.contours);
  const mirrored = placedRegion(mirrorX(figure), minX + maxX, 0);
  return area(subtract(figure, mirrored)) / area(figure);
}

function percent(share: number): string {
  return `${numberText(100 * share, share < 0.1 ? 1 : 0)} %`;
}
