import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { build } from '../../src/build.js';
import { enforce } from '../../src/cutter/enforce.js';
import type { Pair } from '../../src/fit/pair.js';
import { makePair } from '../../src/fit/split.js';
import { area, circle, contains, perimeter, polygon, type Region } from '../../src/geometry/region.js';
import { mirrorX } from '../../src/geometry/transform.js';
import { laid, type Part, reachOf, sweepOf } from '../../src/inspect/sums/reach/reach.js';
import { cuttersAtHand, reachingAll, reachTable } from '../../src/inspect/sums/reach/reach-table.js';
import { unreached } from '../../src/inspect/unreached.js';
import type { Outline } from '../../src/outline/outline.js';
import { readRecipe } from '../../src/recipe/read.js';
import { cornerRadius } from '../../src/recipe/recipe.js';
import { exampleText } from '../recipe/example.js';
import { assets, outlineWith } from '../support/artwork.js';
import { randomPolygon, seeded } from '../support/random.js';
import {
  combined,
  differenceArea,
  type EngineName,
  offsetBy,
  polygonArea,
  type Rings,
} from '../support/reference.js';
import { ringsOf } from '../support/rings.js';

const recipe = readRecipe(exampleText({ 'cutter.diameter': 3, 'cutter.cuts': undefined }), 'x.json');
const outline = outlineWith('rectangle', { width: 80, height: 80 });
/** Walls with sharp corners, as no pattern has: then nothing may be taken for granted about how tightly they turn. */
const sharp = { cutter: { ...recipe.cutter, cuts: 0.02, ease: 0 } };

function box(x0: number, y0: number, x1: number, y1: number) {
  return polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);
}

function pairOf(pocket: Region, plug: Region = pocket, mirrored = false): Pair {
  return { pocket, plug, mirrored };
}

const pocketReach = (pocket: Region, radius: number, allowance: number) =>
  reachOf(sharp, outline, pairOf(pocket), 'pocket', radius, allowance);
const plugReach = (plug: Region, radius: number, allowance: number) =>
  reachOf(sharp, outline, pairOf(plug), 'plug', radius, allowance);

describe.each([1.5, 3.175])('reach of a cutter of radius %d, closed forms', (R) => {
  it('leaves R^2 (1 - pi / 4) in a square corner, whatever the allowance', () => {
    for (const a of [0, 0.3]) {
      const r = pocketReach({ contours: [box(-10, -10, 10, 10)] }, R, a);
      const corner = R * R * (1 - Math.PI / 4);
      expect(r.areas.left).toBeCloseTo(4 * corner, 8);
      expect(area(r.left)).toBeCloseTo(4 * corner, 8);
      expect(r.left.contours).toHaveLength(4);
      const inner = (20 - 2 * a) ** 2;
      expect(r.areas.reached).toBeCloseTo(inner - 4 * corner, 8);
      expect(r.areas.finishing).toBeCloseTo(400 - inner + 4 * corner, 8);
      expect(r.share).toBeCloseTo(1 - (4 * corner) / inner, 10);
    }
  });
  it('leaves R^2 (cot 30 - pi / 3) in a wedge of 60 degrees', () => {
    const side = 40;
    const height = (side * Math.sqrt(3)) / 2;
    const triangle = polygon([
      [-side / 2, 0],
      [side / 2, 0],
      [0, height],
    ]);
    const r = pocketReach({ contours: [triangle] }, R, 0.2);
    expect(area(r.left)).toBeCloseTo(3 * R * R * (Math.sqrt(3) - Math.PI / 3), 8);
    expect(r.areas.left).toBeCloseTo(area(r.left), 8);
  });
  it('gets nowhere in a slot that is narrower, and everywhere in a round hole that is wide enough', () => {
    const width = 2 * R + 2 * 0.25 - 0.01;
    const slot = pocketReach({ contours: [box(-20, 0, 20, width)] }, R, 0.25);
    expect(slot.share).toBe(0);
    expect(slot.reached.contours).toEqual([]);
    expect(area(slot.left)).toBeCloseTo(39.5 * (width - 0.5), 8);
    expect(slot.areas.left).toBeCloseTo(area(slot.left), 8);
    const hole = pocketReach({ contours: [circle(0, 0, R + 0.3)] }, R, 0.25);
    expect(hole.share).toBeCloseTo(1, 9);
    expect(hole.areas.left).toBeCloseTo(0, 6);
  });
  it('leaves of the waste round a plug only what lies in its inside corners', () => {
    const notched = polygon([
      [-20, -20],
      [20, -20],
      [20, 0],
      [0, 0],
      [0, 20],
      [-20, 20],
    ]);
    const r = plugReach({ contours: [notched] }, R, 0.3);
    expect(area(r.left)).toBeCloseTo(R * R * (1 - Math.PI / 4), 8);
    expect(r.areas.left).toBeCloseTo(area(r.left), 8);
    expect(r.areas.waste).toBeCloseTo(6400 - 1200, 8);
    expect(area(r.waste)).toBeCloseTo(r.areas.waste, 8);
    expect(area(r.reached)).toBeCloseTo(r.areas.reached, 6);
  });
  it('may leave the face sideways, and counts what is on the face only', () => {
    // A strip of 2 mm beside the edge is no slot, since beyond the edge there is nothing to meet.
    expect(plugReach({ contours: [box(-38, -38, 38, 38)] }, R, 0.3).areas.left).toBeCloseTo(0, 8);
    // A gap of 2 mm between plugs that run over the edge is one; of the face it takes 1.4 x 80 besides the allowance.
    const gap = plugReach({ contours: [box(-20, -60, -1, 60), box(1, -60, 20, 60)] }, R, 0.3);
    expect(gap.areas.left).toBeCloseTo(1.4 * 80, 8);
    expect(area(gap.left)).toBeCloseTo(1.4 * 80, 8);
    expect(gap.areas.waste).toBeCloseTo(6400 - 38 * 80, 8);
  });
});

