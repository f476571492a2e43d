import { describe, expect, it } from 'vitest';
import { enforce } from '../../src/cutter/enforce.js';
import type { Pair } from '../../src/fit/pair.js';
import { makePair } from '../../src/fit/split.js';
import { type Edge, edgeLength, parameterEnd, pointAt } from '../../src/geometry/edge.js';
import { bounds, flatten, reversedContour } from '../../src/geometry/region.js';
import { contacts } from '../../src/inspect/sums/reach/contact.js';
import { engagedAlong } from '../../src/inspect/sums/reach/engagement.js';
import { laid, type Part, sweepOf } from '../../src/inspect/sums/reach/reach.js';
import { readRecipe } from '../../src/recipe/read.js';
import { cornerRadius, cutterRadius } from '../../src/recipe/recipe.js';
import { exampleText } from '../recipe/example.js';
import { divided, Milling, pointAlong } from '../support/milling.js';
import { randomPolygon, seeded } from '../support/random.js';
import type { Rings } from '../support/reference.js';

// Judge: a milling simulator by brute force on a raster (tests/support/milling.ts), which shares nothing with the product
// but the flattened outlines it is given.

const recipe = readRecipe(
  exampleText({
    cutter: { diameter: 3, flute: 22, ease: 0.3 },
    roughing: { diameter: 6 },
    outline: { shape: 'rectangle', width: 80, height: 80 },
  }),
  'x.json',
);
const { allowance } = recipe.passes;
const ROUGH = 3;
/** How far apart the places are at which stretches are compared, mm. */
const STEP = 0.1;

/**
 * How far along the wall places may differ, mm: a cell's nearest wall is known to a cell, and where what stands thins out
 * along a roughing arc that touches the line of the allowance, its thickness grows with the square of the way: over two
 * cells of 0.1 mm, at a radius of 3 mm, sqrt(2 x 3 x 0.5) - sqrt(2 x 3 x 0.3) = 0.4 mm.
 */
const PLACE = 0.5;

function randomPair(seed: number): Pair {
  const random = seeded(seed);
  const pieces = Array.from({ length: 2 + Math.floor(random() * 4) }, (_, k) => ({
    name: `piece ${k + 1}`,
    region: {
      contours: [randomPolygon(random, (random() - 0.5) * 30, (random() - 0.5) * 30, 6 + random() * 9)],
    },
  }));
  const safe = enforce({ pieces }, { r: cornerRadius(recipe.cutter), thin: 'drop', touch: 'part' });
  return makePair(safe, recipe.fit);
}

function wallsOf(pair: Pair, part: Part): Rings {
  const contours = laid(pair, part).contours;
  return divided(
    (part === 'pocket' ? contours : contours.map(reversedContour)).map((c) => flatten(c, 0.005)),
    1,
  );
}

/** Places on walls where the finishing cutter took wood that stood just beyond `over`: one a bin of wall, and their length. */
function marks(milling: Milling, walls: Rings, over: number, cell: number, slack: number) {
  milling.rough({ radius: ROUGH, allowance }, slack);
  const found = new Map<number, number>();
  // Bins of two cells, since the cells about a bend leave out bins of one.
  const bin = 2 * cell;
  milling.finish(cutterRadius(recipe.cutter), STEP, (distance, along) => {
    if (distance > over && distance <= over + 2 * cell) found.set(Math.floor(along / bin), along);
  });
  return {
    places: [...found.values()].map((along) => pointAlong(walls, along)),
    length: found.size * bin,
  };
}

function pointsOn(edges: readonly Edge[]): [number, number][] {
  return edges.flatMap((e) => {
    const n = Math.max(1, Math.ceil(edgeLength(e) / STEP));
    return Array.from({ length: n + 1 }, (_, k) => pointAt(e, (parameterEnd(e) * k) / n));
  });
}

