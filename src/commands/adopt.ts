import { basename, extname, join } from 'node:path';
import { type Beside, refuseOthers, writeBeside } from '../disk/beside.js';
import { drawingText, loadDrawing } from '../disk/load.js';
import { message } from '../disk/report.js';
import { compose } from '../generators/compose.js';
import { openDrawing } from '../generators/drawing/open.js';
import { asDrawn } from '../generators/drawing/outlines/parameters.js';
import { ownSize, scaleRemarks } from '../generators/drawing/scale.js';
import type { Assets } from '../generators/generator.js';
import type { Layer } from '../generators/layer.js';
import type { Artwork, Remark } from '../geometry/artwork.js';
import { parts } from '../geometry/region.js';
import type { Job } from '../output/job.js';
import { readRecipe } from '../recipe/read.js';
import { cornerRadius, type Recipe } from '../recipe/recipe.js';
import { BadInput, Refusal } from '../schema/fault.js';
import { lengthText } from '../schema/units.js';
import { type AdoptOptions, adoptRecipe, nameOf, OPTION_OF } from './adopt-recipe.js';
import { count } from './count.js';
import { boxOf, type Room, roomOf, WIDE, widest } from './face.js';
import { make } from './make.js';
import { inOwnWords, UNWRITTEN } from './own-words.js';

/** Remarks on a drawing that are told one by one; the rest are on the sheet. */
const TOLD = 20;

/**
 * Makes a drawing of the user's own into a piece of just its size: writes the recipe as OUT/NAME.json and a copy of
 * the drawing beside it, and makes it. Returns the exit code; when the piece is not made, nothing is written. Throws
 * BadInput in the command's own words.
 */
export async function adopt(file: string, options: AdoptOptions): Promise<number> {
  const { out } = options;
  const bytes = loadDrawing(file);
  const ending = endingOf(file);
  const text = drawingText(file, bytes);
  const told = new Set<string>();
  const tell = (name: string, remarks: readonly Remark[]): void => {
    for (const r of remarks.filter((r) => !told.has(r.text)).slice(0, TOLD))
      message(`${name}: ${r.severity === 'warn' ? 'take care: ' : ''}${r.text}`);
    for (const r of remarks) told.add(r.text);
  };
  const { recipe, room } = await inOwnWords(OPTION_OF, () => sized(file, text, options, tell));
  const { name } = recipe;
  const copy = `${name}${ending}`;
  const path = join(out, `${name}.json`);
  const content = `${JSON.stringify(adoptRecipe(name, copy, options, room), null, 2)}\n`;
  const files: Beside[] = [
    { path: join(out, copy), what: "the drawing's copy", content: bytes },
    { path, what: 'the recipe', content, instead: `make it with \`inlaywright make ${path}\`` },
  ];
  refuseOthers(files, options.replace === true);
  const assets: Assets = { fonts: new Map(), drawings: new Map([[copy, text]]) };
  const keep = () => writeBeside(out, files, (line) => message(`${name}: ${line}`));
  return make([path], {
    out,
    set: [],
    ...(options.json ? { json: true } : {}),
    given: { text: content, assets, told, keep, built: tellChanges },
  });
}

/** The drawing's ending in small letters. Throws BadInput for one that is not read. */
function endingOf(file: string): string {
  const ending = extname(file).toLowerCase();
  if (ending === '.svg' || ending === '.dxf') return ending;
  throw new BadInput([
    { where: '', message: `${file} does not end in .svg or .dxf; give an SVG or DXF file` },
  ]);
}

/**
 * The recipe, and the face that just holds the drawing: drawn on the largest face first, to see how much room it
 * takes. Tells what was read and what was remarked.
 */
function sized(
  file: string,
  text: string,
  options: AdoptOptions,
  tell: (name: string, remarks: readonly Remark[]) => void,
): { recipe: Recipe; room: Room } {
  const name = options.name ?? nameOf(basename(file, extname(file)));
  const object = adoptRecipe(name, 'drawing.svg', options, widest(options.units));
  const recipe = onFile(readRecipe(JSON.stringify(object), UNWRITTEN), file);
  const assets: Assets = { fonts: new Map(), drawings: new Map([[file, text]]) };
  const r = cornerRadius(recipe.cutter);
  let artwork: Artwork;
  try {
    artwork = compose(recipe.pattern, recipe.outline, assets, { r, widen: recipe.cutter.thin === 'widen' });
  } catch (e) {
    if (!(e instanceof Refusal) || e.code !== 'too-wide') throw e;
    if (options.width === undefined) tell(name, remarksOnScale(recipe, assets, file));
    throw new Refusal(
      e.code,
      e.message.replace('fit the outline here', `fit the largest face, ${WIDE} mm, with its margin`),
      e.at,
    );
  }
  message(`${name}: read ${file}: ${summary(artwork, recipe)}`);
  tell(name, artwork.remarks ?? []);
  return { recipe, room: roomOf(artwork, recipe) };
}

/** The recipe with its drawing read from where it lies, so that messages name that file. */
function onFile(recipe: Recipe, file: string): Recipe {
  const layer = recipe.pattern as Layer;
  return { ...recipe, pattern: { ...layer, values: { ...layer.values, file } } };
}

function remarksOnScale(recipe: Recipe, assets: Assets, file: string): Remark[] {
  const { values } = recipe.pattern as Layer;
  const source = openDrawing(assets, file, 'pattern.file', asDrawn(values));
  return scaleRemarks(ownSize(source.unit, file, source.figures(1)));
}

/** "120 mm wide and 80 mm high, 14 parts, 3 holes" */
function summary({ pieces }: Artwork, { units }: Recipe): string {
  const { minX, maxX, minY, maxY } = boxOf(pieces);
  const outers = pieces.reduce((n, p) => n + parts(p.region).length, 0);
  const holes = pieces.reduce((n, p) => n + p.region.contours.length, 0) - outers;
  return [
    `${lengthText(maxX - minX, units)} wide and ${lengthText(maxY - minY, units)} high`,
    count(outers, 'part'),
    count(holes, 'hole'),
  ].join(', ');
}

/** How many places the cutter pass changed beyond rounding corners, by kind. */
function tellChanges({ inlays, recipe: { name } }: Job): void {
  const kinds = new Map<string, number>();
  const changes = inlays.flatMap((i) => i.safe.changes);
  for (const { kind } of changes) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  const list = [...kinds].map(([kind, n]) => `${n} ${kind}`).join(', ');
  const more = `changes ${count(changes.length, 'place')} beyond rounding corners: ${list}`;
  message(`${name}: the cutter ${changes.length === 0 ? 'only rounds corners' : more}`);
}
