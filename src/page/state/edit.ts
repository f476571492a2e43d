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

/** What a text says at a path as written; undefined where it says nothing. */
export function writtenAt(text: string, path: JSONPath): Written | undefined {
  let here: unknown = parse(text);
  for (const key of path) {
    if (here === null || typeof here !== 'object') return undefined;
    here = (here as Record<string | number, unknown>)[key];
  }
  return here as Written | undefined;
}
