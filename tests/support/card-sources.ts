import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { faceFiles, fontChoice } from '../../src/generators/lettering/font-name.js';
import { makeShaper } from '../../src/generators/lettering/shaper.js';
import type { Sources } from '../../src/page/worker/assets.js';
import type { Origin } from '../../src/page/worker/protocol.js';

const require = createRequire(import.meta.url);
const patterns = new URL('../../patterns/', import.meta.url);

export const nowhere: Origin = { token: '', file: null, shipped: null };

/** What the page's server would send, from the files that ship. */
export const fromDisk: Sources = {
  async file(_, path) {
    const { buffer, byteOffset, byteLength } = readFileSync(new URL(path, patterns));
    return buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer;
  },
  async font(_, name, part) {
    const choice = fontChoice(name);
    if (!choice || !('face' in choice)) throw new Error(`${name} is not bundled`);
    return new Uint8Array(readFileSync(require.resolve(faceFiles(choice.face)[part]!))).buffer;
  },
  shaper: async () => makeShaper(readFileSync(require.resolve('harfbuzzjs/dist/harfbuzz.wasm'))),
};
