/** One large recipe of about 10,000 tiles, timed stage by stage, from dist/. `node bench/stages.mjs` prints it alone. */
import { pathToFileURL } from 'node:url';
import { spread } from './measure.mjs';

/** A panel of 1.2 m by 1 m in hexagons of 7.5 mm edge, each a tile of its own with a wall of 4.4 mm round it. */
const RECIPE = {
  name: 'ten-thousand-tiles',
  outline: { shape: 'rectangle', width: 1230, height: 1230, margin: 6 },
  pattern: { generator: 'tiling', tiling: '6^3', edge: 7.5, plug: 'tiles', wall: 4.4 },
  cutter: { diameter: 3, flute: 15 },
  depth: 10,
};

/** Milliseconds by stage, and how many tiles there were. `times` whole runs in one process, after one to warm up. */
export async function stages(times) {
  const dist = (file) => import(`../dist/${file}`);
  const { readRecipe } = await dist('recipe/read.js');
  const { cornerRadius, cutterRadius } = await dist('recipe/recipe.js');
  const { compose } = await dist('generators/compose.js');
  const { enforce } = await dist('cutter/enforce.js');
  const { makePair } = await dist('fit/split.js');
  const { build } = await dist('build.js');
  const { drawingSvg } = await dist('output/svg.js');
  const { drawingDxf } = await dist('output/dxf.js');
  const { marksOf } = await dist('output/marks.js');
  const { frameOf } = await dist('output/ring.js');
  const { prove } = await dist('proof/index.js');

  const assets = { fonts: new Map(), drawings: new Map() };
  const recipe = readRecipe(JSON.stringify(RECIPE), 'bench');
  const job = build(recipe, assets);
  const marks = marksOf(job, false);
  const frame = frameOf(job.sheet, recipe.units);
  const { thin, touch } = recipe.cutter;
  const all = new Map();
  const clock = (name, work) => {
    const start = performance.now();
    const result = work();
    all.set(name, [...(all.get(name) ?? []), performance.now() - start]);
    return result;
  };
  let tiles = 0;
  for (let k = 0; k < times; k++) {
    const artwork = clock('draw', () =>
      compose(recipe.pattern, recipe.outline, assets, {
        r: cornerRadius(recipe.cutter),
        widen: thin === 'widen',
      }),
    );
    tiles = artwork.pieces.length;
    const safe = clock('round', () => enforce(artwork, { r: cornerRadius(recipe.cutter), thin, touch }));
    const pair = clock('split', () => makePair(safe, recipe.fit));
    const files = clock('write', () => ({
      pocketSvg: drawingSvg('pocket', 'pocket', pair.pocket, marks, frame),
      plugSvg: drawingSvg('plug', 'plug', pair.plug, marks, frame),
      pocketDxf: drawingDxf('POCKET', pair.pocket, marks, frame),
      plugDxf: drawingDxf('PLUG', pair.plug, marks, frame),
    }));
    const asked = { radius: cutterRadius(recipe.cutter), clearance: recipe.fit.clearance, carrier: false };
    const proof = clock('prove', () => prove(files, asked));
    if (!proof.holds) throw new Error(`not proven: ${proof.failures.join('; ')}`);
  }
  return { tiles, stages: [...all].map(([name, list]) => ({ name, ...spread(list) })) };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const { tiles, stages: rows } = await stages(3);
  console.log(`${tiles} tiles`);
  for (const { name, median, least, most } of rows)
    console.log(`${name.padEnd(6)} ${median.toFixed(0)} ms (${least.toFixed(0)} to ${most.toFixed(0)})`);
}
