import type { Units } from '../schema/units.js';
import { type Faults, type Path, shown } from './faults.js';
import { length } from './field.js';
import type { Json } from './json.js';
import { readValue } from './values.js';

/** What `cutters` is, for the JSON Schema. */
export const CUTTERS_MEANING =
  'Diameters of the cutters you have, for the table of where each gets to. Left out: what shops stock.';

/** No maker owns more kinds. */
export const MOST_CUTTERS = 50;

/** One entry of the list. */
export const cutterEntry = length('diameter', 0.3, 25, 3.175, CUTTERS_MEANING, 'a cutter of …');

/** The members of `cutters`, mm, least first, each once; null when it is left out or null. Adds faults. */
export function readCutters(given: Json | undefined, units: Units, faults: Faults): readonly number[] | null {
  const path: Path = ['cutters'];
  if (given === undefined || (given.kind === 'scalar' && given.value === null)) return null;
  if (given.kind !== 'array') {
    faults.add(
      path,
      `must be a list of diameters such as ["1/16in", "3mm"], not ${given.kind === 'object' ? 'an object' : shown(given.value)}`,
    );
    return null;
  }
  if (given.items.length === 0) {
    faults.add(path, 'is an empty list: name at least one diameter, or leave it out for what shops stock');
    return null;
  }
  if (given.items.length > MOST_CUTTERS) {
    faults.add(path, `has ${given.items.length} entries: give ${MOST_CUTTERS} at most`);
    return null;
  }
  const read = given.items.map((item, k) =>
    readValue(item, cutterEntry, ['cutters', String(k)], units, faults),
  );
  const diameters = read.filter((d) => typeof d === 'number');
  return [...new Set(diameters)].sort((a, b) => a - b);
}
