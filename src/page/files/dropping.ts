import { notice } from '../state/bench.js';
import { at, book, file, lay, origin, set, text, unsaved } from '../state/card.js';
import { begun } from './opening.js';
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
    if (RECIPE.test(first.name)) await layRecipe(first);
    else if (DRAWING.test(first.name)) await takeFile(first, 'drawing', 'file');
    else if (FONT.test(first.name)) await takeFile(first, 'lettering', 'font');
    else
      notice.value = `${first.name} is none of what a card takes: an SVG or DXF drawing, a TTF, OTF or WOFF font, or a recipe.`;
  } catch (e) {
    notice.value = wordsOf(e);
  }
}

/** A recipe takes the card's place, unless changes would be lost with it. */
async function layRecipe(given: File): Promise<void> {
  if (unsaved.value)
    notice.value = `The card has changes that are not saved: save them or undo them, then drop ${given.name} again.`;
  else lay({ text: await given.text(), path: null, version: null, shipped: null });
}

/** Keeps the file beside the card's own, and names it where a layer of that generator has the key. */
async function takeFile(given: File, generator: string, key: string): Promise<void> {
  if (text.value === '') {
    const sample = book.value?.generators.find((g) => g.name === generator)?.sample;
    if (!sample) return;
    // A recipe that ships lends the sample its own drawing until there is the dropped one.
    lay({ text: sample, path: null, version: null, shipped: begun?.shipped[0] ?? null });
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
