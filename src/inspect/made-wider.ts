import type { Change } from '../cutter/safe.js';
import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { asCut } from './still-tight.js';

/** What was made wider than the cutter needs, since `walls` or `roughing.open` ask for it. */
export function madeWider({ safe, recipe }: Setup): Finding[] {
  const made = safe.changes.filter((c) => c.to !== undefined);
  if (made.length === 0) return [];
  const largest = made.reduce((a, b) => (b.size > a.size ? b : a));
  const of = (limbs: boolean): Change[] => made.filter((c) => (c.kind === 'widened') === limbs);
  const [gaps, limbs] = [of(false), of(true)];
  const said = [...counted(gaps, 'gap'), ...counted(limbs, 'limb')].join(' and ');
  return [
    {
      code: 'made-wider',
      severity: 'note',
      where: largest.at,
      numbers: { gaps: gaps.length, limbs: limbs.length },
      do: `As asked (walls, roughing.open), ${said} of the pattern ${made.length === 1 ? 'was' : 'were'} made wider; the longest is at ${largest.piece}. See that the pattern still looks as you want it.`,
    },
  ];

  function counted(changes: readonly Change[], what: 'gap' | 'limb'): string[] {
    const [first] = changes;
    if (!first) return [];
    const width = lengthText(asCut(what, first.to!, recipe), recipe.units);
    return [`${changes.length === 1 ? `one ${what}` : `${changes.length} ${what}s`} (to ${width})`];
  }
}
