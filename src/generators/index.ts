import { bands } from './bands/index.js';
import { drawing } from './drawing/index.js';
import { fields } from './fields/index.js';
import type { Generator } from './generator.js';
import { knots } from './knots/index.js';
import { lettering } from './lettering/lettering.js';
import { panel } from './panel.js';
import { radial } from './radial/index.js';
import { symmetry } from './symmetry/index.js';
import { tilings } from './tilings/index.js';

/** Every generator, in the order of the list. */
export const generators: readonly Generator[] = [
  ...tilings,
  ...symmetry,
  ...radial,
  ...bands,
  ...knots,
  ...fields,
  panel,
  lettering,
  ...drawing,
];

export function findGenerator(name: string): Generator | undefined {
  return generators.find((g) => g.name === name);
}
