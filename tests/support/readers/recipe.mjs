import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

/** Reads a recipe as a command does, with the files that it names, and writes a folder of its name. */
export async function start(from, folder, outside) {
  const { loadAssets, loadRecipeText } = await from('disk/load.js');
  const { readRecipe } = await from('recipe/read.js');
  const { writeFolder } = await from('disk/folder.js');
  const { wantedBy } = await from('generators/wanted.js');
  const path = join(folder, 'recipe.json');
  const out = join(folder, 'out');
  return (bytes) => {
    writeFileSync(path, bytes);
    const text = loadRecipeText(path);
    const recipe = readRecipe(text, path);
    const fault = unsound(recipe, text);
    if (fault) return fault;
    try {
      loadAssets(recipe, path);
    } finally {
      forgive(wantedBy(recipe.pattern));
    }
    mkdirSync(out, { recursive: true });
    const target = writeFolder(out, recipe.name, new Map([['job.json', bytes]]));
    const there = readdirSync(out);
    if (there.length !== 1 || there[0] !== recipe.name || target !== join(out, recipe.name))
      return `a folder ${JSON.stringify(there)} for ${recipe.name}`;
    if (!readFileSync(join(target, 'job.json')).equals(bytes)) return 'other bytes in its folder';
    rmSync(out, { recursive: true });
    return '';
  };

  /** A user's own reference may climb with ".." to where fonts and drawings are kept (the page refuses that). Nothing else may be read. */
  function forgive({ fonts, drawings }) {
    const climbing = [...fonts, ...drawings].map((w) => w.name).filter((n) => n.split('/').includes('..'));
    const known = climbing.map((n) => `reads ${resolve(folder, n)}`);
    outside.splice(0, outside.length, ...outside.filter((line) => !known.includes(line)));
  }
}

/** What is wrong with a recipe that was read; another reader of JSON has to agree on what it says. */
function unsound(recipe, text) {
  let given;
  try {
    given = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (e) {
    return `a text that is no JSON: ${e.message}`;
  }
  const layers = [recipe.pattern].flat();
  for (const [key, said, got] of [
    ['name', given.name, recipe.name],
    ['units', given.units ?? 'mm', recipe.units],
    ...[given.pattern].flat().map((layer, k) => [`layer ${k}`, layer.generator, layers[k]?.generator]),
  ])
    if (said !== got) return `${key} ${JSON.stringify(got)} for ${JSON.stringify(said)}`;
  if (!/^[A-Za-z0-9][A-Za-z0-9-]{0,63}$/.test(recipe.name)) return `a name ${JSON.stringify(recipe.name)}`;
  return wild(recipe, 'recipe');
}

/** Where a tree holds a number that is none or none that wood has; empty when nowhere. */
function wild(value, where) {
  if (typeof value === 'number') return Number.isFinite(value) && Math.abs(value) <= 1e9 ? '' : `${where} ${value}`;
  if (value === undefined) return `${where} undefined`;
  if (value === null || typeof value !== 'object') return '';
  for (const [k, v] of Object.entries(value)) {
    const found = wild(v, `${where}.${k}`);
    if (found) return found;
  }
  return '';
}