it('turns a mirrored plug back', () => {
  const plug = {
    contours: [
      polygon([
        [5, -20],
        [30, -20],
        [30, 20],
        [5, 20],
        [18, 0],
      ]),
    ],
  };
  const back = reachOf(sharp, outline, pairOf(plug, mirrorX(plug), true), 'plug', 3, 0.3);
  const straight = plugReach(plug, 3, 0.3);
  expect(area(straight.left)).toBeGreaterThan(0.5);
  expect(area(back.left)).toBeCloseTo(area(straight.left), 9);
  expect(contains(back.left, 17.4, 0)).toBe(true);
});

const CHORD = 0.0005;

/** The same by another library: what is reached of the pocket, or what of the face is not reached round the plug. */
function byOther(engine: EngineName, region: Region, part: Part, radius: number, allowance: number): Rings {
  const rings = ringsOf(region.contours, CHORD);
  const off = radius + allowance;
  return part === 'pocket'
    ? offsetBy(engine, offsetBy(engine, rings, -off, CHORD), radius, CHORD)
    : offsetBy(engine, offsetBy(engine, rings, off, CHORD), -radius, CHORD);
}

/** Ours and theirs, as far as they differ: of what is reached, and of what is left. Areas, mm2. */
function differences(pair: Pair, face: Outline, part: Part, radius: number, engine: EngineName) {
  const { allowance } = recipe.passes;
  const reach = reachOf(recipe, face, pair, part, radius, allowance);
  const region = laid(pair, part);
  const rings = ringsOf(region.contours, CHORD);
  const whole = ringsOf(face.face.contours, CHORD);
  const theirs = byOther(engine, region, part, radius, allowance);
  const reached = part === 'pocket' ? theirs : combined('difference', whole, theirs);
  const walls = offsetBy(engine, rings, part === 'pocket' ? -allowance : allowance, CHORD);
  const beyond = part === 'pocket' ? walls : combined('difference', whole, walls);
  const left = combined('difference', beyond, reached);
  return {
    reach,
    tolerance: CHORD * perimeter(reach.reached) + 0.02,
    reached: differenceArea(ringsOf(reach.reached.contours, CHORD), reached),
    left: differenceArea(ringsOf(reach.left.contours, CHORD), left),
    areas: Math.max(
      Math.abs(reach.areas.left - polygonArea(left)),
      Math.abs(reach.areas.reached - polygonArea(reached)),
    ),
  };
}

describe('reach against morphological opening by other libraries', () => {
  // Judges: Clipper2 (clipper2-wasm) and JSTS, polygons with chords of 0.0005 mm. May differ: all the boundary by a chord,
  // and a sliver at rests, since a chord that strays by c lets a ball rest up to sqrt(2 c R) = 0.055 mm off along a flat wall.
  it('agrees with Clipper2 on 40 random patterns', () => {
    let left = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const random = seeded(seed * 15485863);
      const pieces = Array.from({ length: 2 + Math.floor(random() * 4) }, (_, k) => ({
        name: `${k}`,
        region: {
          contours: [randomPolygon(random, (random() - 0.5) * 44, (random() - 0.5) * 44, 6 + random() * 12)],
        },
      }));
      const safe = enforce({ pieces }, { r: cornerRadius(recipe.cutter), thin: 'drop', touch: 'part' });
      const pair = makePair(safe, recipe.fit);
      const radius = 2 + random() * 2;
      for (const part of ['pocket', 'plug'] as const) {
        const d = differences(pair, outline, part, radius, 'clipper');
        expect(d.reached, `${seed} ${part}`).toBeLessThan(d.tolerance);
        expect(d.left, `${seed} ${part}`).toBeLessThan(d.tolerance);
        expect(d.areas, `${seed} ${part}`).toBeLessThan(d.tolerance);
        // Put together from walls and arcs, without a boolean.
        expect(sweepOf(pair, part, radius, recipe.passes.allowance).left, `${seed} ${part}`).not.toBeNull();
        left += d.reach.areas.left;
      }
    }
    // Enough was left to judge: some 18 mm2 a part.
    expect(left).toBeGreaterThan(1000);
  });

  it.each(['tea-box-rosette', 'hexagon-coaster', 'door-number'])('agrees with JSTS on %s', (name) => {
    const text = readFileSync(new URL(`../../patterns/${name}.json`, import.meta.url), 'utf8');
    const shipped = readRecipe(text, name);
    const made = build({ ...shipped, roughing: null }, assets);
    for (const part of ['pocket', 'plug'] as const) {
      const d = differences(made.pair, made.outline, part, 3.175, 'jsts');
      expect(d.reached, part).toBeLessThan(d.tolerance);
      expect(d.left, part).toBeLessThan(d.tolerance);
      expect(d.areas, part).toBeLessThan(d.tolerance);
      expect(d.reach.areas.left).toBeGreaterThan(10);
    }
  });
});

