import { generators } from '../../generators/index.js';
import { layerParameters, withinParameters } from '../../generators/layer.js';
import { faces } from '../../generators/lettering/faces.js';
import { outlineShapes } from '../../outline/index.js';
import type { Field as RecipeField } from '../../recipe/field.js';
import { sections, topFields } from '../../recipe/fields.js';
import { sampleText } from '../../recipe/sample.js';
import { stockCutters } from '../../shop/cutters.js';
import { woods } from '../../shop/woods.js';
import type { Book, Field } from './protocol.js';

/** All that a card may say, as plain data. */
export function bookOf(): Book {
  return {
    generators: generators.map((g) => ({
      name: g.name,
      title: g.title,
      summary: g.summary,
      family: g.family,
      parameters: g.parameters,
      sample: sampleText(g),
    })),
    outlines: outlineShapes.map(({ name, title, parameters }) => ({
      name,
      title,
      summary: '',
      family: '',
      parameters,
      sample: '',
    })),
    layer: layerParameters,
    within: withinParameters,
    top: topFields.map(plain),
    sections: sections.map(({ name, meaning, fields }) => ({ name, meaning, fields: fields.map(plain) })),
    woods: woods.map(({ name, colour, grain }) => ({ name, colour, grain })),
    cutters: stockCutters.map((c) => c.name),
    fonts: faces.map(({ name, title, style }) => ({ name, title, style })),
  };
}

function plain({ parameter, need, otherwise }: RecipeField): Field {
  return { parameter, need, ...(otherwise === undefined ? {} : { otherwise }) };
}
