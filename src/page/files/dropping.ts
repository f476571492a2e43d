import { notice } from '../state/bench.js';
import { at, book, file, lay, origin, set, text } from '../state/card.js';
import { keepBeside, save } from './saving.js';
import { wordsOf } from './words.js';

const DRAWING = /\.(svg|dxf)$/i;
const FONT = /\.(ttf|otf|woff)$/i;
const RECIPE = /\.json$/i;

/** What the page takes: a drawing becomes the figure, a font sets the letters, a recipe becomes the card. */
export async function dropped(files: readonly File[]): Promise<void> {
  const [first] = files;
  if (!first) return;
  try {
    if (RECIPE.test(first.name)) lay({ text: await first.text(), path: null, version: null, shipped: null });
    else if (DRAWING.test(first.name)) await takeFile(first, 'drawing', 'file');
    else if (FONT.test(first.name)) await takeFile(first, 'lettering', 'font');
    else
      notice.value = `${first.name} is none of what a card takes: an SVG or DXF drawing, a TTF, OTF or WOFF font, or a recipe.`;
  } catch (e) {
    notice.value = wordsOf(e);
  }
}

/** Keeps the file beside the card's own, and names it where a layer of that generator has the key. */
async function takeFile(given: File, generator: string, key: string): Promise<void> {
  if (text.value === '') {
    const sample = book.value?.generators.find((g) => g.name === generator)?.sample;
    if (!sample) return;
    lay({ text: sample, path: null, version: null, shipped: null });
  }
  // The file lies beside the recipe, so the recipe has to lie somewhere first.
  if (file.value.path === null && !(await save())) return;
  const path = await keepBeside(file.value.path!, given.name, given);
  const pattern = at(['pattern']);
  const layers = Array.isArray(pattern) ? pattern : [pattern];
  const k = layers.findIndex((l) => (l as { generator?: string } | undefined)?.generator === generator);
  const layer = Array.isArray(pattern) ? ['pattern', k] : ['pattern'];
  if (k >= 0) set([...layer, key], path);
  else set(['pattern'], { generator, [key]: path, ...(generator === 'drawing' ? { fit: true } : {}) });
  notice.value = `${given.name} is kept as ${path}, beside ${origin.value.file}.`;
}
