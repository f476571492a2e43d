/** Runs in the browser: makes a recipe's files there, from all that it needs, and gives the text ones. */
import { build } from '../../src/build.js';
import type { Assets } from '../../src/generators/generator.js';
import { makeShaper } from '../../src/generators/lettering/shaper.js';
import { makeRenderer } from '../../src/output/renderer.js';
import { proven } from '../../src/proven.js';
import { readRecipe } from '../../src/recipe/read.js';

/** What a recipe needs, bytes as base64. */
export interface Needs {
  readonly path: string;
  readonly text: string;
  readonly fonts: readonly (readonly [name: string, files: readonly string[]])[];
  readonly drawings: readonly (readonly [name: string, text: string])[];
  readonly shaper: string;
  readonly renderer: string;
}

const bytes = (base64: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));

async function files(needs: Needs): Promise<[string, string][]> {
  const assets: Assets = {
    fonts: new Map(needs.fonts.map(([name, list]) => [name, list.map((f) => bytes(f).buffer)])),
    drawings: new Map(needs.drawings),
    ...(needs.fonts.length > 0 ? { shaper: makeShaper(bytes(needs.shaper)) } : {}),
  };
  const job = build(readRecipe(needs.text, needs.path), assets);
  const made = proven(job, await makeRenderer(() => bytes(needs.renderer)), () => undefined);
  return [...made.files].filter((f): f is [string, string] => typeof f[1] === 'string');
}

Object.assign(globalThis, { files });
