import type { Recipe } from '../recipe/recipe.js';
import { inwards, lengthText, numberText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { type Contact, contacts, deflectionAt } from './sums/reach/contact.js';
import { reachingAll } from './sums/reach/reach-table.js';

/** Deepest step of a finishing pass, and of clearing, in diameters. Common practice, no source. */
const FINISHING_STEP = 3;
const CLEARING_STEP = 1;

/** Findings of this kind; what is left over is one more of each severity. */
const MOST = 4;

/** Contacts whose length and width differ by no more than this share are alike. */
const ALIKE = 0.02;

/**
 * Where the finishing cutter, deeper than it should be in one pass, meets what the roughing cutter could not get to:
 * there it bends, waves the wall and may snap. Nothing where the finishing pass goes in steps of at most 3 diameters.
 */
export function fullDepthContact({ recipe, outline, pair }: Setup): Finding[] {
  const { cutter, passes } = recipe;
  if (passes.finishingStep !== null && passes.finishingStep <= FINISHING_STEP * cutter.diameter + 1e-9)
    return [];
  const found = contacts(recipe, pair).filter((c) => c.depth > CLEARING_STEP * cutter.diameter);
  if (found.length === 0) return [];
  const groups = alike(found);
  const named = groups.slice(0, MOST);
  const more = groups.slice(MOST).flat();
  const rests = (['warn', 'note'] as const).map((s) => more.filter((c) => severity(c.depth, recipe) === s));
  const everywhere = reachingAll(recipe, outline, pair);
  return [
    ...named.map((group, k) => finding(group, recipe, k === 0 ? cure(group[0]!, recipe, everywhere) : '')),
    ...rests.filter((rest) => rest.length > 0).map((rest) => leftOver(rest, recipe)),
  ];
}

/** Worst first, as the contacts come. */
function alike(list: readonly Contact[]): Contact[][] {
  const groups: Contact[][] = [];
  const near = (a: number, b: number): boolean => Math.abs(a - b) <= ALIKE * Math.max(a, b);
  for (const c of list) {
    const group = groups.find(
      ([g]) => g!.part === c.part && near(g!.length, c.length) && near(g!.width, c.width),
    );
    if (group) group.push(c);
    else groups.push([c]);
  }
  return groups;
}

function severity(depth: number, { cutter }: Recipe): Finding['severity'] {
  return depth > FINISHING_STEP * cutter.diameter ? 'warn' : 'note';
}

function finding(group: readonly Contact[], recipe: Recipe, what: string): Finding {
  const { cutter, passes, units } = recipe;
  const text = (mm: number): string => lengthText(mm, units);
  const c = group[0]!;
  const diameters = c.depth / cutter.diameter;
  const light = deflectionAt(recipe, passes.allowance);
  const stands = c.slot
    ? `the finishing cutter is in the wood with its whole width (${text(c.width)})`
    : `${short(c.width, recipe)} stands beside the finishing cutter instead of the allowance of ${text(passes.allowance)}`;
  const others = group.length > 1 ? `, and at ${group.length - 1} more like it,` : '';
  return {
    code: 'full-depth-contact',
    severity: severity(c.depth, recipe),
    where: c.at,
    numbers: {
      places: group.length,
      length: c.length,
      depth: c.depth,
      diameters,
      width: c.width,
      allowance: passes.allowance,
      force: c.force,
      deflection: c.deflection,
      deflectionAtAllowance: light,
    },
    zone: { lines: group.map((g) => g.edges) },
    do:
      `Along ${short(c.length, recipe)} of the ${c.part}'s wall${others} ${stands}, ${numberText(diameters, 1)} diameters deep in one pass, since the roughing cutter does not get there. ` +
      `Its tip bends aside by ${bend(c.deflection, recipe)} there, against ${bend(light, recipe)} elsewhere (estimate, from an assumed ${numberText(recipe.machine.sideForce, 1)} N in a light pass).${what}`,
  };
}

/** Lengths that are measured, not set: to a tenth of a millimetre or so. */
function short(mm: number, { units }: Recipe): string {
  return units === 'mm' ? `${numberText(mm, 1)} mm` : `${numberText(mm / 25.4, 2)} in`;
}

function bend(mm: number, { units }: Recipe): string {
  return units === 'mm' ? `${numberText(mm, 2)} mm` : `${numberText(mm / 25.4, 4)} in`;
}

function cure({ depth }: Contact, recipe: Recipe, everywhere: number | null): string {
  const { cutter, roughing, units } = recipe;
  const text = (mm: number): string => lengthText(mm, units);
  const steps = (most: number): { n: number; each: string } => {
    const n = Math.ceil(depth / (most * cutter.diameter) - 1e-9);
    return { n, each: text(inwards(depth / n, units, Math.ceil)) };
  };
  const clearing = steps(CLEARING_STEP);
  const finishing = steps(FINISHING_STEP);
  const cures = [
    `clear these places first with the small cutter, in ${clearing.n} steps of ${clearing.each} (passes.clearing)`,
    ...(finishing.n > 1
      ? [
          `finish in ${finishing.n} steps of ${finishing.each} (passes.finishingStep) and then once lightly at full depth`,
        ]
      : []),
    ...(roughing!.open ? [] : ['open the pattern for the roughing cutter (roughing.open)']),
    ...(everywhere === null ? [] : [`rough with ${text(everywhere)}, which gets everywhere`]),
  ];
  const last = cures.pop()!;
  const list = cures.length > 0 ? `${cures.join('; or ')}; or ${last}` : last;
  return ` ${list.charAt(0).toUpperCase()}${list.slice(1)}.`;
}

function leftOver(rest: readonly Contact[], recipe: Recipe): Finding {
  const length = rest.reduce((sum, c) => sum + c.length, 0);
  const deepest = Math.max(...rest.map((c) => c.depth));
  const widest = Math.max(...rest.map((c) => c.width));
  const one = rest.length === 1;
  return {
    code: 'full-depth-contact',
    severity: severity(deepest, recipe),
    where: rest[0]!.at,
    numbers: { places: rest.length, length, depth: deepest, width: widest },
    zone: { lines: rest.map((c) => c.edges) },
    do: `At ${rest.length} more ${one ? 'place' : 'places'}, ${short(length, recipe)} of wall in all, the finishing cutter meets up to ${short(widest, recipe)} in the same way; the same cures hold.`,
  };
}
