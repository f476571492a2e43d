/**
 * Draws patterns/gallery/NAME.png, a small flat picture of each generator at its defaults, for the README, and prints
 * the README's table of them. Run it after changing a generator.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { main, ROOT, setUp } from './setup.mjs';

const WIDTH = 220;
const COLUMNS = 5;
const FIELD = '#e6cfa6';
const PLUG = '#55382a';
/** Millimetres of white round the face. */
const MAT = 2;

main(setUp);
const dist = (file) => import(`../dist/${file}`);
const [
  { loadAssets, loadRenderer },
  { readRecipe, build, generators },
  { sampleText },
  { pathData },
  { frameOf },
] = await Promise.all(
  ['disk/load.js', 'index.js', 'recipe/sample.js', 'output/svg.js', 'output/ring.js'].map(dist),
);
const renderer = await loadRenderer();
const folder = join(ROOT, 'patterns', 'gallery');
mkdirSync(folder, { recursive: true });
const cells = [];
for (const generator of generators) {
  const recipe = readRecipe(sampleText(generator), generator.name);
  const { outline, safe } = build(recipe, loadAssets(recipe, join(ROOT, 'patterns', 'sample.json')));
  const { minX, maxX, minY, maxY } = outline.box;
  const frame = frameOf({ width: maxX - minX + 2 * MAT, height: maxY - minY + 2 * MAT }, 'mm');
  const path = (region, colour) =>
    `<path fill-rule="evenodd" fill="${colour}" d="${pathData(region.contours, frame)}"/>`;
  const size = [frame.width, frame.height].map((n) => n / 1e6);
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size[0]} ${size[1]}">` +
    `<clipPath id="face"><path d="${pathData(outline.face.contours, frame)}"/></clipPath>` +
    `<rect width="100%" height="100%" fill="#fff"/>${path(outline.face, FIELD)}` +
    `<g clip-path="url(#face)">${path(safe.region, PLUG)}</g></svg>`;
  writeFileSync(join(folder, `${generator.name}.png`), renderer.png(svg, WIDTH));
  cells.push(
    `<img src="patterns/gallery/${generator.name}.png" width="150" alt=""><br>\`${generator.name}\``,
  );
}
const rows = Array.from({ length: Math.ceil(cells.length / COLUMNS) }, (_, i) =>
  cells.slice(i * COLUMNS, (i + 1) * COLUMNS),
);
const line = (row) => `| ${Array.from({ length: COLUMNS }, (_, k) => row[k] ?? '').join(' | ')} |`;
console.log([line(rows[0]), `|${' :---: |'.repeat(COLUMNS)}`, ...rows.slice(1).map(line)].join('\n'));
