import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/** Under this a floor may tear out or flex while it is cut. Common practice, no source. */
const THIN = 1;

/** A pocket floor that is thin, or not there at all. */
export function thinSkin({ recipe: { skin, units } }: Setup): Finding[] {
  if (skin >= THIN) return [];
  if (skin === 0)
    return [
      {
        code: 'no-skin',
        severity: 'note',
        where: null,
        numbers: { skin },
        do: 'The pocket is cut through. Put a spoil board under it and hold down whatever comes loose inside.',
      },
    ];
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
