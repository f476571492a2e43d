/** Draws the small picture that stands beside each recipe in patterns/. Run it after changing a recipe or the drawing. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { main, ROOT, setUp } from './setup.mjs';

/** Pixels: enough to see the figure, and under 100 KB in every wood. */
const WIDTH = 330;

main(setUp);
const [{ loadAssets, loadRenderer }, { readRecipe, build, draw }] = await Promise.all([
  import('../dist/commands/load.js'),
  import('../dist/index.js'),
]);
const renderer = await loadRenderer();
const folder = join(ROOT, 'patterns');
for (const file of readdirSync(folder).filter((f) => f.endsWith('.json'))) {
  const recipe = readRecipe(readFileSync(join(folder, file), 'utf8'), file);
  const picture = draw(build(recipe, loadAssets(recipe)), renderer).get('picture.svg');
  writeFileSync(join(folder, file.replace('.json', '.png')), renderer.png(picture, WIDTH));
  console.error(`patterns/${file.replace('.json', '.png')}`);
}
