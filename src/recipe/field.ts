import { type Clause, clause, type Parameter } from '../schema/parameter.js';
import type { OwnWoods } from '../shop/own.js';
import { findWood, woods } from '../shop/woods.js';

/**
 * One of the recipe's own keys as data (an outline's and a pattern's come from their registries). The reader, the JSON
 * Schema and the help are made from these.
 */
export interface Field {
  readonly parameter: Parameter;
  /** What happens when the key is left out: a fault, the parameter's default, or what `otherwise` says. */
  readonly need: 'required' | 'default' | 'otherwise';
  /** The default in words where it depends on other values. */
  readonly otherwise?: string;
  /** Other words for a choice's options: the option that is meant, or null; and all of them, for the JSON Schema. */
  readonly also?: { readonly meant: (text: string) => string | null; readonly words: readonly string[] };
}

export interface Section {
  readonly name: string;
  readonly meaning: string;
  readonly fields: readonly Field[];
}

export const length = (
  name: string,
  min: number,
  max: number,
  preset: number,
  meaning: string,
  say: Clause,
): Parameter => ({
  kind: 'length',
  name,
  min,
  max,
  default: preset,
  meaning,
  ...clause(say),
});

export const choice = (
  name: string,
  meaning: string,
  say: string,
  ...options: [value: string, meaning: string][]
): Parameter => ({
  kind: 'choice',
  name,
  meaning,
  say,
  default: options[0]![0],
  options: options.map(([value, m]) => ({ value, meaning: m })),
});

export const percent = (name: string, preset: number, meaning: string, say: string): Parameter => ({
  kind: 'number',
  name,
  min: 0,
  max: 30,
  default: preset,
  meaning,
  say,
});

export const grain = (name: string, meaning: string, say: string): Parameter => ({
  kind: 'angle',
  name,
  min: -360,
  max: 360,
  default: 0,
  meaning,
  say,
});

export const wood = (name: string, preset: string, meaning: string, say: string): Field => ({
  parameter: {
    kind: 'choice',
    name,
    meaning,
    say,
    default: preset,
    options: woods.map((w) => ({ value: w.name, meaning: '' })),
  },
  need: 'default',
  also: { meant: (text) => findWood(text)?.name ?? null, words: woods.flatMap((w) => w.also) },
});

/** The field of a wood when the recipe has woods of its own; any other field as it is. */
export function knowing(field: Field, own: OwnWoods): Field {
  const { also, parameter } = field;
  if (!also || own.length === 0 || parameter.kind !== 'choice') return field;
  const options = [...own.map((w) => ({ value: w.name, meaning: '' })), ...parameter.options];
  return {
    ...field,
    parameter: { ...parameter, options },
    also: { ...also, meant: (text) => findWood(text, own)?.name ?? null },
  };
}

export const required = (parameter: Parameter): Field => ({ parameter, need: 'required' });
export const preset = (parameter: Parameter): Field => ({ parameter, need: 'default' });
export const derived = (parameter: Parameter, otherwise: string): Field => ({
  parameter,
  need: 'otherwise',
  otherwise,
});

export const count = (
  name: string,
  min: number,
  max: number,
  preset: number,
  meaning: string,
  say: Clause,
): Parameter => ({
  kind: 'count',
  name,
  min,
  max,
  default: preset,
  meaning,
  ...clause(say),
});

export const number = (
  name: string,
  min: number,
  max: number,
  preset: number,
  meaning: string,
  say: Clause,
): Parameter => ({ kind: 'number', name, min, max, default: preset, meaning, ...clause(say) });

export const flag = (
  name: string,
  meaning: string,
  say: string,
  words: readonly [string, string],
): Parameter => ({ kind: 'flag', name, default: false, meaning, say, words });
