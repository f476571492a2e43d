import { figure } from '../shop/figure.js';
import type { OwnWood } from '../shop/own.js';
import { coefficientFromShrinkage } from '../shop/shrinkage.js';
import { type Faults, type Path, shown } from './faults.js';
import type { Json, JsonObject } from './json.js';
import { checkKeys, object } from './named.js';
import { DENSITY, FORCE, PERCENT, type Quantity, readQuantity, STRESS } from './quantity.js';

/** What `woods.own` is, for the JSON Schema. */
export const OWN_MEANING =
  'Woods of your own by name, with what you know of them at 12 % moisture; what is left out counts as unknown. They go before the built-in ones.';

const quantity = (
  name: string,
  units: Quantity['units'],
  min: number,
  max: number,
  example: string,
  meaning: string,
): Quantity => ({ name, units, min, max, example, meaning });

export const ownQuantities: readonly Quantity[] = [
  quantity('density', DENSITY, 80, 1400, '"690kg/m3"', 'Its density.'),
  quantity('hardness', FORCE, 200, 25_000, '"5900N"', 'Its side hardness.'),
  quantity('compression', STRESS, 500, 60_000, '"4.8MPa"', 'Its strength in compression across the grain.'),
  quantity('shear', STRESS, 500, 60_000, '"11MPa"', 'Its strength in shear along the grain.'),
  quantity('tension', STRESS, 200, 30_000, '"3.9MPa"', 'Its strength in tension across the grain.'),
  quantity('radial', PERCENT, 0.5, 15, '3.7', 'Its radial shrinkage, green to ovendry, percent.'),
  quantity('tangential', PERCENT, 0.5, 20, '7.1', 'Its tangential shrinkage, green to ovendry, percent.'),
  quantity('lightness', PERCENT, 0, 100, '62', 'Lightness L* of its finished face, 0 black to 100 white.'),
];

/** Woods of one recipe. */
const MOST = 24;
const LONGEST = 40;
const COLOUR = /^#[0-9a-f]{6}$/i;
const BROWN = '#b58a5c';
const SOURCE = 'given in the recipe';

/** The members of `woods.own`; none when it is left out or null. Adds faults. */
export function readOwnWoods(given: Json | undefined, faults: Faults): readonly OwnWood[] {
  const path: Path = ['woods', 'own'];
  if (given === undefined || (given.kind === 'scalar' && given.value === null)) return [];
  const json = object(given, path, faults);
  if (!json) return [];
  if (json.members.size > MOST) {
    faults.add(path, `has ${json.members.size} woods: give ${MOST} at most`);
    return [];
  }
  const own: OwnWood[] = [];
  for (const [key, value] of json.members) {
    const here = [...path, key];
    const name = key.trim();
    if (name === '' || name.length > LONGEST || /[\p{Cc}\p{Cs}]/u.test(name)) {
      faults.add(here, `is no name of a wood: give 1 to ${LONGEST} characters, such as "pear"`);
      continue;
    }
    const members = object(value, here, faults);
    if (members) own.push(readOne(name, members, here, faults));
  }
  return own;
}

function readOne(name: string, json: JsonObject, path: Path, faults: Faults): OwnWood {
  checkKeys(json, ['colour', ...ownQuantities.map((q) => q.name)], path, faults);
  const read = new Map<string, number>();
  for (const q of ownQuantities) {
    const given = json.members.get(q.name);
    if (!given || (given.kind === 'scalar' && given.value === null)) continue;
    const value = readQuantity(given, q, [...path, q.name], faults);
    if (value !== null) read.set(q.name, value);
  }
  const known = (key: string) => (read.has(key) ? figure(read.get(key)!, 'given', SOURCE) : null);
  const [radial, tangential] = [known('radial'), known('tangential')];
  if ((radial === null) !== (tangential === null) && !faults.any)
    faults.add(path, 'has one shrinkage: give radial and tangential, or neither');
  const change = (shrinkage: number) =>
    figure(coefficientFromShrinkage(shrinkage), 'computed', `${SOURCE}: C = 1 / (3000/S - 20)`);
  const colour = readColour(json.members.get('colour'), [...path, 'colour'], faults);
  const density = read.get('density') ?? null;
  const lightness = read.get('lightness');
  return {
    name,
    also: [],
    colour,
    grain: darker(colour),
    pores: 'fine',
    // The handbook's density at 12 % is 1120 times the specific gravity (equation 4-12).
    specificGravity: density === null ? null : density / 1120,
    hardness: read.get('hardness') ?? null,
    source: SOURCE,
    density,
    strength: { compression: known('compression'), shear: known('shear'), tension: known('tension') },
    movement:
      radial && tangential
        ? {
            shrinkage: { radial, tangential },
            change: { radial: change(radial.value), tangential: change(tangential.value) },
          }
        : null,
    lightness: lightness === undefined ? null : { fresh: lightness, aged: lightness },
  };
}

function readColour(given: Json | undefined, path: Path, faults: Faults): string {
  if (given === undefined) return BROWN;
  if (given.kind === 'scalar' && typeof given.value === 'string' && COLOUR.test(given.value))
    return given.value.toLowerCase();
  faults.add(path, `${given.kind === 'scalar' ? shown(given.value) : 'this'} is no colour: write "#b58a5c"`);
  return BROWN;
}

/** The darker lines of the grain: the colour at three quarters of its light. */
function darker(colour: string): string {
  const parts = [1, 3, 5].map((k) => Math.round(Number.parseInt(colour.slice(k, k + 2), 16) * 0.75));
  return `#${parts.map((p) => p.toString(16).padStart(2, '0')).join('')}`;
}
