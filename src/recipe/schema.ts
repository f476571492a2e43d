import { profileShapes } from '../bowl/shapes.js';
import { generators } from '../generators/index.js';
import { layerParameters, MOST_LAYERS, withinParameters } from '../generators/layer.js';
import { outlineShapes } from '../outline/index.js';
import type { Parameter } from '../schema/parameter.js';
import { LENGTH_PATTERN, lengthRange, numberText } from '../schema/units.js';
import { CUTTERS_MEANING, cutterEntry, MOST_CUTTERS } from './cutters.js';
import type { Field } from './field.js';
import { sections, topFields } from './fields.js';
import { INLAID_MEANING, INSIDE_MEANING, OUTSIDE_MEANING, POINTS_MEANING } from './fields-bowl.js';
import { OWN_MEANING, ownQuantities } from './own-woods.js';
import { PLUGS_MEANING } from './plugs.js';

/** A JSON value, as far as a schema needs it. */
export type SchemaValue = string | number | boolean | null | readonly SchemaValue[] | SchemaObject;
export interface SchemaObject {
  readonly [key: string]: SchemaValue;
}

/**
 * The recipe's shape as JSON Schema, draft 2020-12 (json-schema.org), for editors. It is made from the descriptions
 * the reader uses. Ranges of lengths depend on the recipe's units, so they stand in the descriptions only.
 */
export function recipeSchema(): SchemaObject {
  const groups = sections.map((s) => [s.name, withMore(s.name, section(s.meaning, s.fields))] as const);
  const outline = named('shape', 'The face of the work piece that the pattern sits in.', outlineShapes, {});
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Inlaywright recipe',
    description:
      'A through inlay: the outline of the piece, the pattern in it, the cutter, the fit and the woods.',
    ...section('', topFields),
    properties: {
      $schema: { type: 'string' },
      ...fieldProperties(topFields),
      outline: {
        ...outline,
        // A bowl gives the face its shape.
        required: [],
        allOf: [
          ...(outline.allOf as SchemaValue[]),
          { if: { not: { required: ['shape'] } }, ...MARGIN_ALONE },
        ],
      },
      pattern: {
        description: 'What is drawn, and how: one layer, or a list of them.',
        anyOf: [
          { $ref: '#/$defs/layer' },
          { type: 'array', minItems: 1, maxItems: MOST_LAYERS, items: { $ref: '#/$defs/layer' } },
        ],
      },
      ...Object.fromEntries(groups),
      cutters: {
        type: 'array',
        minItems: 1,
        maxItems: MOST_CUTTERS,
        description: CUTTERS_MEANING,
        items: property(cutterEntry),
      },
    },
    required: [...requiredNames(topFields), 'pattern', 'cutter'],
    if: { not: { required: ['bowl'] } },
    // biome-ignore lint/suspicious/noThenProperty: it is JSON Schema's own keyword.
    then: { required: ['outline'], properties: { outline: { required: ['shape'] } } },
    $defs: {
      layer: named('generator', 'One layer of the pattern.', generators, {
        ...Object.fromEntries(layerParameters.map((p) => [p.name, { $ref: `#/$defs/${p.name}` }])),
        within: { $ref: '#/$defs/within' },
      }),
      ...described(layerParameters),
      within: within(),
      length: {
        anyOf: [{ type: 'number' }, { type: 'string', pattern: LENGTH_PATTERN }],
      },
    },
  };
}

function section(meaning: string, fields: readonly Field[]): SchemaObject {
  const names = requiredNames(fields);
  return {
    type: 'object',
    ...(meaning === '' ? {} : { description: meaning }),
    properties: fieldProperties(fields),
    ...(names.length > 0 ? { required: names } : {}),
    additionalProperties: false,
  };
}

/** Some sections have keys that are no single values. */
function withMore(name: string, made: SchemaObject): SchemaObject {
  if (name === 'woods') return withPlugs(made);
  return name === 'bowl' ? withProfiles(made) : made;
}