function farthest(from: readonly (readonly [number, number])[], to: readonly (readonly [number, number])[]) {
  let worst = 0;
  let at: readonly [number, number] = [0, 0];
  for (const p of from) {
    let best = Number.POSITIVE_INFINITY;
    for (const q of to) {
      const d2 = (p[0] - q[0]) * (p[0] - q[0]) + (p[1] - q[1]) * (p[1] - q[1]);
      if (d2 < best) best = d2;
      // Near enough: only the far ones matter.
      if (best < 0.01) break;
    }
    if (best > worst * worst) {
      worst = Math.sqrt(best);
      at = p;
    }
  }
  return { worst, at };
}

/** Compares one pattern's parts; gives lengths of wall where more than two cells stand besides the allowance. */
function compare(seed: number, cell: number) {
  const pair = randomPair(seed);
  const told = contacts(recipe, pair);
  // How far off the walls wood has to stand for the raster to be sure that it is not the allowance.
  const sure = allowance + 2 * cell;
  const sums = { ours: 0, less: 0, more: 0, places: 0 };
  for (const part of ['pocket', 'plug'] as const) {
    const walls = wallsOf(pair, part);
    const { minX, minY, maxX, maxY } = bounds(laid(pair, part).contours);
    const m = part === 'pocket' ? 1 : 2 * (ROUGH + allowance) + 1;
    const milling = new Milling(
      { walls, window: [minX - m, minY - m, maxX + m, maxY + m], cell },
      ROUGH + allowance + cell,
    );
    // The raster's legal middles are some of the true ones, and each true one is within 0.71 cells of one that is legal
    // with as much given away: with nothing given away too much stands, with that much too little.
    const more = marks(milling, walls, sure, cell, 0);
    const less = marks(milling, walls, sure, cell, cell * Math.SQRT1_2);
    const sweep = sweepOf(pair, part, ROUGH, allowance);
    const over = (width: number) => engagedAlong(sweep, width, 2 * cutterRadius(recipe.cutter));
    const mine = told.filter((c) => c.part === part);
    // Wherever the simulator surely meets wood, a contact is told.
    const unsaid = farthest(less.places, pointsOn(mine.flatMap((c) => c.edges)));
    expect(unsaid.worst, `${part}: unsaid at ${unsaid.at}`).toBeLessThan(PLACE);
    // Wherever a contact of such a width is told, the simulator meets wood.
    const wrong = farthest(pointsOn(over(sure + cell).flatMap((e) => e.edges)), more.places);
    expect(wrong.worst, `${part}: no wood at ${wrong.at}`).toBeLessThan(PLACE);
    const same = over(sure);
    const ours = same.reduce((sum, e) => sum + e.length, 0);
    // A bin at each end is known by half; short stretches in bends miss some.
    const ends = 4 * cell * (same.length + 1);
    expect(ours).toBeGreaterThan(less.length - ends);
    expect(ours).toBeLessThan(more.length + ends);
    sums.ours += ours;
    sums.less += less.length;
    sums.more += more.length;
    sums.places += same.length;
  }
  return sums;
}

describe('full-depth contact against a milling simulator', () => {
  const total = { ours: 0, less: 0, more: 0, places: 0 };

  it.each(Array.from({ length: 50 }, (_, k) => k + 1))(
    'pattern %i of 50 at random, cells of 0.1 mm',
    (seed) => {
      const sums = compare(seed * 7919, 0.1);
      for (const key of ['ours', 'less', 'more', 'places'] as const) total[key] += sums[key];
    },
  );

  it('had plenty to judge there, and lies between too little and too much', () => {
    expect(total.places).toBeGreaterThan(300);
    expect(total.ours).toBeGreaterThan(1500);
    expect(total.ours).toBeGreaterThan(total.less);
    expect(total.ours).toBeLessThan(total.more);
    // Raster as it is; smaller cells come nearer, below.
    expect(total.more / total.ours).toBeLessThan(1.1);
  });

  it('comes nearer with smaller cells: lengths of two patterns to 3 percent with 0.04 mm', () => {
    for (const seed of [3, 11]) {
      const { ours, more } = compare(seed * 7919, 0.04);
      expect(ours).toBeGreaterThan(20);
      // The raster as it is: its missing middles make too much stand, by less the smaller the cells are.
      expect(Math.abs(more / ours - 1)).toBeLessThan(0.03);
    }
  });
});
