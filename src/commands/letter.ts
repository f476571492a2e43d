import { existsSync, readFileSync, rmdirSync, rmSync, writeFileSync } from 'node:fs';
import { isAbsolute, join, relative, resolve, sep } from 'node:path';
import { enforce } from '../cutter/enforce.js';
import { compose } from '../generators/compose.js';
import { bounds } from '../geometry/region.js';
import { readRecipe } from '../recipe/read.js';
import { cornerRadius, type Recipe } from '../recipe/recipe.js';
import { BadInput, type Fault, Refusal } from '../schema/fault.js';
import { lengthText } from '../schema/units.js';
import { fileFault, makeFolder } from './files.js';
import { type LetterOptions, letterRecipe, OPTION_OF, roomFor, WIDE } from './letter-recipe.js';
import { loadAssets } from './load.js';
import { make } from './make.js';
import { message } from './report.js';

/**
 * Makes a text into a piece of just its size: writes the recipe as OUT/NAME.json and makes it. Returns the exit code;
 * when the piece is not made, the recipe is not written either. Throws BadInput in the command's own words.
 */
export async function letter(given: string, asked: LetterOptions): Promise<number> {
  const text = given.replace(/\\n/g, '\n');
  const options = withFontPath(asked);
  const recipe = await inOwnWords(async () => sized(text, options));
  const path = join(options.out, `${recipe.name}.json`);
  const before = earlier(path);
  const content = `${JSON.stringify(recipe.object, null, 2)}\n`;
  if (before !== null && before !== content && !options.replace)
    throw new BadInput([
      {
        where: '',
        message: `${path} is there and differs from what would be written: make it with \`inlaywright make ${path}\`, give another name with --name, or add --replace`,
      },
    ]);
  const fresh = !existsSync(options.out);
  write(path, options.out, content);
  message(
    `${recipe.name}: ${before !== null && before !== content ? 'replacing' : 'writing'} the recipe ${path}`,
  );
  let code = 1;
  try {
    code = await make([path], { out: options.out, set: [], ...(options.json ? { json: true } : {}) });
  } finally {
    if (code !== 0 && before !== null) writeFileSync(path, before);
    else if (code !== 0) {
      rmSync(path, { force: true });
      if (fresh) rmdirSync(options.out);
    }
  }
  return code;
}

/** The recipe with a face that just holds the text: drawn on the largest face first, to see how much room it takes. */
async function sized(text: string, options: LetterOptions): Promise<{ name: string; object: object }> {
  const { width, ...unsized } = options;
  const side = options.units === 'in' ? WIDE / 25.4 : WIDE;
  const wide = read(letterRecipe(text, unsized as LetterOptions, { width: side, height: side }));
  if (options.height === 'fit')
    throw new BadInput([
      { where: 'pattern.height', message: 'must be a length here: the face is made to fit the letters' },
    ]);
  const room = await roomOf(wide, options);
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
  return { name: recipe.name, object };
}

function roomWidth(width: number, { units }: Recipe): number {
  return units === 'in' ? width * 25.4 : width;
}

async function roomOf(recipe: Recipe, { out }: LetterOptions): Promise<{ width: number; height: number }> {
  const { thin, touch } = recipe.cutter;
  const r = cornerRadius(recipe.cutter);
  const assets = await loadAssets(recipe, join(out, 'recipe.json'));
  const artwork = compose(recipe.pattern, recipe.outline, assets, { r, widen: thin === 'widen' });
  // Widened strokes reach beyond the drawn ones.
  const safe = enforce(artwork, { r, thin, touch });
  const all = [...artwork.pieces.map((p) => p.region), safe.region].flatMap((g) => g.contours);
  const box = bounds(all);
  return roomFor(
    Math.max(-box.minX, box.maxX),
    Math.max(-box.minY, box.maxY),
    Number(recipe.outline.values.margin),
    recipe.units,
  );
}

function read(object: object): Recipe {
  return readRecipe(JSON.stringify(object), 'letter');
}

/** Runs `work`; what it says of the recipe's paths is said of the options instead. */
async function inOwnWords<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (e) {
    if (e instanceof BadInput) throw new BadInput(e.faults.map(ownFault));
    if (e instanceof Refusal) throw new Refusal(e.code, ownText(e.message), e.at);
    throw e;
  }
}

function ownFault({ where, message: text }: Fault): Fault {
  return { where: OPTION_OF.get(where) ?? where, message: ownText(text) };
}

function ownText(text: string): string {
  let own = text;
  for (const [path, option] of OPTION_OF) if (path.includes('.')) own = own.replaceAll(path, option);
  return own;
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

/** The recipe that is there already, or null. */
function earlier(path: string): string | null {
  try {
    return existsSync(path) ? readFileSync(path, 'utf8') : null;
  } catch (e) {
    throw fileFault(e, `cannot read ${path}`, 'choose another folder with --out');
  }
}

function write(path: string, out: string, content: string): void {
  try {
    makeFolder(out);
    writeFileSync(path, content);
  } catch (e) {
    throw fileFault(e, `cannot write ${path}`, 'choose another folder with --out');
  }
}
