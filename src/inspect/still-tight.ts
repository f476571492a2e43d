import type { Tight } from '../cutter/safe.js';
import { circle } from '../geometry/region.js';
import type { Recipe } from '../recipe/recipe.js';
import { inwards, lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/** Gaps and limbs that are still narrower than `walls` and `roughing.open` ask: too little wood beside them to give. */
export function stillTight(setup: Setup): Finding[] {
  return (['gap', 'limb'] as const).flatMap((kind) => {
    const tight = (setup.safe.tight ?? []).filter((t) => t.kind === kind);
    return tight.length === 0 ? [] : [finding(tight, setup)];
  });
}

function finding(tight: readonly Tight[], { recipe }: Setup): Finding {
  const { kind, at, width, asked, piece } = tight.reduce((a, b) => (b.width < a.width ? b : a));
  const { units } = recipe;
  const text = (mm: number): string => lengthText(inwards(mm, units, Math.floor), units);
  const [is, was] = [asCut(kind, width, recipe), asCut(kind, asked, recipe)];
  const places =
    tight.length === 1 ? `One ${kind} of the pattern stays` : `${tight.length} ${kind}s of the pattern stay`;
  const beside = kind === 'gap' ? 'the wood beside it' : 'the gap beside it';
  return {
    code: 'still-tight',
    severity: 'warn',
    where: at,
    numbers: { places: tight.length, width: is, asked: was },
    zone: { areas: { contours: tight.map((t) => circle(t.at[0], t.at[1], t.width / 2)) } },
    do: `${places} narrower than the ${lengthText(was, units)} asked (${askedBy(kind, recipe)}); the narrowest, ${text(is)}, is at ${piece}: ${beside} has no more to give. Draw the pattern ${times(asked / width)} times as large${remedy(kind, is, recipe, text)}.`,
  };
}

/**
 * A width of the pattern as it is cut, mm: of walls in the pocket and of limbs in the plug; where `roughing.open` asks, as
 * the roughing cutter finds it, which clears the plug's gaps and the pocket's limbs.
 */
export function asCut(kind: Tight['kind'], mm: number, { fit, roughing }: Recipe): number {
  const fromPlug = fit.from === 'plug' ? fit.clearance : fit.from === 'both' ? fit.clearance / 2 : 0;
  const fromPocket = fit.clearance - fromPlug;
  if (roughing?.open) return mm + 2 * (kind === 'gap' ? fromPlug : fromPocket);
  return mm - 2 * (kind === 'gap' ? fromPocket : fromPlug);
}

/** Upwards, since a little more does no harm and a little less does not do. */
function times(k: number): string {
  return (Math.ceil(k * 100) / 100).toFixed(2);
}

function askedBy(kind: Tight['kind'], { walls, roughing }: Recipe): string {
  const own = kind === 'gap' ? walls.least : walls.limbs;
  const keys = [
    ...(own === null ? [] : [kind === 'gap' ? 'walls.least' : 'walls.limbs']),
    ...(roughing?.open ? ['roughing.open'] : []),
  ];
  return keys.join(' and ');
}

function remedy(
  kind: Tight['kind'],
  width: number,
  { passes, roughing, cutter }: Recipe,
  text: (mm: number) => string,
): string {
  if (!roughing?.open)
    return `, or ask for ${text(width)} or less (${kind === 'gap' ? 'walls.least' : 'walls.limbs'})`;
  const clear = 'as it is, the finishing cutter has to clear that place in steps (passes.clearing)';
  const lane = width - 2 * passes.allowance;
  if (lane <= cutter.diameter) return `; ${clear}`;
  return `, or rough with a cutter of ${text(lane)} or less; ${clear}`;
}
