import { generators } from '../../src/generators/index.js';
import { layerParameters, withinParameters } from '../../src/generators/layer.js';
import { outlineShapes } from '../../src/outline/index.js';
import { cutterEntry } from '../../src/recipe/cutters.js';
import { sections, topFields } from '../../src/recipe/fields.js';
import type { Parameter } from '../../src/schema/parameter.js';

/** What a card makes a sentence of, by its name: every registry's entries and the recipe's own sections. */
export const groups: readonly (readonly [name: string, parameters: readonly Parameter[]])[] = [
  ...generators.map((g) => [g.name, g.parameters] as const),
  ...outlineShapes.map((o) => [`outline ${o.name}`, o.parameters] as const),
  ['layer', layerParameters],
  ['within', withinParameters],
  ['top', topFields.map((f) => f.parameter)],
  ...sections.map((s) => [`section ${s.name}`, s.fields.map((f) => f.parameter)] as const),
  ['cutters', [cutterEntry]],
];

/** Every parameter there is, each with where it stands. */
export const described: readonly (readonly [where: string, parameter: Parameter])[] = groups.flatMap(
  ([name, parameters]) => parameters.map((p) => [`${name}.${p.name}`, p] as const),
);