const job = build(readRecipe(exampleText(), 'x.json'), assets);

describe('the table of cutters', () => {
  const rows = reachTable(job.recipe, job.outline, job.pair);

  it("has the stock list and the recipe's own two, least first, each once", () => {
    expect(rows.map((r) => r.diameter)).toEqual(cuttersAtHand(job.recipe));
    expect(rows.filter((r) => r.use !== 'stock').map((r) => [r.use, r.diameter])).toEqual([
      ['finishing', 3.175],
      ['roughing', 6.35],
    ]);
    const own = readRecipe(exampleText({ cutters: ['1/16in', 5], 'cutter.diameter': 3 }), 'x.json');
    expect(reachTable(own, job.outline, job.pair).map((r) => [r.use, r.diameter])).toEqual([
      ['stock', 25.4 / 16],
      ['finishing', 3],
      ['stock', 5],
      ['roughing', 6.35],
    ]);
  });
  it('says that a thicker cutter gets to no more, and the finishing cutter everywhere', () => {
    const roughs = rows.filter((r) => r.use !== 'finishing');
    for (let i = 1; i < roughs.length; i++) {
      expect(roughs[i]!.pocket.share).toBeLessThanOrEqual(roughs[i - 1]!.pocket.share + 1e-12);
      expect(roughs[i]!.plug.share).toBeLessThanOrEqual(roughs[i - 1]!.plug.share + 1e-12);
    }
    const finishing = rows.find((r) => r.use === 'finishing')!;
    expect(finishing.pocket.share).toBeCloseTo(1, 9);
    expect(finishing.plug.share).toBeCloseTo(1, 9);
    expect(finishing.pocket.finishing).toBeCloseTo(0, 3);
  });
  it('counts what is left by the depth of each part', () => {
    const rough = rows.find((r) => r.use === 'roughing')!;
    const of = (part: Part) => reachOf(job.recipe, job.outline, job.pair, part, 3.175, 0.3).areas.finishing;
    expect(rough.pocket.finishing).toBeCloseTo(of('pocket') * 8, 6);
    expect(rough.plug.finishing).toBeCloseTo(of('plug') * 12, 6);
  });
  it('finds the thickest cutter that gets everywhere', () => {
    const round = { contours: [circle(0, 0, 2.4)] };
    // 4 mm and the allowance of 0.3 mm a side need a radius of 2.3 mm; 3/16 in would need 2.68 mm.
    expect(reachingAll(job.recipe, job.outline, pairOf(round))).toBe(4);
    expect(reachingAll(job.recipe, job.outline, job.pair)).toBeNull();
  });
});

describe('the finding', () => {
  const setup = (changes: Record<string, unknown>) => {
    const r = readRecipe(exampleText(changes), 'x.json');
    return { recipe: r, outline: job.outline, artwork: { pieces: [] }, safe: job.safe, pair: job.pair };
  };

  it('tells shares, volume, and a cutter that gets to more', () => {
    const [f, ...more] = unreached(setup({}));
    expect(more).toEqual([]);
    expect(f!.do).toMatch(/6\.35 mm\) gets to 57\.1 % of the pocket's waste and 72\.7 % of the plug's/);
    expect(f!.do).toMatch(/28\.9 cm³ with the allowance/);
    expect(f!.numbers.betterDiameter).toBe(4);
    expect(f!.severity).toBe('note');
    expect(area(f!.zone!.areas!)).toBeCloseTo(f!.numbers.pocketLeft! + f!.numbers.plugLeft!, 6);
  });
  it("warns of a cutter that hardly gets anywhere, in the recipe's units", () => {
    const [f] = unreached(
      setup({
        'roughing.diameter': '1/2in',
        units: 'in',
        outline: { shape: 'circle', diameter: '96mm', margin: '6mm' },
        stock: { field: '11mm', plug: '12mm' },
        cutter: { diameter: '1/8in', flute: '22mm' },
        fit: { clearance: '0.08mm' },
        depth: '8mm',
        skin: '1.5mm',
      }),
    );
    expect(f!.severity).toBe('warn');
    expect(f!.do).toMatch(/0\.5 in\) gets to/);
    expect(f!.do).toMatch(/in³/);
    expect(f!.do).toMatch(/roughing\.open/);
  });
  it('is silent without a roughing cutter', () => {
    expect(unreached(setup({ roughing: undefined }))).toEqual([]);
  });
});
