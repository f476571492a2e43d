/**
 * Recipes timed stage by stage in one warm process, from dist/: every one that ships, and large ones. `node
 * bench/pipeline.mjs` prints the first table alone. What `build` does beside drawing, rounding and splitting is finding out
 * what the user must know.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { spread } from './measure.mjs';

const PATTERNS = fileURLToPath(new URL('../patterns/', import.meta.url));
export const STAGES = ['read', 'generate', 'round', 'split', 'inspect', 'write', 'prove'];

/** @returns what runs the recipe of a text once and gives milliseconds by stage; `drawn` stands for the files it names */
async function runner() {
  const dist = (file) => import(`../dist/${file}`);
  const { readRecipe } = await dist('recipe/read.js');
  const { cornerRadius, cutterRadius } = await dist('recipe/recipe.js');
  const { composed } = await dist('composed.js');
  const { enforce } = await dist('cutter/enforce.js');
  const { byWood } = await dist('fit/by-wood.js');
  const { runUnder } = await dist('fit/run-under.js');
  const { widthsAsked } = await dist('fit/widths.js');
  const { makePair } = await dist('fit/split.js');
  const { build } = await dist('build.js');
  const { draw, drawingsOf } = await dist('output/index.js');
  const { prove } = await dist('proof/index.js');
  const { loadAssets, loadRenderer } = await dist('disk/load.js');
  const renderer = await loadRenderer();

  return (path, text, drawn) => {
    const stages = {};
    const clock = (name, work) => {
      const start = performance.now();
      const result = work();
      stages[name] = performance.now() - start;
      return result;
    };
    const [recipe, assets] = clock('read', () => {
      const read = readRecipe(text, path);
      return [read, drawn ? { fonts: new Map(), drawings: drawn } : loadAssets(read, path)];
    });
    const { thin, touch } = recipe.cutter;
    const r = cornerRadius(recipe.cutter);
    const artwork = clock('generate', () => composed(recipe, assets, { r, widen: thin === 'widen' }));
    const safes = clock('round', () => {
      const groups = byWood(artwork, recipe.woods);
      const woods =
        groups.length > 1 ? runUnder(groups, r, artwork.remarks) : groups.map((g) => ({ artwork, ...g }));
      return woods.map((w) => enforce(w.artwork, { r, thin, touch, ...widthsAsked(recipe) }));
    });
    clock('split', () => safes.map((safe) => makePair(safe, recipe.fit)));
    const job = clock('inspect', () => build(recipe, assets));
    stages.inspect = Math.max(0, stages.inspect - stages.generate - stages.round - stages.split);
    const files = clock('write', () => draw(job, renderer));
    const asked = {
      radius: cutterRadius(recipe.cutter),
      clearance: recipe.fit.clearance,
      carrier: job.pair.mirrored,
    };
    const proofs = clock('prove', () => job.inlays.map((_, k) => prove(drawingsOf(files, k), asked)));
    if (!proofs.every((p) => p.holds)) throw new Error(`${path} is not proven`);
    return { stages, pieces: artwork.pieces.length };
  };
}

/** @returns {Promise<{ recipe: string, stages: Record<string, number> }[]>} median milliseconds of `times` runs */
export async function pipeline(times, only = /./) {
  const one = await runner();
  const recipes = readdirSync(PATTERNS)
    .filter((f) => f.endsWith('.json') && only.test(f))
    .map((f) => ({
      recipe: f.slice(0, -5),
      path: join(PATTERNS, f),
      text: readFileSync(join(PATTERNS, f), 'utf8'),
    }));
  // Warm: everything compiled once.
  for (const { path, text } of recipes) one(path, text);
  return recipes.map(({ recipe, path, text }) => {
    const runs = Array.from({ length: times }, () => one(path, text));
    return {
      recipe,
      stages: Object.fromEntries(STAGES.map((s) => [s, spread(runs.map((r) => r.stages[s])).median])),
    };
  });
}

/** Large recipes, each after one run to warm up: least, median and most of every stage. */
export async function large(times, contents) {
  const one = await runner();
  return contents.map(({ recipe, drawn }) => {
    const text = JSON.stringify(recipe);
    const runs = Array.from({ length: times + 1 }, () => one('bench.json', text, drawn)).slice(1);
    return {
      name: recipe.name,
      pieces: runs[0].pieces,
      stages: STAGES.map((name) => ({ name, ...spread(runs.map((r) => r.stages[name])) })),
    };
  });
}

/** Each stage's share of all recipes together, and the recipes of which one stage takes over half. */
export function shares(list) {
  const sum = (stages) => STAGES.reduce((n, s) => n + stages[s], 0);
  const total = list.reduce((n, { stages }) => n + sum(stages), 0);
  const all = Object.fromEntries(
    STAGES.map((s) => [s, list.reduce((n, { stages }) => n + stages[s], 0) / total]),
  );
  const over = list.flatMap(({ recipe, stages }) =>
    STAGES.filter((s) => stages[s] > sum(stages) / 2).map((s) => ({
      recipe,
      stage: s,
      share: stages[s] / sum(stages),
    })),
  );
  return { all, over, totals: spread(list.map(({ stages }) => sum(stages))) };
}

/** As lines of markdown. */
export function pipelineLines(list) {
  const { all, over, totals } = shares(list);
  const ms = (x) => (x < 10 ? x.toFixed(1) : x.toFixed(0));
  return [
    `| stages of every shipped recipe, ms | ${STAGES.join(' | ')} |`,
    `|---|${'---:|'.repeat(STAGES.length)}`,
    ...list.map(({ recipe, stages }) => `| ${recipe} | ${STAGES.map((s) => ms(stages[s])).join(' | ')} |`),
    `| share of all together | ${STAGES.map((s) => `${(100 * all[s]).toFixed(0)} %`).join(' | ')} |`,
    '',
    `Whole, warm: least ${ms(totals.least)}, median ${ms(totals.median)}, most ${ms(totals.most)} ms. Over half in one stage: ${
      over.map((o) => `${o.recipe} (${o.stage} ${(100 * o.share).toFixed(0)} %)`).join(', ') || 'none'
    }.`,
  ];
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  console.log(pipelineLines(await pipeline(3, new RegExp(process.argv[2] ?? '.'))).join('\n'));
}
