import { KEYS, VALUES } from './harsh.js';

/** Any JSON value. */
type Tree = unknown;
type Below = (n: number) => number;

/** A place of a value: the object or list that holds it, and its key there. */
interface Place {
  readonly holder: Map<string, Tree> | Tree[];
  readonly key: string | number;
}

/** A JSON text that stays one, with something in it dropped, doubled, moved, renamed or put in another's place. */
export function changedTree(text: string, below: Below): string {
  const tree = asMaps(JSON.parse(text));
  const places = [...placesOf(tree)];
  if (places.length === 0) return text;
  const at = places[below(places.length)];
  const other = places[below(places.length)];
  const value = get(at);
  const raw = new Raw(VALUES[below(VALUES.length)]);
  switch (below(8)) {
    case 0:
      remove(at);
      break;
    case 1:
      set(other, value);
      break;
    case 2:
      swapped(at, other);
      break;
    case 3:
      renamed(at, KEYS[below(KEYS.length)], value);
      break;
    case 4:
      // The same key twice.
      renamed(at, `${at.key}${TWICE}`, value);
      set(at, below(2) ? value : raw);
      break;
    case 5:
      set(at, below(2) ? [value] : new Map([[KEYS[below(KEYS.length)], value]]));
      break;
    default:
      set(at, raw);
  }
  return written(tree);
}

/** A value as it is to be written, which no value of the language need be. */
class Raw {
  constructor(readonly text: string) {}
}

/** Marks a key that is written without the mark, so that an object can hold a key twice. */
const TWICE = '\u0001twice';

function asMaps(value: Tree): Tree {
  if (Array.isArray(value)) return value.map(asMaps);
  if (value === null || typeof value !== 'object') return value;
  return new Map(Object.entries(value).map(([k, v]) => [k, asMaps(v)]));
}

function* placesOf(tree: Tree): Generator<Place> {
  const entries = tree instanceof Map ? [...tree] : Array.isArray(tree) ? [...tree.entries()] : [];
  for (const [key, value] of entries) {
    yield { holder: tree as Place['holder'], key };
    yield* placesOf(value);
  }
}

const get = ({ holder, key }: Place): Tree =>
  holder instanceof Map ? holder.get(key as string) : holder[key as number];

function set({ holder, key }: Place, value: Tree): void {
  // A value moved into itself would never end.
  const copy = value instanceof Raw ? value : asMaps(JSON.parse(written(value ?? null)));
  if (holder instanceof Map) holder.set(key as string, copy);
  else holder[key as number] = copy;
}

function remove({ holder, key }: Place): void {
  if (holder instanceof Map) holder.delete(key as string);
  else holder.splice(key as number, 1);
}

function swapped(a: Place, b: Place): void {
  const [first, second] = [get(a), get(b)];
  set(a, second);
  set(b, first);
}

function renamed(at: Place, key: string, value: Tree): void {
  if (at.holder instanceof Map) {
    at.holder.delete(at.key as string);
    at.holder.set(key, value);
  } else at.holder.push(value);
}

function written(value: Tree): string {
  if (value instanceof Raw) return value.text;
  if (Array.isArray(value)) return `[${value.map(written).join(',')}]`;
  if (!(value instanceof Map)) return JSON.stringify(value);
  return `{${[...value].map(([k, v]) => `${JSON.stringify(k.replace(TWICE, ''))}:${written(v)}`).join(',')}}`;
}
