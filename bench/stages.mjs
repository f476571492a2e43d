/** Large recipes, timed stage by stage, from dist/. `node bench/stages.mjs` prints them alone. */
import { pathToFileURL } from 'node:url';
import { manySegments } from './drawing.mjs';
import { spread } from './measure.mjs';

/** A panel of 1.2 m by 1 m in hexagons of 7.5 mm edge, each a tile of its own with a wall of 4.4 mm round it. */
const RECIPE = {
  name: 'ten-thousand-tiles',
  outline: { shape: 'rectangle', width: 1230, height: 1230, margin: 6 },
  pattern: { generator: 'tiling', tiling: '6^3', edge: 7.5, plug: 'tiles', wall: 4.4 },
  cutter: { diameter: 3, flute: 15 },
  depth: 10,
};

/** 200 letters with a 1/8 in cutter, large enough that nearly every stroke stays whole; widened ones at half the height. */
const letters = (name, height, thin) => ({
  name,
  outline: { shape: 'rectangle', width: 2600, height: 700, margin: 10 },
  pattern: { generator: 'lettering', text: TEXT, font: 'varela-round', height },
  cutter: { diameter: '1/8in', flute: 15, thin },
  depth: 10,
});

/** 200 letters and figures, spaces not counted; invented. */
const TEXT = [
  'The heron stands in the reeds and waits for water to clear',
  'behind Mill Lane 27 where the orchard keeps its late apples',
  'under 108 crooked boughs and a lantern that nobody has lit',
  'since one spring flood carried the little bridge downriver',
  'Mend it',
].join('\n');

/** 2,000 shapes of 25 segments, as `adopt` makes them with a 1/8 in cutter. */
const DRAWING = {
  name: 'fifty-thousand-segments',
  outline: { shape: 'rectangle', width: 1020, height: 1020, margin: 10 },
  pattern: { generator: 'drawing', file: 'many.svg' },
  cutter: { diameter: '1/8in', flute: 15, thin: 'widen' },
  depth: 8,
};

/** Drawings that are not in files. */
const DRAWN = new Map([['many.svg', manySegments]]);

export const LARGE = [
  RECIPE,
  letters('two-hundred-letters', 50, 'drop'),
  letters('two-hundred-letters-widened', 25, 'widen'),
  DRAWING,
];

/** Milliseconds by stage, and how many pieces there were. `times` whole runs in one process, after one to warm up. */
export async function stages(times, content = RECIPE) {
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

  const { loadAssets } = await dist('disk/load.js');
  const text = JSON.stringify(content);
  const recipe = readRecipe(text, 'bench');
  const drawn = DRAWN.get(content.pattern.file)?.();
  const assetsOf = (read) =>
    drawn === undefined
      ? loadAssets(read, 'bench.json')
      : { fonts: new Map(), drawings: new Map([[content.pattern.file, drawn]]) };
  const assets = assetsOf(recipe);
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
  let pieces = 0;
  for (let k = 0; k < times; k++) {
    clock('read', () => assetsOf(readRecipe(text, 'bench')));
    const artwork = clock('draw', () =>
      compose(recipe.pattern, recipe.outline, assets, {
        r: cornerRadius(recipe.cutter),
        widen: thin === 'widen',
      }),
    );
    pieces = artwork.pieces.length;
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
  return { pieces, stages: [...all].map(([name, list]) => ({ name, ...spread(list) })) };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  for (const content of LARGE) {
    const { pieces, stages: rows } = await stages(3, content);
    console.log(`${content.name}: ${pieces} pieces`);
    for (const { name, median, least, most } of rows)
      console.log(`  ${name.padEnd(6)} ${median.toFixed(0)} ms (${least.toFixed(0)} to ${most.toFixed(0)})`);
  }
}
