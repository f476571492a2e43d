import { lengthText, numberText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { reachOf } from './sums/reach/reach.js';
import { cuttersAtHand, quicklyTried, type ReachRow, reachIn } from './sums/reach/reach-table.js';
import { volumeText } from './volume-text.js';

/** A roughing cutter that gets to less than this of a part's waste hardly pays its change. Our own choice. */
const POOR = 0.5;

/** One that gets to all but this of it gets everywhere, for what it matters. Our own choice. */
const RICH = 0.995;

/** A thinner cutter is named when it gets to so much more of a part's waste. Our own choice. */
const WORTH = 0.05;

/** How much of the waste the roughing cutter cannot get to, and what that leaves for the finishing cutter. */
export function unreached({ recipe, outline, pair }: Setup): Finding[] {
  const { passes, roughing, units } = recipe;
  if (!roughing) return [];
  const radius = roughing.diameter / 2;
  const { pocket, plug } = reachIn(recipe, outline, pair, radius, passes.allowance);
  if (Math.min(pocket.share, plug.share) > RICH) return [];
  const poor = Math.min(pocket.share, plug.share) < POOR;
  const left = (['pocket', 'plug'] as const).map(
    (part) => reachOf(recipe, outline, pair, part, radius, passes.allowance).left,
  );
  const text = (mm: number): string => lengthText(mm, units);
  const volume = pocket.finishing + plug.finishing;
  const better = thinner({ recipe, outline, pair }, { pocket, plug });
  return [
    {
      code: 'unreached',
      severity: poor ? 'warn' : 'note',
      where: null,
      numbers: {
        pocketShare: pocket.share,
        plugShare: plug.share,
        pocketLeft: pocket.left,
        plugLeft: plug.left,
        finishing: volume,
        ...(better ? { betterDiameter: better.diameter } : {}),
      },
      zone: { areas: { contours: left.flatMap((r) => r.contours) } },
      do:
        `The roughing cutter (${text(roughing.diameter)}) gets to ${percent(pocket.share)} of the pocket's waste and ${percent(plug.share)} of the plug's; the finishing cutter has to take the rest, ${volumeText(volume, units)} with the allowance on the walls.` +
        (better
          ? ` One of ${text(better.diameter)} would get to ${percent(better.pocket.share)} and ${percent(better.plug.share)}.`
          : quicklyTried(pair)
            ? ' No cutter at hand between the two gets to much more.'
            : '') +
        (poor && !roughing.open ? ' Set roughing.open to open the tight places of the pattern for it.' : ''),
    },
  ];
}

/** Of the cutters at hand between the recipe's two the thinnest, where it gets to a good deal more. */
function thinner(
  { recipe, outline, pair }: Pick<Setup, 'recipe' | 'outline' | 'pair'>,
  now: Pick<ReachRow, 'pocket' | 'plug'>,
): Omit<ReachRow, 'use'> | null {
  if (!quicklyTried(pair)) return null;
  const { cutter, passes, roughing } = recipe;
  // Within a tenth of the finishing cutter it would be the same work over again.
  const diameter = cuttersAtHand(recipe).find(
    (d) => d > 1.1 * cutter.diameter && d < roughing!.diameter - 1e-6,
  );
  if (diameter === undefined) return null;
  const reach = reachIn(recipe, outline, pair, diameter / 2, passes.allowance);
  const more = Math.max(reach.pocket.share - now.pocket.share, reach.plug.share - now.plug.share);
  return more >= WORTH ? { diameter, ...reach } : null;
}

/** Nothing is rounded up to all, and nothing down to none. */
function percent(share: number): string {
  if (share > 0 && share < 0.001) return 'under 0.1 %';
  return `${numberText(share > 0.99 && share < 1 ? Math.floor(share * 1000) / 10 : share * 100, 1)} %`;
}