/** An outline that only says how far the pattern stays from the edge. */
const MARGIN_ALONE: SchemaObject = {
  // biome-ignore lint/suspicious/noThenProperty: it is JSON Schema's own keyword.
  then: { properties: { margin: { $ref: '#/$defs/length' } }, additionalProperties: false },
};

/** A vessel's wall by its two profiles, and which staves are inlaid. */
function withProfiles(made: SchemaObject): SchemaObject {
  const length = { $ref: '#/$defs/length' };
  const points = {
    type: 'array',
    minItems: 2,
    description: POINTS_MEANING,
    items: { type: 'array', prefixItems: [length, length], minItems: 2, maxItems: 2 },
  };
  const profile = (meaning: string): SchemaObject => {
    const shape = named('shape', meaning, profileShapes, {});
    const allOf = (shape.allOf as SchemaObject[]).map((one, k) =>
      profileShapes[k]!.name === 'curve' ? withPoints(one, points) : one,
    );
    return { ...shape, allOf };
  };
  const inlaid: SchemaObject = {
    description: INLAID_MEANING,
    anyOf: [{ enum: ['all', 'every other'] }, { type: 'array', minItems: 1, items: { type: 'integer' } }],
  };
  const properties = made.properties as SchemaObject;
  const [outside, inside] = [profile(OUTSIDE_MEANING), profile(INSIDE_MEANING)];
  return {
    ...made,
    properties: { ...properties, outside, inside, inlaid },
    required: [...(made.required as SchemaValue[]), 'outside'],
  };
}

function withPoints(one: SchemaObject, points: SchemaObject): SchemaObject {
  const then = one.then as SchemaObject;
  // biome-ignore lint/suspicious/noThenProperty: it is JSON Schema's own keyword.
  return { ...one, then: { ...then, properties: { ...(then.properties as SchemaObject), points } } };
}

/** The woods may have one more key, whose own keys are names of pieces. */
function withPlugs(made: SchemaObject): SchemaObject {
  const properties = made.properties as SchemaObject;
  const { default: _, description: __, ...wood } = properties.plug as SchemaObject;
  const plugs = { type: 'object', description: PLUGS_MEANING, additionalProperties: orOwn(wood) };
  const [field, plug] = [orOwn(properties.field as SchemaObject), orOwn(properties.plug as SchemaObject)];
  return { ...made, properties: { ...properties, field, plug, plugs, own: ownWoods() } };
}

/** A wood by one of the known names, or a name that the recipe describes itself. */
function orOwn({ enum: names, ...rest }: SchemaObject): SchemaObject {
  return { ...rest, anyOf: [{ enum: names! }, { type: 'string' }] };
}

function ownWoods(): SchemaObject {
  const quantities = ownQuantities.map((q): [string, SchemaObject] => {
    const units = q.units.map(([unit]) => unit).filter((u) => u !== '');
    const range = `${numberText(q.min)} to ${numberText(q.max)}`;
    const more = units.length > 0 ? `Units: ${units.join(', ')}; ${range} ${units[0]}.` : `${range}.`;
    return [q.name, { type: units.length > 0 ? 'string' : 'number', description: `${q.meaning} ${more}` }];
  });
  const colour = { type: 'string', pattern: '^#[0-9a-fA-F]{6}$', description: 'Its colour in the picture.' };
  const properties = { ...Object.fromEntries(quantities), colour };
  return {
    type: 'object',
    description: OWN_MEANING,
    additionalProperties: { type: 'object', properties, additionalProperties: false },
  };
}

function requiredNames(fields: readonly Field[]): string[] {
  return fields.filter((f) => f.need === 'required').map((f) => f.parameter.name);
}

