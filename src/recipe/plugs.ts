import type { OwnWoods } from '../shop/own.js';
import { findWood, woods } from '../shop/woods.js';
import { type Faults, type Path, shown } from './faults.js';
import type { Json } from './json.js';
import { object } from './named.js';
import { suggestion } from './nearest.js';
import type { PlugWood } from './recipe.js';

/** What `woods.plugs` is, for the JSON Schema. */
export const PLUGS_MEANING =
  'Woods of some of the pieces, one plug drawing each: the beginning of the pieces\' names ("hexagon", "letter 3") or "layer 1", and its wood. Woods go in in this order, after what is left to woods.plug; where woods touch, a later one is let into those before it.';

/** More keys than this tell no maker anything. */
const MOST_PLUGS = 24;
/** Names of pieces are a few words. */
const LONGEST = 80;

/** The members of `woods.plugs` in the order written; none when it is left out or null. Adds faults. */
export function readPlugs(given: Json | undefined, own: OwnWoods, faults: Faults): readonly PlugWood[] {
  const path: Path = ['woods', 'plugs'];
  if (given === undefined || (given.kind === 'scalar' && given.value === null)) return [];
  const json = object(given, path, faults);
  if (!json) return [];
  if (json.members.size > MOST_PLUGS) {
    faults.add(path, `has ${json.members.size} keys: give ${MOST_PLUGS} at most`);
    return [];
  }
  const plugs: PlugWood[] = [];
  for (const [key, value] of json.members) {
    const here = [...path, key];
    const pieces = key.trim();
    if (pieces === '' || pieces.length > LONGEST) {
      faults.add(
        here,
        `is no name of pieces: give 1 to ${LONGEST} characters, such as "hexagon" or "layer 1"`,
      );
      continue;
    }
    const wood = woodNamed(value, here, own, faults);
    if (wood !== null) plugs.push({ pieces, wood });
  }
  return plugs;
}

function woodNamed(value: Json, path: Path, own: OwnWoods, faults: Faults): string | null {
  const known = [...own, ...woods].map((w) => w.name);
  if (value.kind !== 'scalar' || typeof value.value !== 'string') {
    const what =
      value.kind === 'scalar' ? shown(value.value) : value.kind === 'array' ? 'a list' : 'an object';
    faults.add(path, `must be the name of a wood, not ${what}: one of ${known.join(', ')}`);
    return null;
  }
  const found = findWood(value.value, own);
  if (!found) faults.add(path, `${shown(value.value)} is not known; ${suggestion(value.value, known)}`);
  return found?.name ?? null;
}
