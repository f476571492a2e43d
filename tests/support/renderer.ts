import { readFileSync } from 'node:fs';
import { makeRenderer, type Renderer } from '../../src/output/index.js';

/** The renderer, started from the library's own WASM file. The library starts once in a process: by this alone. */
export function testRenderer(): Promise<Renderer> {
  return makeRenderer(() => readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm'));
}
