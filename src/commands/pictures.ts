import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from '../build.js';
import { fileFault, makeFolder } from '../disk/files.js';
import { loadAssets, loadRenderer } from '../disk/load.js';
import { putFile } from '../disk/put.js';
import { message } from '../disk/report.js';
import { generators } from '../generators/index.js';
import { readRecipe } from '../recipe/read.js';
import { sampleText } from '../recipe/sample.js';
import { generatorNamed } from './list.js';

/** The drawings of the samples lie beside the recipes that ship. */
const SAMPLES = fileURLToPath(new URL('../../patterns/sample.json', import.meta.url));

/** Pixels: large enough to judge walls and corners by. */
const WIDTH = 480;

/** Writes NAME.png for each generator, or for the one named, at its defaults. Prints each path. Throws BadInput when it cannot write there. */
export async function pictures(name: string | undefined, folder: string): Promise<void> {
  const shown = name === undefined ? generators : [generatorNamed(name)];
  const [renderer, { pictureSvg }] = await Promise.all([loadRenderer(), import('../output/index.js')]);
  const write = (work: () => void): void => {
    try {
      work();
    } catch (e) {
      throw fileFault(e, `cannot write to ${folder}`, 'give a folder that can be written to');
    }
  };
  write(() => makeFolder(folder));
  for (const generator of shown) {
    const path = join(folder, `${generator.name}.png`);
    message(`${generator.name}: drawing`);
    const recipe = readRecipe(sampleText(generator), generator.name);
    const png = renderer.png(pictureSvg(build(recipe, loadAssets(recipe, SAMPLES))), WIDTH);
    write(() => putFile(path, png));
    process.stdout.write(`${path}\n`);
  }
}
