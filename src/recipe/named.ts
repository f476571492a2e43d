import type { Parameter, Values } from '../schema/parameter.js';
import type { Units } from '../schema/units.js';
import { type Faults, type Path, shown } from './faults.js';
import type { Json, JsonObject } from './json.js';
import { nearest, suggestion } from './nearest.js';
import { readValue, readValues } from './values.js';

/** An object in which one key names an entry of a registry; that entry's parameters are the other keys, and `more`. */
export interface Named {
  readonly key: string;
  readonly registry: readonly { readonly name: string; readonly parameters: readonly Parameter[] }[];
  readonly more: readonly string[];
}

export function object(json: Json, path: Path, faults: Faults): JsonObject | null {
  if (json.kind === 'object') return json;
  const given = json.kind === 'array' ? 'a list' : shown(json.value);
  faults.add(path, `must be an object in braces { }, not ${given}`);
  return null;
}

export function checkKeys(json: JsonObject, known: readonly string[], path: Path, faults: Faults): void {
  for (const key of json.members.keys()) {
    if (!known.includes(key)) faults.add([...path, key], `is not a known key; ${suggestion(key, known)}`);
  }
}

/** The entry's name and all its values; null, with faults added, when there is none. */
export function readNamed(
  given: Json | undefined,
  path: Path,
  { key, registry, more }: Named,
  units: Units,
  faults: Faults,
): { readonly name: string; readonly values: Values } | null {
  const names = registry.map((r) => r.name);
  if (!given) {
    faults.add(
      path,
      `is missing: write "${path.at(-1)}": { "${key}": "${names[0]}" }, or another of ${names.join(', ')}`,
    );
    return null;
  }
  const json = object(given, path, faults);
  if (!json) return null;
  const named = json.members.get(key);
  if (!named) {
    const near = [...json.members.keys()].find((k) => nearest(k, [key]));
    const meant = near === undefined ? '' : ` (did you mean "${key}" by ${shown(near)}?)`;
    faults.add([...path, key], `is missing${meant}: give one of ${names.join(', ')}`);
    return null;
  }
  const choice: Parameter = {
    kind: 'choice',
    name: key,
    meaning: '',
    default: '',
    options: names.map((value) => ({ value, meaning: '' })),
  };
  const name = readValue(named, choice, [...path, key], units, faults);
  const entry = registry.find((r) => r.name === name);
  if (!entry) return null;
  checkKeys(json, [key, ...entry.parameters.map((p) => p.name), ...more], path, faults);
  return { name: entry.name, values: readValues(json.members, entry.parameters, path, units, faults) };
}
