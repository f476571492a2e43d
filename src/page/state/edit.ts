import { applyEdits, type JSONPath, modify, parse } from 'jsonc-parser';

/** A value as JSON writes it; undefined: the key goes. */
export type Written =
  | string
  | number
  | boolean
  | null
  | readonly Written[]
  | { readonly [key: string]: Written };

const LAYOUT = { formattingOptions: { insertSpaces: true, tabSize: 2, eol: '\n' } };

/** The text with one value set, or its key taken out; everything else stays as its author laid it out. */
export function withValue(text: string, path: JSONPath, value: Written | undefined): string {
  return applyEdits(text, modify(text, path, value, LAYOUT));
}

/** What a text says, as far as it is JSON. */
export function read(text: string): unknown {
  return parse(text);
}

/** What stands at a path; undefined where nothing does. */
export function writtenAt(tree: unknown, path: JSONPath): Written | undefined {
  let here = tree;
  for (const key of path) {
    if (here === null || typeof here !== 'object') return undefined;
    here = (here as Record<string | number, unknown>)[key];
  }
  return here as Written | undefined;
}
