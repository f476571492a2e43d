import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename } from 'node:path';
import { build } from 'vite';
import { digest } from '../../scripts/bytes.mjs';
import { loadAssets } from '../../src/disk/load.js';
import { readRecipe } from '../../src/recipe/read.js';
import { openBrowser } from './browser.js';
import type { Needs } from './in-chromium.js';

const require = createRequire(import.meta.url);
const base64 = (content: Uint8Array | ArrayBuffer): string =>
  Buffer.from(content instanceof ArrayBuffer ? new Uint8Array(content) : content).toString('base64');

/** The digest of every text file of recipes made in the browser, by piece and file. */
export async function bytesInChromium(
  recipes: readonly { name: string; file: string }[],
): Promise<Record<string, Record<string, string>>> {
  const script = await bundled();
  const browser = await openBrowser();
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: script, type: 'module' });
    const out: Record<string, Record<string, string>> = {};
    for (const { name, file } of recipes) {
      const made = await page.evaluate(
        (needs) => (globalThis as unknown as { files(n: Needs): Promise<[string, string][]> }).files(needs),
        needsOf(file),
      );
      out[name] = Object.fromEntries(made.map(([f, text]) => [f, digest(text)]));
    }
    return out;
  } finally {
    await browser.close();
  }
}

function needsOf(file: string): Needs {
  const text = readFileSync(file, 'utf8');
  const { fonts, drawings } = loadAssets(readRecipe(text, file), file);
  return {
    path: basename(file),
    text,
    fonts: [...fonts].map(([name, list]) => [name, [list].flat().map(base64)]),
    drawings: [...drawings],
    shaper: base64(readFileSync(require.resolve('harfbuzzjs/dist/harfbuzz.wasm'))),
    renderer: base64(readFileSync(require.resolve('@resvg/resvg-wasm/index_bg.wasm'))),
  };
}

async function bundled(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      target: 'es2022',
      lib: { entry: new URL('./in-chromium.ts', import.meta.url).pathname, formats: ['es'] },
    },
  });
  const [first] = Array.isArray(built) ? built : [built];
  if (!first || !('output' in first)) throw new Error('nothing was bundled');
  return first.output[0].code;
}
