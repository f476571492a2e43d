import { outlineOf } from '../bowl/face.js';
import { profileShapes } from '../bowl/shapes.js';
import { type BowlSetup, makeVessel, type ProfileSetup, type Vessel } from '../bowl/vessel.js';
import { Refusal } from '../schema/fault.js';
import type { Values } from '../schema/parameter.js';
import type { Units } from '../schema/units.js';
import { type Faults, type Path, shown } from './faults.js';
import { length } from './field.js';
import type { Json, JsonObject } from './json.js';
import { readNamed } from './named.js';
import { readValue, type Value } from './values.js';

const MOST_POINTS = 40;
/** Below this a shell of staves is a floor, not a wall. */
const LEAST_SLOPE = (5 * Math.PI) / 180;

const height = length('height', 0, 1000, 0, '', '…');
const diameter = length('diameter', 1, 3000, 100, '', '…');

/** `bowl` with what is derived; null, with faults added, when it cannot be read. `own` are its single values. */
export function readBowl(
  root: JsonObject,
  own: Readonly<Record<string, Value>>,
  units: Units,
  faults: Faults,
): Vessel | null {
  const json = root.members.get('bowl');
  if (json?.kind !== 'object') return null;
  const sides = own.sides as number | undefined;
  const outside = readProfile(json.members.get('outside'), ['bowl', 'outside'], units, faults);
  const given = json.members.get('inside');
  const inside = given ? readProfile(given, ['bowl', 'inside'], units, faults) : null;
  const inlaid = readInlaid(json.members.get('inlaid'), sides ?? 1, faults);
  if (sides === 2) faults.add(['bowl', 'sides'], '2 makes no vessel: 3 to 24 staves, or 1 flat board');
  if (sides !== undefined && sides >= 3 && Number(own.slope) < LEAST_SLOPE)
    faults.add(
      ['bowl', 'slope'],
      'is too flat for staves: 5 to 90 degrees from the horizontal; a flat board has 1 side',
    );
  if (sides === 1 && own.continuous)
    faults.add(['bowl', 'continuous'], 'needs staves to run on over: a flat board has none');
  if (faults.any || !outside) return null;
  const setup = {
    thickness: null,
    ball: null,
    ...own,
    outside,
    inside,
    inlaid,
  } as unknown as BowlSetup;
  if (setup.floor >= setup.height) {
    faults.add(['bowl', 'floor'], 'leaves no inside: let it be lower than the vessel is high');
    return null;
  }
  try {
    return makeVessel(setup);
  } catch (e) {
    if (!(e instanceof Refusal)) throw e;
    faults.add(e.code.startsWith('bowl.') ? e.code.split('.') : ['bowl'], e.message);
    return null;
  }
}

/** The outline that a vessel gives its staves: its shape and sizes, with the margin the recipe asks for. */
export function bowlOutline(vessel: Vessel, margin: number): { name: string; values: Values } {
  const { shape, values } = outlineOf(vessel);
  return { name: shape, values: { ...values, margin } };
}

function readProfile(given: Json | undefined, path: Path, units: Units, faults: Faults): ProfileSetup | null {
  const registry = profileShapes;
  const named = readNamed(given, path, { key: 'shape', registry, more: ['points'] }, units, faults);
  if (!named || given?.kind !== 'object') return null;
  const points = given.members.get('points');
  if (named.name !== 'curve' && points) faults.add([...path, 'points'], 'belongs to the shape "curve"');
  return {
    shape: named.name as ProfileSetup['shape'],
    values: named.values,
    points: named.name === 'curve' ? readPoints(points, [...path, 'points'], units, faults) : [],
  };
}

function readPoints(given: Json | undefined, path: Path, units: Units, faults: Faults): [number, number][] {
  if (given?.kind !== 'array' || given.items.length < 2 || given.items.length > MOST_POINTS) {
    faults.add(
      path,
      `must be a list of 2 to ${MOST_POINTS} points, each [height, diameter], such as [[0, 90], [40, 130]]`,
    );
    return [];
  }
  const read = given.items.flatMap((item, k): [number, number][] => {
    if (item.kind !== 'array' || item.items.length !== 2) {
      faults.add([...path, `${k}`], 'must be [height, diameter]');
      return [];
    }
    const z = readValue(item.items[0]!, height, [...path, `${k}`, '0'], units, faults);
    const d = readValue(item.items[1]!, diameter, [...path, `${k}`, '1'], units, faults);
    return z === undefined || d === undefined ? [] : [[z as number, d as number]];
  });
  const back = read.findIndex(([z], k) => k > 0 && z <= read[k - 1]![0]);
  if (back > 0) faults.add([...path, `${back}`], 'lies no higher than the point before it: heights rise');
  return read;
}

function readInlaid(given: Json | undefined, sides: number, faults: Faults): number[] {
  const all = Array.from({ length: sides }, (_, k) => k + 1);
  const path = ['bowl', 'inlaid'];
  if (given === undefined) return all;
  if (given.kind === 'scalar' && given.value === 'all') return all;
  if (given.kind === 'scalar' && given.value === 'every other') {
    if (sides % 2 === 1 && sides > 1)
      faults.add(path, `"every other" needs an even number of sides, not ${sides}`);
    return all.filter((k) => k % 2 === 1);
  }
  if (given.kind !== 'array') {
    const what = given.kind === 'scalar' ? shown(given.value) : 'an object';
    faults.add(path, `must be "all", "every other" or a list of numbers, not ${what}`);
    return [];
  }
  const numbers = given.items.map((i) =>
    i.kind === 'scalar' && typeof i.value === 'number' ? i.value : Number.NaN,
  );
  const bad = numbers.find((n) => !Number.isInteger(n) || n < 1 || n > sides);
  if (bad !== undefined || numbers.length === 0)
    faults.add(path, `must hold numbers of staves, 1 to ${sides}`);
  return [...new Set(numbers)].sort((a, b) => a - b);
}
