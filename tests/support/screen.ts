import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pixelmatch from 'pixelmatch';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const GOLDEN = join(root, 'tests', 'golden', 'page');
const ACTUAL = join(root, 'tests', '.actual', 'page');

/** Screens are kept at a half of their size: layout, woods and marks are seen, and the files stay small. */
const SMALLER = 2;
/** Colours are kept to so many steps: edges that two versions of a browser draw alike but for a shade stay alike. */
const SHADES = 10;

const face = createRequire(import.meta.url).resolve(
  '@expo-google-fonts/varela-round/400Regular/VarelaRound_400Regular.ttf',
);

/** Sets every letter of the page in one font that is at hand everywhere. Needs a context with bypassCSP. */
export async function withOneFont(page: Page): Promise<void> {
  const data = readFileSync(face).toString('base64');
  await page.addStyleTag({
    content: `@font-face { font-family: One; src: url(data:font/ttf;base64,${data}) } *, text { font-family: One !important }`,
  });
  await page.evaluate(() => document.fonts.load('16px One'));
}

/** A picture of the page as goldens are kept. */
export async function screen(page: Page): Promise<PNG> {
  const shot = await page.screenshot({ animations: 'disabled', caret: 'hide' });
  return smaller(PNG.sync.read(shot));
}

/** Each block of pixels becomes one of its mean colour, rounded to a shade. */
function smaller({ data, width, height }: PNG): PNG {
  const out = new PNG({ width: Math.floor(width / SMALLER), height: Math.floor(height / SMALLER) });
  const step = 255 / (SHADES - 1);
  for (let y = 0; y < out.height; y++)
    for (let x = 0; x < out.width; x++)
      for (let c = 0; c < 4; c++) {
        let sum = 0;
        for (let dy = 0; dy < SMALLER; dy++)
          for (let dx = 0; dx < SMALLER; dx++)
            sum += data[4 * ((SMALLER * y + dy) * width + SMALLER * x + dx) + c]!;
        const mean = sum / SMALLER ** 2;
        out.data[4 * (y * out.width + x) + c] = Math.round(Math.round(mean / step) * step);
      }
  return out;
}

/**
 * The share of pixels that differ from the golden picture of that name. What was seen is kept under tests/.actual unless
 * told not to; with UPDATE_GOLDENS set it becomes the golden.
 */
export function differs(name: string, seen: PNG, keep = true): number {
  const golden = join(GOLDEN, `${name}.png`);
  if (keep) keepAs(name, PNG.sync.write(seen, { colorType: 2, deflateLevel: 9 }));
  if (!existsSync(golden)) throw new Error(`there is no golden picture ${name}: see DEVELOPERS.md`);
  const kept = PNG.sync.read(readFileSync(golden));
  if (kept.width !== seen.width || kept.height !== seen.height) return 1;
  const n = pixelmatch(kept.data, seen.data, undefined, seen.width, seen.height, { threshold: 0.15 });
  return n / (seen.width * seen.height);
}

function keepAs(name: string, bytes: Buffer): void {
  for (const folder of [ACTUAL, ...(process.env.UPDATE_GOLDENS ? [GOLDEN] : [])]) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, `${name}.png`), bytes);
  }
}
