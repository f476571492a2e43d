import { build } from '../../src/build.js';
import { loadAssets } from '../../src/disk/load.js';
import { type Face, faces } from '../../src/generators/lettering/faces.js';
import { limits } from '../../src/limits.js';
import { readRecipe } from '../../src/recipe/read.js';
import type { Recipe } from '../../src/recipe/recipe.js';
import { printed, setByFontkit, wordOf } from './print.js';

/**
 * Faces whose own outlines a reader of today's print takes wrongly in many words (an uncial t for a c, a blackletter T for a
 * J, a script tt for tl). For them a word was picked that is read right in the font's own outlines.
 */
const HARD = ['unifrakturcook', 'uncial-antiqua', 'pacifico'];

export function textFor(face: Face): string {
  const text = HARD.includes(face.name) ? 'Silo 25' : 'Heron 47';
  return face.capitalsOnly ? text.toUpperCase() : text;
}

export function faceNamed(name: string): Face {
  const face = faces.find((f) => f.name === name);
  if (!face) throw new Error(`no bundled face ${name}`);
  return face;
}

/** The recipes' letters before they are scaled, and the most that a recipe's face may measure, mm. */
const HEIGHT = 60;
const WIDTH = 600;
const MOST = 3000;

/** The least cap height, mm, at which a 1/8 in cutter loses nothing of the face's text; null when that is no size of a recipe. */
export function leastHeight(face: Face): number | null {
  const recipe = recipeOf(face, HEIGHT);
  const { rows } = limits(recipe, loadAssets(recipe, 'legible.json'));
  const { scale } = rows.find((row) => row.cutter.name === '1/8in')!;
  return scale === null || scale * WIDTH > MOST ? null : scale * HEIGHT;
}

/** Black on white, PNG: the text as a 1/8 in cutter leaves it at this cap height, mm. Throws Refusal when it leaves nothing. */
export function cutText(face: Face, height: number): Promise<Uint8Array> {
  const recipe = recipeOf(face, height);
  const { safe } = build(recipe, loadAssets(recipe, 'legible.json'));
  return printed(wordOf(safe.region, height));
}

/** The same text in the font's own outlines, as fontkit sets them. */
export function ownText(face: Face): Promise<Uint8Array> {
  return printed(setByFontkit(face.file, textFor(face), face.capHeight));
}

function recipeOf(face: Face, height: number): Recipe {
  const k = height / HEIGHT;
  const text = JSON.stringify({
    name: 'legible',
    units: 'mm',
    outline: { shape: 'rectangle', width: WIDTH * k, height: 160 * k, margin: 6 * k },
    pattern: { generator: 'lettering', text: textFor(face), height, tracking: 0, font: face.name },
    stock: { field: 18, plug: 12 },
    cutter: { diameter: '1/8in', flute: 14, thin: 'drop', touch: 'part' },
    fit: { clearance: 0.08, from: 'plug', plug: 'loose' },
    depth: 8,
    skin: 1.5,
    woods: { field: 'white oak', plug: 'black walnut' },
  });
  return readRecipe(text, 'legible.json', []);
}
