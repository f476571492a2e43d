import { contrast, WEAK_UNDER } from '../shop/contrast.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/** Woods so near in lightness that the figure reads weakly, new or once both have aged. */
export function weakContrast({ recipe: { woods } }: Setup): Finding[] {
  const tones = contrast(woods.plug, woods.field, woods.own);
  if (!tones || !(tones.weakFresh || tones.weakAged)) return [];
  const { fresh, aged, weakFresh, weakAged } = tones;
  const when =
    weakFresh && weakAged
      ? 'are near each other in lightness, new and aged'
      : weakFresh
        ? 'are near each other in lightness when new; they grow apart with age'
        : 'grow alike with age';
  return [
    {
      code: 'weak-contrast',
      severity: weakAged ? 'warn' : 'note',
      where: null,
      numbers: { fresh, aged, weakUnder: WEAK_UNDER },
      do: `${capital(woods.plug)} and ${woods.field} ${when} (L* differs by ${fresh} new, ${aged} aged; under ${WEAK_UNDER} is weak; estimates from memory). Lay boards side by side, finished, before choosing.`,
    },
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