function fieldProperties(fields: readonly Field[]): SchemaObject {
  return Object.fromEntries(
    fields.map((f) => {
      const { default: preset, ...own } = property(f.parameter);
      const words: SchemaObject = f.also ? { enum: [...(own.enum as string[]), ...f.also.words] } : {};
      const rest: SchemaObject = { ...own, ...words };
      if (f.need === 'default') return [f.parameter.name, { ...rest, default: preset! }];
      if (f.need === 'required') return [f.parameter.name, rest];
      return [f.parameter.name, { ...rest, description: `${rest.description} Left out: ${f.otherwise}.` }];
    }),
  );
}

/** Where a layer is drawn: with a shape, that shape's parameters go; without one, only `inset`. */
function within(): SchemaObject {
  const meaning = 'Where the layer is drawn, if not in the whole outline.';
  const { required, allOf, ...shape } = named(
    'shape',
    meaning,
    outlineShapes,
    described(withinParameters),
    0,
  );
  const bare = {
    if: { not: { required: required! } },
    // biome-ignore lint/suspicious/noThenProperty: it is JSON Schema's own keyword.
    then: { properties: described(withinParameters.slice(0, 1)), additionalProperties: false },
  };
  return { ...shape, allOf: [...(allOf as SchemaValue[]), bare] };
}

/** An object in which one key chooses an entry of a registry and so which other keys there are, beside `more`. */
function named(
  key: string,
  meaning: string,
  registry: readonly { name: string; title: string; parameters: readonly Parameter[] }[],
  more: SchemaObject,
  margin?: number,
): SchemaObject {
  const preset = (p: Parameter): SchemaObject =>
    p.name === 'margin' && margin !== undefined ? { ...property(p), default: `${margin}mm` } : property(p);
  return {
    type: 'object',
    description: meaning,
    properties: {
      [key]: {
        enum: registry.map((r) => r.name),
        description: registry.map((r) => `${r.name}: ${r.title}`).join('; '),
      },
    },
    required: [key],
    allOf: registry.map((r) => ({
      if: { properties: { [key]: { const: r.name } }, required: [key] },
      // biome-ignore lint/suspicious/noThenProperty: it is JSON Schema's own keyword.
      then: {
        properties: {
          [key]: true,
          ...Object.fromEntries(r.parameters.map((p) => [p.name, preset(p)])),
          ...more,
        },
        additionalProperties: false,
      },
    })),
  };
}

function described(parameters: readonly Parameter[]): SchemaObject {
  return Object.fromEntries(parameters.map((p) => [p.name, property(p)]));
}

function property(p: Parameter): SchemaObject & { readonly description: string } {
  const meant = (range: string) => ({ description: `${p.meaning} ${range}`.trim() });
  switch (p.kind) {
    case 'length': {
      const range = `${lengthRange(p.min, p.max, 'mm')} (${lengthRange(p.min, p.max, 'in')}).`;
      const own = { ...meant(range), default: `${numberText(p.default)}mm` };
      if (!p.words) return { $ref: '#/$defs/length', ...own };
      return { anyOf: [{ $ref: '#/$defs/length' }, { enum: p.words }], ...own };
    }
    case 'angle':
      return { type: 'number', ...bounds(p), ...meant('Degrees.'), default: p.default };
    case 'count':
      return { type: 'integer', ...bounds(p), ...meant(''), default: p.default };
    case 'number':
      return { type: 'number', ...bounds(p), ...meant(''), default: p.default };
    case 'choice': {
      const meanings = p.options.filter((o) => o.meaning !== '').map((o) => `${o.value}: ${o.meaning}`);
      const words = p.options.map((o) => o.value);
      const numbers = words.filter((w) => /^\d+$/.test(w)).map(Number);
      return { enum: [...words, ...numbers], ...meant(meanings.join(' ')), default: p.default };
    }
    case 'text':
      return { type: 'string', minLength: 1, maxLength: p.maxLength, ...meant(''), default: p.default };
    case 'flag':
      return { type: 'boolean', ...meant(''), default: p.default };
  }
}

function bounds(p: { readonly min: number; readonly max: number }): SchemaObject {
  return { minimum: p.min, maximum: p.max };
}
