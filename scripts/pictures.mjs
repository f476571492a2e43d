/** Draws the small picture that stands beside each recipe in patterns/. Run it after changing a recipe or the drawing. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { main, ROOT, setUp } from './setup.mjs';

/** Pixels, largest first: the first whose picture stays under 60 KB is taken. */
const WIDTHS = [260, 220, 190, 160, 130];
const MOST_BYTES = 60_000;

main(setUp);
const [{ loadAssets, loadRenderer }, { readRecipe, build, draw }] = await Promise.all([
  import('../dist/disk/load.js'),
  import('../dist/index.js'),
]);
const renderer = await loadRenderer();
const folder = join(ROOT, 'patterns');
for (const file of readdirSync(folder).filter((f) => f.endsWith('.json'))) {
  const recipe = readRecipe(readFileSync(join(folder, file), 'utf8'), file);
  const picture = draw(build(recipe, loadAssets(recipe, join(folder, file))), renderer).get('picture.svg');
  const small = WIDTHS.map((w) => renderer.png(picture, w)).find((png) => png.length < MOST_BYTES);
  writeFileSync(join(folder, file.replace('.json', '.png')), small);
  console.error(`patterns/${file.replace('.json', '.png')}`);
}
