import { dustColours, dustStains } from '../shop/contrast.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/**
 * Strongly coloured dust beside a pale wood. Dark dust that merely greys (walnut's) is on the sheet alone: with half of
 * all inlays it would say nothing.
 */
export function stainingDust({ recipe: { woods } }: Setup): Finding[] {
  for (const [dusty, neighbour] of [
    [woods.plug, woods.field],
    [woods.field, woods.plug],
  ] as const)
    if (dustStains(dusty, neighbour, woods.own) && dustColours(dusty))
      return [
        {
          code: 'staining-dust',
          severity: 'note',
          where: null,
          numbers: {},
          do: `The coloured dust of ${dusty} stains ${neighbour} when both are sanded together. Plane or scrape instead, blow the dust off, and seal before the last sanding.`,
        },
      ];
  return [];
}
