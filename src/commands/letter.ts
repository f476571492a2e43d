import { isAbsolute, join, relative, resolve, sep } from 'node:path';
import { type Beside, refuseOthers, writeBeside } from '../disk/beside.js';
import { loadAssets } from '../disk/load.js';
import { message } from '../disk/report.js';
import { compose } from '../generators/compose.js';
import type { Assets } from '../generators/generator.js';
import { readRecipe } from '../recipe/read.js';
import { cornerRadius, type Recipe } from '../recipe/recipe.js';
import { BadInput } from '../schema/fault.js';
import { lengthText } from '../schema/units.js';
import { roomOf, widest } from './face.js';
import { type LetterOptions, letterRecipe, OPTION_OF } from './letter-recipe.js';
import { make } from './make.js';
import { inOwnWords, UNWRITTEN } from './own-words.js';

/**
 * Makes a text into a piece of just its size: writes the recipe as OUT/NAME.json and makes it. Returns the exit code;
 * when the piece is not made, the recipe is not written either. Throws BadInput in the command's own words.
 */
export async function letter(given: string, asked: LetterOptions): Promise<number> {
  const text = given.replace(/\\n/g, '\n');
  const options = withFontPath(asked);
  const { out } = options;
  const { name, object, assets } = await inOwnWords(OPTION_OF, () => sized(text, options));
  const path = join(out, `${name}.json`);
  const content = `${JSON.stringify(object, null, 2)}\n`;
  const recipe: Beside = {
    path,
    what: 'the recipe',
    content,
    instead: `make it with \`inlaywright make ${path}\``,
  };
  refuseOthers([recipe], options.replace === true);
  const keep = () => writeBeside(out, [recipe], (line) => message(`${name}: ${line}`));
  return make([path], {
    out,
    set: [],
    ...(options.json ? { json: true } : {}),
    given: { text: content, assets, keep },
  });
}

/** The recipe with a face that just holds the text: drawn on the largest face first, to see how much room it takes. */
function sized(text: string, options: LetterOptions): { name: string; object: object; assets: Assets } {
  const { width: _, ...unsized } = options;
  const wide = read(letterRecipe(text, unsized as LetterOptions, widest(options.units)));
  if (options.height === 'fit')
    throw new BadInput([
      { where: 'pattern.height', message: 'must be a length here: the face is made to fit the letters' },
    ]);
  const assets = loadAssets(wide, join(options.out, 'recipe.json'));
  const r = cornerRadius(wide.cutter);
  const cut = { r, widen: wide.cutter.thin === 'widen' };
  const room = roomOf(compose(wide.pattern, wide.outline, assets, cut), wide);
  const object = letterRecipe(text, options, room);
  const recipe = read(object);
  const needs = roomWidth(room.width, recipe);
  const has = Number(recipe.outline.values.width);
  if (has < needs - 1e-6)
    throw new BadInput([
      {
        where: 'outline.width',
        message: `${lengthText(has, recipe.units)} is too narrow for the text and its margin; use ${lengthText(needs, recipe.units)} or more`,
      },
    ]);
  return { name: recipe.name, object, assets };
}

function roomWidth(width: number, { units }: Recipe): number {
  return units === 'in' ? width * 25.4 : width;
}

function read(object: object): Recipe {
  return readRecipe(JSON.stringify(object), UNWRITTEN);
}

/** A font file lies at a path from the recipe's folder in a recipe, and from here on the command line. */
function withFontPath(options: LetterOptions): LetterOptions {
  const { font, out } = options;
  if (typeof font !== 'string' || !/\.(ttf|otf|woff2?)$/i.test(font)) return options;
  const path = relative(resolve(out), resolve(font));
  if (isAbsolute(path))
    throw new BadInput([
      { where: '--font', message: 'lies on another drive than --out; copy it to this one' },
    ]);
  return { ...options, font: path.split(sep).join('/') };
}
