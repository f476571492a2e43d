import type { Generator } from './generator.js';
import { lettering } from './lettering/lettering.js';
import { rosette } from './radial/rosette.js';
import { tiling } from './tilings/tiling.js';

/** Every generator, in the order of the list. */
export const generators: readonly Generator[] = [tiling, rosette, lettering];

export function findGenerator(name: string): Generator | undefined {
  return generators.find((g) => g.name === name);
}
