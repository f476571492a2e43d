/** Large recipes, to be timed stage by stage. `node bench/stages.mjs` prints them alone. */
import { pathToFileURL } from 'node:url';
import { manySegments } from './drawing.mjs';
import { large } from './pipeline.mjs';

/** A panel of 1.2 m by 1 m in hexagons of 7.5 mm edge, each a tile of its own with a wall of 4.4 mm round it. */
const TILES = {
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

export const LARGE = [
  { recipe: TILES },
  { recipe: letters('two-hundred-letters', 50, 'drop') },
  { recipe: letters('two-hundred-letters-widened', 25, 'widen') },
  { recipe: DRAWING, drawn: new Map([['many.svg', manySegments()]]) },
];

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  for (const { name, pieces, stages } of await large(3, LARGE)) {
    console.log(`${name}: ${pieces} pieces`);
    for (const { name: stage, median, least, most } of stages)
      console.log(`  ${stage.padEnd(8)} ${median.toFixed(0)} ms (${least.toFixed(0)} to ${most.toFixed(0)})`);
  }
}
