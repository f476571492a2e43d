import { degrees } from '../geometry/trig.js';
import type { Recipe } from '../recipe/recipe.js';
import { lengthText, MM_PER_INCH, numberText } from '../schema/units.js';
import { slenderLimit } from '../shop/short-grain.js';
import type { Finding } from './finding.js';
import { betterGrain } from './sums/walls/grain-angle.js';
import type { ThinWall } from './sums/walls/walls.js';

/** What thin walls and thin limbs have to say in common. */

/** Those too slender. */
export function tooSlender(walls: readonly ThinWall[]): ThinWall[] {
  return walls.filter((w) => w.slender);
}

/** A finding about walls or limbs that are over their limits, the worst of them first. `who`: "3 walls between pockets". */
export function slenderFinding(
  code: string,
  walls: readonly ThinWall[],
  { units }: Recipe,
  words: { readonly who: string; readonly thing: string; readonly cures: readonly string[] },
): Finding {
  const { worst, height, length, breaks, held } = walls[0]!;
  const unknown = held === 'nowhere' ? '' : 'What load would break it is not known for this wood. ';
  const one = walls.length === 1;
  return {
    code,
    severity: 'warn',
    where: worst.at,
    numbers: {
      count: walls.length,
      width: worst.width,
      height,
      slenderness: worst.slenderness,
      limit: worst.limit,
      angle: degrees(worst.angle),
      length,
      ...(breaks === null ? {} : { breaks }),
    },
    zone: { areas: { contours: walls.flatMap((w) => w.bands.contours) } },
    do:
      `${words.who} ${one ? 'is' : 'are'} slender: ${one ? 'it' : 'the worst'} is ${shown(worst.width, units)} wide and ${lengthText(height, units)} high, ${numberText(worst.slenderness, 1)} times, and runs ${angleText(worst.angle)}, where ${numberText(worst.limit, 1)} times is usual (common practice). ` +
      `${breaks === null ? unknown : `${loadText(breaks)} would break it (estimate, only to compare ${words.thing}). `}` +
      `${sentence(words.cures)}`,
  };
}

/** The width at which all of them would be within their limits, rounded up to a tenth of a mm or a hundredth of an inch. */
export function widthNeeded(walls: readonly ThinWall[], grain: readonly [number, number]): number {
  let most = 0;
  for (const { height, seen } of walls)
    for (const { slenderness, tx, ty } of seen.places) {
      const limit = slenderLimit(tx * grain[0] + ty * grain[1]);
      if (slenderness > limit) most = Math.max(most, height / limit);
    }
  return most;
}

/** The height at which all of them would be within their limits, mm. Needs the worst first. */
export function heightNeeded(walls: readonly ThinWall[]): number {
  const { height, worst } = walls[0]!;
  return height / worst.over;
}

/** "turn the grain (woods.fieldGrain at 30 degrees: none would be over)"; nothing where no other angle does better. */
export function grainCure(walls: readonly ThinWall[], key: string, now: number): string[] {
  const better = betterGrain(
    walls.map((w) => w.seen),
    now,
  );
  if (!better) return [];
  const left = better.left === 0 ? 'none would be' : `${better.left} would still be`;
  return [`turn the grain (${key} at ${numberText(degrees(better.angle), 0)} degrees: ${left} over)`];
}

/** A length rounded up or down to a tenth of a mm, or a hundredth of an inch. */
export function rounded(mm: number, { units }: Recipe, round: (x: number) => number): string {
  const step = units === 'in' ? MM_PER_INCH / 100 : 0.1;
  const steps = mm / step;
  const nearest = Math.round(steps);
  return lengthText((Math.abs(steps - nearest) < 1e-6 ? nearest : round(steps)) * step, units);
}

/** As measured: to a hundredth of a mm, a thousandth of an inch. */
function shown(mm: number, units: Recipe['units']): string {
  const step = units === 'in' ? MM_PER_INCH / 1000 : 0.01;
  return lengthText(Math.round(mm / step) * step, units);
}

function angleText(angle: number): string {
  const a = Math.round(degrees(angle));
  if (a >= 75) return 'across the grain';
  return a <= 15 ? 'along the grain' : `at ${a} degrees to the grain`;
}

function loadText(newtons: number): string {
  const places = newtons < 1 ? 2 : newtons < 10 ? 1 : 0;
  return `A side load of ${numberText(newtons, places)} N a mm of its length`;
}

function sentence(cures: readonly string[]): string {
  const text = cures.length < 2 ? cures.join('') : `${cures.slice(0, -1).join(', ')}, or ${cures.at(-1)}`;
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
