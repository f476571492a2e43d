import { BadInput } from '../schema/fault.js';
import { type Json, type JsonArray, type JsonObject, parseJson } from './json.js';

const SOURCE = '--set';

/**
 * The tree with the values of `key=value` settings put in; a key is a dotted path (`cutter.diameter`). A value that
 * is JSON is read as JSON, anything else as text, so that `cutter.diameter=1/8in` needs no quotes.
 */
export function withSettings(tree: Json, settings: readonly string[]): Json {
  return settings.reduce((t, setting) => {
    const at = setting.indexOf('=');
    if (at < 1) throw bad(setting, 'needs a key and a value: --set cutter.diameter=3mm');
    return setValue(t, setting.slice(0, at), setting.slice(at + 1));
  }, tree);
}

/** The tree with one value replaced or added. Objects on the way are made when missing. Throws BadInput. */
export function setValue(tree: Json, key: string, value: string): Json {
  const path = key.split('.');
  if (path.some((p) => p === '')) throw bad(key, 'is not a path: write it like cutter.diameter');
  if (path.length > 8) throw bad(key.slice(0, 60), 'is deeper than any recipe value');
  return put(tree, path, parsed(value), key);
}

function put(tree: Json | undefined, path: readonly string[], value: Json, key: string): Json {
  const [head, ...rest] = path;
  if (head === undefined) return value;
  if (tree?.kind === 'array') return putItem(tree, head, rest, value, key);
  if (tree && tree.kind !== 'object') throw bad(key, 'goes into something that holds no keys');
  const members = new Map(tree?.members ?? []);
  if (tree && /^\d+$/.test(head) && !members.has(head))
    throw bad(key, `"${head}" is the place of an item, and there is no list: leave it out`);
  members.set(head, put(members.get(head), rest, value, key));
  const made: JsonObject = { kind: 'object', source: tree?.source ?? SOURCE, members };
  return made;
}

/** An item of a list replaced, or added right behind the last. */
function putItem(list: JsonArray, head: string, rest: readonly string[], value: Json, key: string): Json {
  const at = /^\d+$/.test(head) ? Number(head) : -1;
  if (at < 0 || at > list.items.length)
    throw bad(
      key,
      `${JSON.stringify(head)} is no place in a list of ${list.items.length}; name the place first, counted from 0: ${key.replace(head, `0.${head}`)}`,
    );
  const items = [...list.items];
  items[at] = put(items[at], rest, value, key);
  return { ...list, items };
}

function parsed(raw: string): Json {
  let tree: Json;
  try {
    tree = parseJson(raw, SOURCE);
  } catch (e) {
    if (!(e instanceof BadInput)) throw e;
    return { kind: 'scalar', source: SOURCE, value: raw, raw };
  }
  return fromCommandLine(tree, raw);
}

/** The same values, their source the setting and not a line of it. */
function fromCommandLine(tree: Json, raw?: string): Json {
  if (tree.kind === 'array')
    return { kind: 'array', source: SOURCE, items: tree.items.map((item) => fromCommandLine(item)) };
  if (tree.kind === 'scalar') {
    const typed = raw !== undefined && typeof tree.value !== 'string';
    return { kind: 'scalar', source: SOURCE, value: tree.value, ...(typed ? { raw } : {}) };
  }
  const members = [...tree.members].map(([k, v]) => [k, fromCommandLine(v)] as const);
  return { kind: 'object', source: SOURCE, members: new Map(members) };
}

function bad(where: string, message: string): BadInput {
  return new BadInput([{ where, message, source: SOURCE }]);
}
