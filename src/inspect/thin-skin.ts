import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { cutsOf, isThrough } from './sums/machine/cuts.js';

/** Under this a floor may tear out or flex while it is cut. Common practice, no source. */
const THIN = 1;

/** A pocket floor that is thin, or not there at all. */
export function thinSkin({ recipe, pair }: Setup): Finding[] {
  const { skin, units } = recipe;
  if (skin >= THIN) return [];
  if (isThrough(recipe)) {
    const [pocket] = cutsOf(recipe, pair);
    // An onion skin in it has a finding of its own.
    if (!pocket.through) return [];
    return [
      {
        code: 'no-skin',
        severity: 'note',
        where: null,
        numbers: { skin },
        do: `The pocket is cut right through: set its depth of cut to ${lengthText(pocket.deep, units)}. Lay the piece on a flat board that glue does not stick to when the plug goes in.`,
      },
    ];
  }
  // No skin is wanted, and none is taken off the thicker wood that there is.
  if (skin === 0) return [];
  return [
    {
      code: 'thin-skin',
      severity: 'warn',
      where: null,
      numbers: { skin, least: THIN },
      do: `Only ${lengthText(skin, units)} of wood is left under the pocket; it can flex or tear out. Leave ${lengthText(THIN, units)} or more, or 0 to cut through.`,
    },
  ];
}
