import { distance } from 'fastest-levenshtein';
import type { Layer } from '../layer.js';
import { type Face, faces } from './faces.js';

/** What a recipe's `font` means: a bundled face, or a file by its path from the recipe's folder. */
export type FontChoice = { readonly face: Face } | { readonly path: string };

/** Null for a name that is neither; `fontFault` says why. */
export function fontChoice(name: string): FontChoice | null {
  const face = faces.find((f) => f.name === name);
  if (face) return { face };
  return isPath(name) ? { path: name } : null;
}

/** The fault of a name that is no bundled face's and no path; null when there is none. */
export function fontFault(name: string): string | null {
  if (fontChoice(name)) return null;
  const names = faces.map((f) => f.name);
  const near = nearestName(name, names);
  const meant = near === null ? `use one of ${names.join(', ')}` : `did you mean "${near}"?`;
  const all = near === null || names.length === 1 ? '' : ` (known: ${names.join(', ')})`;
  return `${shownFont(name)} is not a bundled font; ${meant}${all}; or give the path of a TTF, OTF or WOFF file`;
}

/** A name that has a folder or an ending in it is a path. */
function isPath(name: string): boolean {
  return /[/\\]|\.[A-Za-z0-9]{1,5}$/.test(name);
}

export function shownFont(name: string): string {
  return JSON.stringify(name.length > 80 ? `${name.slice(0, 80)}...` : name);
}

/** The name by the fewest edits, up to two fifths of its letters. */
function nearestName(name: string, names: readonly string[]): string | null {
  const given = name.slice(0, 60).toLowerCase();
  const far = Math.max(2, Math.floor(given.length * 0.4));
  const ranked = names.map((n) => [distance(given, n), n] as const).sort((a, b) => a[0] - b[0]);
  const starts = given.length >= 3 ? names.find((n) => n.startsWith(given)) : undefined;
  return starts ?? (ranked[0] && ranked[0][0] <= far ? ranked[0][1] : null);
}

/** The font that a layer asks for; null when it has no lettering. */
export function fontOf({ generator, values }: Layer): string | null {
  return generator === 'lettering' ? String(values.font) : null;
}

/** A bundled face's files, as `require.resolve` finds them, in the order in which a character is looked for. */
export function faceFiles(face: Face): readonly string[] {
  return [face.file];
}
