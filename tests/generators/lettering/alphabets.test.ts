import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { enforce } from '../../../src/cutter/enforce.js';
import { bounds, type Region } from '../../../src/geometry/region.js';
import type { Renderer } from '../../../src/output/index.js';
import { frameOf } from '../../../src/output/ring.js';
import { pathData } from '../../../src/output/svg.js';
import { bundled, LETTERS, letterArtwork, otherFont } from '../../support/bundled-fonts.js';
import { countsOf, rasterCounts } from '../../support/counted.js';
import { testRenderer } from '../../support/renderer.js';

/** A 1/8 in cutter with a tenth of its diameter as ease, mm. */
const R = 1.5875 + 0.3175;

/** Cap heights, mm, at which the whole alphabet keeps its parts and holes. What asks for them: see patterns/fonts. */
const GENEROUS: Readonly<Record<string, number>> = {
  'varela-round': 60,
  fredoka: 100,
  arvo: 120,
  cinzel: 125,
  unifrakturcook: 125,
  pacifico: 150,
  'bebas-neue': 120,
  righteous: 120,
  'uncial-antiqua': 200,
};

const COLUMNS = 13;
/** Cells of the sheet, in cap heights. */
const CELL = { width: 1.75, height: 2, base: 1.42 };
const SHEET_WIDTH = 500;
/** Pixels that may differ when nothing has changed: none, since the renderer is the same everywhere. */
const UNLIKE = 0;

let renderer: Renderer;
beforeAll(async () => {
  renderer = await testRenderer();
});

/** All letters after the pass, in rows, dark on pale. */
function sheet(letters: readonly Region[], cap: number): PNG {
  const width = COLUMNS * CELL.width * cap;
  const height = Math.ceil(letters.length / COLUMNS) * CELL.height * cap;
  const frame = frameOf({ width, height }, 'mm');
  const paths = letters.map((letter, i) => {
    const { minX, maxX } = bounds(letter.contours);
    const x = ((i % COLUMNS) + 0.5) * CELL.width * cap - (minX + maxX) / 2 - width / 2;
    const y = height / 2 - (Math.floor(i / COLUMNS) * CELL.height + CELL.base) * cap;
    const placed = letter.contours.map((c) =>
      c.map((e) => ({
        ...e,
        x0: e.x0 + x,
        y0: e.y0 + y,
        x1: e.x1 + x,
        y1: e.y1 + y,
        cx: e.r === 0 ? 0 : e.cx + x,
        cy: e.r === 0 ? 0 : e.cy + y,
      })),
    );
    return `<path fill-rule="evenodd" fill="#55382a" d="${pathData(placed, frame)}"/>`;
  });
  const box = `0 0 ${frame.width / 1e6} ${frame.height / 1e6}`;
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}">` +
    `<rect width="100%" height="100%" fill="#e6cfa6"/>${paths.join('')}</svg>`;
  return PNG.sync.read(Buffer.from(renderer.png(svg, SHEET_WIDTH)));
}

const unlike = (a: PNG, b: PNG): number =>
  pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.1 });

describe.each(bundled)('%s', { timeout: 180_000 }, (name, face) => {
  const font = otherFont(face);
  const cap = GENEROUS[name]!;
  const drawn = LETTERS.map((letter) => letterArtwork(face, font, letter, cap));

  it('is counted alike by its contours and by the pixels of the same outlines', () => {
    const counts = LETTERS.map((letter, i) => [letter, countsOf({ contours: contoursOf(drawn[i]!) })]);
    const seen = LETTERS.map((letter) => {
      const { path, bbox } = font.glyphForCodePoint(letter.codePointAt(0)!);
      return [letter, rasterCounts(renderer, path.toSVG(), bbox)];
    });
    expect(counts).toEqual(seen);
  });

  it('keeps the parts and holes of every letter, and looks like the golden picture', () => {
    const cut = drawn.map((artwork) => enforce(artwork, { r: R, thin: 'widen', touch: 'part' }).region);
    const now = sheet(cut, cap);
    const file = `tests/golden/fonts/${name}.png`;
    // A golden is only ever written on purpose: UPDATE_GOLDEN=1, then looked at.
    if (process.env.UPDATE_GOLDEN) {
      mkdirSync('tests/golden/fonts', { recursive: true });
      writeFileSync(file, PNG.sync.write(now));
    }
    const changed = LETTERS.filter(
      (_, i) =>
        JSON.stringify(countsOf(cut[i]!)) !== JSON.stringify(countsOf({ contours: contoursOf(drawn[i]!) })),
    );
    expect(changed).toEqual([]);
    expect(existsSync(file)).toBe(true);
    const bytes = readFileSync(file);
    expect(bytes.length).toBeLessThan(40_000);
    const golden = PNG.sync.read(bytes);
    expect([now.width, now.height]).toEqual([golden.width, golden.height]);
    expect(unlike(now, golden)).toBe(UNLIKE);
  });
});

it('tells a golden picture from that of another cutter (the checks above can fail)', () => {
  const [name, face] = bundled[0]!;
  const font = otherFont(face);
  const cap = GENEROUS[name]!;
  const wider = LETTERS.map(
    (letter) =>
      enforce(letterArtwork(face, font, letter, cap), { r: 2 * R, thin: 'widen', touch: 'part' }).region,
  );
  const golden = PNG.sync.read(readFileSync(`tests/golden/fonts/${name}.png`));
  expect(unlike(sheet(wider, cap), golden)).toBeGreaterThan(50);
});

function contoursOf(artwork: { readonly pieces: readonly { readonly region: Region }[] }) {
  return artwork.pieces.flatMap((p) => p.region.contours);
}
