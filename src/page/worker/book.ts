import { profileShapes } from '../../bowl/shapes.js';
import { generators } from '../../generators/index.js';
import { layerParameters, withinParameters } from '../../generators/layer.js';
import { faces } from '../../generators/lettering/faces.js';
import { outlineShapes } from '../../outline/index.js';
import type { Field as RecipeField } from '../../recipe/field.js';
import { sections, topFields } from '../../recipe/fields.js';
import { sampleText } from '../../recipe/sample.js';
import { stockCutters } from '../../shop/cutters.js';
import { woods } from '../../shop/woods.js';
import type { Book, Entry, Field } from './protocol.js';

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
    outlines: outlineShapes.map(shape),
    profiles: profileShapes.map(shape),
    layer: layerParameters,
    within: withinParameters,
    top: topFields.map(plain),
    sections: sections.map(({ name, meaning, fields }) => ({ name, meaning, fields: fields.map(plain) })),
    woods: woods.map(({ name, colour, grain }) => ({ name, colour, grain })),
    cutters: stockCutters.map((c) => c.name),
    fonts: faces.map(({ name, title, style }) => ({ name, title, style })),
  };
}

function shape({ name, title, parameters }: Pick<Entry, 'name' | 'title' | 'parameters'>): Entry {
  return { name, title, parameters, summary: '', family: '', sample: '' };
}

function plain({ parameter, need, otherwise }: RecipeField): Field {
  return { parameter, need, ...(otherwise === undefined ? {} : { otherwise }) };
}
