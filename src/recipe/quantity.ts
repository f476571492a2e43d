import { numberText } from '../schema/units.js';
import { fromPsi, NEWTONS_PER_POUND } from '../shop/conversions.js';
import { type Faults, type Path, shown } from './faults.js';
import type { Json } from './json.js';

/** A quantity with a unit, as a recipe writes it: "690kg/m3", "5.2MPa". */
export interface Quantity {
  readonly name: string;
  readonly meaning: string;
  /** The units it may have, the one it is kept in first, and how much of that one each is. */
  readonly units: readonly (readonly [unit: string, times: number])[];
  /** In the first unit. */
  readonly min: number;
  readonly max: number;
  readonly example: string;
}

const KG_PER_POUND = 0.45359237;
const FOOT = 0.3048;

export const DENSITY: Quantity['units'] = [
  ['kg/m3', 1],
  ['g/cm3', 1000],
  ['lb/ft3', KG_PER_POUND / (FOOT * FOOT * FOOT)],
];

export const STRESS: Quantity['units'] = [
  ['kPa', 1],
  ['MPa', 1000],
  ['psi', fromPsi(1)],
];

export const FORCE: Quantity['units'] = [
  ['N', 1],
  ['kN', 1000],
  ['lbf', NEWTONS_PER_POUND],
];

/** Percent has no other unit, so it is a bare number. */
export const PERCENT: Quantity['units'] = [['', 1]];

/** The quantity in its first unit. Adds a fault and returns null for one that is none or out of range. */
export function readQuantity(json: Json, q: Quantity, path: Path, faults: Faults): number | null {
  const value = json.kind === 'scalar' ? (json.raw ?? json.value) : null;
  const names = q.units.map(([unit]) => unit);
  const [kept] = q.units[0]!;
  const read =
    typeof value === 'number' && kept === '' ? value : typeof value === 'string' ? parsed(value, q) : null;
  const range = `${numberText(q.min)} to ${numberText(q.max)}${kept === '' ? '' : ` ${kept}`}`;
  if (read === null) {
    const given = json.kind === 'scalar' ? shown(json.value) : json.kind === 'array' ? 'a list' : 'an object';
    const units = kept === '' ? 'a number' : `a text with its unit (${names.join(', ')})`;
    faults.add(path, `must be ${units} such as ${q.example}, not ${given}: ${range}`);
    return null;
  }
  if (read >= q.min && read <= q.max) return read;
  faults.add(path, `${shown(json.kind === 'scalar' ? json.value : null)} is out of range: ${range}`);
  return null;
}

function parsed(text: string, { units }: Quantity): number | null {
  const m = /^\s*(\d+(?:\.\d+)?|\.\d+)\s*([A-Za-z/³0-9]*)\s*$/.exec(text);
  if (!m) return null;
  const named = m[2]!.replace('³', '3');
  const unit = units.find(([name]) => name === named);
  return unit ? Number(m[1]) * unit[1] : null;
}
