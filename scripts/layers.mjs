import { readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { dirname, join, posix, relative, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { transformSync } from 'rolldown/utils';
import { HOST, ROOMS, TOP } from './rooms.mjs';
import { tokens } from './tokens.mjs';

/** Engines differ in the last digits of these, so the same recipe would give other bytes elsewhere. */
const UNSTEADY_MATH = new Set(
  (
    'sin cos tan asin acos atan atan2 sinh cosh tanh asinh acosh atanh ' +
    'pow exp expm1 log log1p log2 log10 hypot cbrt random'
  ).split(' '),
);
/** Answers that hang on the day, the place or the language of the machine. */
const UNSTEADY_NAMES = new Set(['Date', 'Intl']);
const HOST_NAMES = new Set(['process', 'performance', 'globalThis']);
const UNSTEADY_MEMBERS = /^(toLocale\w*|localeCompare)$/;

/**
 * Faults of a set of sources against the house plan: one line each, sorted by file.
 * @param {ReadonlyMap<string, string>} sources text by path from src/, with forward slashes
 * @returns {string[]}
 */
export function faults(sources) {
  const rooms = { ...ROOMS, ...TOP };
  const out = [];
  /** @type {Map<string, string[]>} */
  const graph = new Map();
  for (const [path, text] of [...sources].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const list = tokens(path.endsWith('.tsx') ? plain(path, text) : text);
    const room = roomOf(path);
    const at = (line, message) => out.push(`src/${path}:${line}: ${message}`);
    if (!Object.hasOwn(rooms, room)) at(1, `room "${room}" is not in scripts/rooms.mjs`);
    const targets = [];
    for (const { from, line, typeOnly } of imports(list)) {
      if (from === null) at(line, 'import() needs a plain string');
      else if (from.startsWith('.')) {
        const target = posix.normalize(posix.join(posix.dirname(path), from)).replace(/\.js$/, '.ts');
        targets.push(target);
        const other = roomOf(target);
        const allowed = other === room ? 'all' : rooms[room]?.[other];
        if (!allowed) at(line, `${room} may not import from ${other}`);
        else if (allowed === 'types' && !typeOnly) at(line, `${room} may import only types from ${other}`);
      } else if (isBuiltin(from) && !HOST.has(room)) {
        at(line, `only ${[...HOST].join(' and ')} may import ${from}`);
      }
    }
    graph.set(path.replace(/x$/, ''), targets);
    for (const { line, message } of unsteady(list, room)) at(line, message);
  }
  return [...out, ...cycles(graph)];
}

/** A source with markup in it as the script it stands for: the scanner knows no markup. Its lines may move a little. */
function plain(path, text) {
  return transformSync(path, text, { typescript: { onlyRemoveTypeImports: true } }).code;
}

/** "cutter/enforce.ts" is in room cutter, "build.ts" in room build. */
function roomOf(path) {
  return path.includes('/') ? path.slice(0, path.indexOf('/')) : path.replace(/\.[^.]*$/, '');
}

/** Every import and export-from of a source. `from` is null for an import() of something computed. */
function* imports(list) {
  for (let i = 0; i < list.length; i++) {
    const { text, kind, line } = list[i];
    if (kind !== 'name' || (text !== 'import' && text !== 'export') || list[i - 1]?.text === '.') continue;
    const next = list[i + 1];
    if (text === 'import' && next?.kind === 'mark' && next.text === '(') {
      // import('./x.js').Name in a type loads nothing, but reads like a dependency and is one.
      const inside = list[i + 2];
      const plain = inside?.kind === 'string' && list[i + 3]?.text === ')';
      yield { from: plain ? inside.text : null, line, typeOnly: false };
    } else if (text === 'import' && next?.kind === 'string') {
      yield { from: next.text, line, typeOnly: false };
    } else {
      const clause = [];
      let k = i + 1;
      // A clause is names, commas, stars and one pair of braces; anything else is a declaration.
      while (
        k < list.length &&
        /^([\p{ID_Continue}$]+|[{},*])$/u.test(list[k].text) &&
        list[k].kind !== 'string'
      ) {
        if (list[k].text === 'from' && list[k + 1]?.kind === 'string') break;
        clause.push(list[k++].text);
      }
      if (list[k]?.text === 'from' && list[k + 1]?.kind === 'string') {
        yield { from: list[k + 1].text, line, typeOnly: onlyTypes(clause) };
      }
    }
  }
}

function onlyTypes(clause) {
  if (clause[0] === 'type' && clause[1] !== ',' && clause.length > 1) return true;
  const open = clause.indexOf('{');
  if (open !== 0) return false;
  const names = clause.slice(1, -1).join(' ').split(',');
  return names.every((n) => n.trim() === '' || /^type \S/.test(n.trim()));
}

function* unsteady(list, room) {
  // The page may ask its browser how long something took.
  const host = HOST.has(room) ? HOST_NAMES : new Set(room === 'page' ? ['performance', 'globalThis'] : []);
  for (let i = 0; i < list.length; i++) {
    const { text, kind, line } = list[i];
    const before = list[i - 1]?.text;
    const member = before === '.' || before === '?.';
    if (kind === 'mark' && (text === '**' || text === '**=')) {
      const power = list[i + 1];
      if (power?.kind !== 'number' || !/^\d+$/.test(power.text)) {
        yield { line, message: '** with anything but a whole number differs between engines' };
      }
    } else if (member && UNSTEADY_MEMBERS.test(text)) {
      yield { line, message: `${text} depends on the machine's language` };
    } else if (kind === 'name' && !member && text === 'Math') {
      const name = list[i + 1]?.text === '.' ? list[i + 2]?.text : null;
      if (name === null)
        yield { line, message: 'Math is to be used as Math.name, so that its use can be checked' };
      else if (UNSTEADY_MATH.has(name))
        yield { line, message: `Math.${name} differs between engines or runs` };
    } else if (kind === 'name' && !member && UNSTEADY_NAMES.has(text)) {
      yield { line, message: `${text} makes the result depend on the machine or the day` };
    } else if (kind === 'name' && !member && HOST_NAMES.has(text) && !host.has(text)) {
      yield { line, message: `only ${[...HOST].join(' and ')} may use ${text}` };
    }
  }
}

/** Each cycle of files once, as "a -> b -> a". */
function cycles(graph) {
  const out = [];
  const done = new Set();
  const trail = [];
  const visit = (path) => {
    const seen = trail.indexOf(path);
    if (seen >= 0) {
      out.push(`import cycle: ${[...trail.slice(seen), path].join(' -> ')}`);
      return;
    }
    if (done.has(path)) return;
    trail.push(path);
    for (const next of graph.get(path) ?? []) visit(next);
    trail.pop();
    done.add(path);
  };
  for (const path of graph.keys()) visit(path);
  return out;
}

/** The sources under a folder, by path from it. */
export function readSources(folder) {
  const sources = new Map();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !/\.(ts|mts|cts|tsx)$/.test(entry.name)) continue;
    const file = join(entry.parentPath ?? entry.path, entry.name);
    sources.set(relative(folder, file).split(sep).join('/'), readFileSync(file, 'utf8'));
  }
  return sources;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const src = join(dirname(dirname(fileURLToPath(import.meta.url))), 'src');
  const sources = readSources(src);
  const found = faults(sources);
  for (const fault of found) console.error(fault);
  if (found.length === 0) console.log(`${sources.size} files keep to the house plan`);
  process.exitCode = found.length === 0 ? 0 : 1;
}
