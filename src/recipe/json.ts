import { parse } from '@humanwhocodes/momoa';
import { BadInput, type Fault, shortKey } from '../schema/fault.js';

/** JSON values that remember the line they stand on. */
export type Json = JsonObject | JsonArray | JsonScalar;

export interface JsonObject {
  readonly kind: 'object';
  readonly source: string;
  readonly members: ReadonlyMap<string, Json>;
}

export interface JsonArray {
  readonly kind: 'array';
  readonly source: string;
  readonly items: readonly Json[];
}

export interface JsonScalar {
  readonly kind: 'scalar';
  /** `file:line`, or `--set`. */
  readonly source: string;
  readonly value: string | number | boolean | null;
  /** What was typed, for a value from the command line: there `12` may be meant as text. */
  readonly raw?: string;
}

/** A recipe is a page of text; anything near this is another kind of file. */
export const MAX_BYTES = 1_000_000;
/** A recipe is five deep. The bound keeps the parser's recursion off the end of the stack. */
export const MAX_DEPTH = 32;

/** Parses JSON text. Throws BadInput with file:line:column on the first syntax fault, or with every doubled key. */
export function parseJson(text: string, fileName: string): Json {
  if (text.length > MAX_BYTES) throw fault(fileName, 'is over 1 MB: a recipe is a page of text');
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (clean.includes('\0'))
    throw fault(fileName, 'is not a JSON text: it holds binary data; save it as UTF-8 text');
  if (clean.trim() === '')
    throw fault(fileName, 'is empty: a recipe needs at least { "name": ..., "outline": ... }');
  const open = scan(clean, fileName);
  let body: Tree;
  try {
    body = parse(clean, { mode: 'json' }).body as Tree;
  } catch (e) {
    throw syntaxFault(e, clean, fileName, open);
  }
  const faults: Fault[] = [];
  const tree = convert(body, fileName, '', faults);
  if (faults.length > 0) throw new BadInput(faults.slice(0, 20));
  return tree;
}

/** The parser's tree, as far as it is used here. */
type Tree = { readonly loc: { readonly start: { readonly line: number } } } & (
  | { readonly type: 'Object'; readonly members: readonly { readonly name: Name; readonly value: Tree }[] }
  | { readonly type: 'Array'; readonly elements: readonly { readonly value: Tree }[] }
  | { readonly type: 'String' | 'Number' | 'Boolean'; readonly value: string | number | boolean }
  | { readonly type: 'Null' }
);
type Name = { readonly value: string; readonly loc: { readonly start: { readonly line: number } } };

function convert(node: Tree, fileName: string, path: string, faults: Fault[]): Json {
  const source = `${fileName}:${node.loc.start.line}`;
  if (node.type === 'Array') {
    const items = node.elements.map((e, i) =>
      convert(e.value, fileName, path === '' ? `${i}` : `${path}.${i}`, faults),
    );
    return { kind: 'array', source, items };
  }
  if (node.type === 'Null') return { kind: 'scalar', source, value: null };
  if (node.type === 'Number' && !Number.isFinite(node.value)) {
    faults.push({ where: path, message: 'is a larger number than can be reckoned with', source });
    return { kind: 'scalar', source, value: 0 };
  }
  if (node.type !== 'Object') return { kind: 'scalar', source, value: node.value };
  const members = new Map<string, Json>();
  for (const { name, value } of node.members) {
    const key = name.value;
    const where = path === '' ? shortKey(key) : `${path}.${shortKey(key)}`;
    const first = members.get(key);
    const line = name.loc.start.line;
    if (first) {
      const message = `is given twice (first at ${first.source}): keep one of them`;
      faults.push({ where, message, source: `${fileName}:${line}` });
    }
    members.set(key, convert(value, fileName, where, faults));
  }
  return { kind: 'object', source, members };
}

/**
 * One pass without recursion before the parser runs: refuses deep nesting and bare control characters in strings
 * (which the parser lets pass). Returns where the innermost bracket that is never closed stands, or -1.
 */
function scan(text: string, fileName: string): number {
  const open: number[] = [];
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (inString) {
      if (c === 0x5c) i++;
      else if (c === 0x22) inString = false;
      else if (c < 0x20)
        throw fault(
          place(fileName, text, i),
          'a text runs over the end of its line: close its quote, or write \\n',
        );
    } else if (c === 0x22) inString = true;
    else if (c === 0x7b || c === 0x5b) {
      open.push(i);
      if (open.length > MAX_DEPTH)
        throw fault(place(fileName, text, i), `is nested more than ${MAX_DEPTH} deep: a recipe is five deep`);
    } else if (c === 0x7d || c === 0x5d) open.pop();
  }
  return open.at(-1) ?? -1;
}

function syntaxFault(e: unknown, text: string, fileName: string, open: number): BadInput {
  const offset = (e as { offset?: unknown }).offset;
  const at = typeof offset === 'number' ? offset : text.length;
  const found = /^("[^"\n]{0,20}"?|[-+.\w]{1,20}|.)/su.exec(text.slice(at))?.[0];
  // The parser names the last word of a text that ends too early, which is none of its faults.
  if (found === undefined || (open >= 0 && at + found.length >= text.trimEnd().length)) {
    const which = open >= 0 ? `: the ${text[open]} on line ${lineOf(text, open)} is never closed` : '';
    return fault(place(fileName, text, text.trimEnd().length), `not JSON: the text ends too early${which}`);
  }
  return fault(
    place(fileName, text, at),
    `not JSON: ${found} is not expected here${hint(text, at, found, open)}`,
  );
}

function hint(text: string, at: number, found: string, open: number): string {
  const before = text.slice(0, at).trimEnd().at(-1) ?? '';
  if (found === '/' || found === '#') return '; JSON has no comments';
  if (found === "'") return '; texts stand in double quotes';
  if ((found === '}' || found === ']') && before === ',') return '; remove the comma before it';
  if (/^[-+]?(nan|infinity)/i.test(found)) return '; give a number';
  if (open >= 0) return `; the ${text[open]} on line ${lineOf(text, open)} is never closed`;
  if (found.startsWith('"') && /["\d\]}el]/.test(before)) return '; a comma is missing before it';
  return '';
}

function lineOf(text: string, at: number): number {
  return text.slice(0, at).split('\n').length;
}

function place(fileName: string, text: string, at: number): string {
  const lines = text.slice(0, at).split('\n');
  return `${fileName}:${lines.length}:${lines.at(-1)!.length + 1}`;
}

function fault(source: string, message: string): BadInput {
  return new BadInput([{ where: '', message, source }]);
}
