import type { Safe } from '../../src/cutter/safe.js';
import { islandsOf } from '../../src/fit/islands.js';
import { WHOLE } from '../../src/generators/layer.js';
import {
  area,
  bounds,
  bulgedContour,
  type Contour,
  circle,
  type Region,
  reversedContour,
} from '../../src/geometry/region.js';
import { mirrorX } from '../../src/geometry/transform.js';
import type { Job } from '../../src/output/job.js';
import { MARKS_BORDER } from '../../src/output/marks.js';
import type { FitSetup, MachineSetup, Recipe } from '../../src/recipe/recipe.js';

type Point = readonly [number, number];

/**
 * A counter-clockwise polygon moved inwards by `inset`, its corners rounded: `convex` and `concave` are the radii
 * before the move, so that they become convex - inset and concave + inset as on a plug with that clearance.
 */
export function rounded(points: readonly Point[], r: number, inset = 0): Contour {
  const n = points.length;
  const unit = (i: number): Point => {
    const [ax, ay] = points[(i + n) % n]!;
    const [bx, by] = points[(i + 1) % n]!;
    const l = Math.hypot(bx - ax, by - ay);
    return [(bx - ax) / l, (by - ay) / l];
  };
  return bulgedContour(
    points.flatMap(([x, y], i) => {
      const [ux, uy] = unit(i - 1);
      const [vx, vy] = unit(i);
      const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
      // The corner of the moved edges: along the bisector of the two left normals.
      const k = inset / (1 + Math.cos(turn));
      const cx = x + k * (-uy - vy);
      const cy = y + k * (ux + vx);
      const radius = turn > 0 ? r - inset : r + inset;
      const setback = radius * Math.tan(Math.abs(turn) / 2);
      return [
        { x: cx - ux * setback, y: cy - uy * setback, bulge: Math.tan(turn / 4) },
        { x: cx + vx * setback, y: cy + vy * setback, bulge: 0 },
      ];
    }),
  );
}

export const L_SHAPE: readonly Point[] = [
  [-30, -22],
  [2, -22],
  [2, -10],
  [-18, -10],
  [-18, 24],
  [-30, 24],
];

export function star(cx: number, cy: number, n: number, outer: number, inner: number): Point[] {
  return Array.from({ length: 2 * n }, (_, i) => {
    const a = (Math.PI * i) / n + 0.1;
    const r = i % 2 === 0 ? outer : inner;
    return [cx + r * Math.cos(a), cy + r * Math.sin(a)] as const;
  });
}

/** Pocket (inset 0) or plug: an L, a ring and a six-pointed star. */
export function samplePattern(r: number, inset: number): Region {
  return {
    contours: [
      rounded(L_SHAPE, r, inset),
      circle(18, 22, 12 - inset),
      reversedContour(circle(18, 22, 5 + inset)),
      rounded(star(20, -16, 6, 16, 9), r, inset),
    ],
  };
}

/** How the two kinds of plug are fitted. */
export const LOOSE: FitSetup = {
  clearance: 0.08,
  from: 'plug',
  plug: 'loose',
  face: 'up',
  glueGap: 0.5,
  foot: 0.4,
  proud: 4.5,
  sawRoom: 4,
};
export const CARRIER: FitSetup = { ...LOOSE, plug: 'carrier', face: 'down', proud: 0 };

const TOOL = {
  diameter: 3.175,
  flute: 22,
  flutes: 2,
  spiral: 'up',
  material: 'carbide',
  shank: 3.175,
  stickout: 22,
  rpm: 18_000,
  feed: null,
} as const;

/** The machine as a recipe that says nothing of it has it. */
export const MACHINE: MachineSetup = {
  accuracy: 0.05,
  repeatability: 0.02,
  sideForce: 10,
  acceleration: 250,
  feed: 3000,
  slowest: 10_000,
  fastest: 30_000,
  collet: 19,
  bridge: null,
  lift: null,
  shoe: null,
  shoeAbove: 10,
};

export function sampleRecipe(change: Partial<Recipe> = {}): Recipe {
  return {
    name: 'sample',
    units: 'mm',
    outline: { shape: 'circle', values: { diameter: 96, margin: 6 } },
    pattern: {
      generator: 'rosette',
      values: { points: 6 },
      combine: 'union',
      clear: 0,
      nearby: 'cut',
      within: WHOLE,
    },
    stock: { field: 11, plug: 12 },
    cutter: { ...TOOL, cuts: 3.19, ease: 0.305, thin: 'drop', touch: 'part' },
    roughing: { ...TOOL, diameter: 6.35, shank: 6.35, open: false },
    passes: { allowance: 0.3, roughingStep: 6.35, finishingStep: null, clearing: false, stepover: 45 },
    cutters: null,
    fit: LOOSE,
    machine: MACHINE,
    table: {
      board: 12,
      over: 0.5,
      hold: 'tape',
      tape: 50,
      clamps: 0,
      clampsAway: 10,
      neighbours: null,
      pitch: null,
      onionSkin: 0,
      topTape: false,
    },
    walls: { least: null, limbs: null },
    times: { glueOpen: 5, glueSet: 24, coats: 3, coatDry: 12 },
    press: null,
    boards: { plug: null, field: null, pieces: 1 },
    moisture: { field: 8, plug: 8, driest: 6, dampest: 10 },
    depth: 8,
    skin: 1.5,
    woods: { field: 'white ash', plug: 'black walnut', fieldGrain: 0, plugGrain: Math.PI / 6 },
    ...change,
  };
}

/** A job made by hand: circular face of 96 mm, corner radius 1.9, clearance 0.08 from the plug. */
export function sampleJob(change: Partial<Recipe> = {}): Job {
  const recipe = sampleRecipe(change);
  const pocket = samplePattern(1.9, 0);
  const plug = samplePattern(1.9, recipe.fit.clearance);
  const mirrored = recipe.fit.face === 'down';
  const face = { contours: [circle(0, 0, 48)] };
  const pieces = [{ name: 'sample', region: pocket }];
  const safe: Safe = {
    region: pocket,
    pieces,
    changes: [
      { kind: 'vanished', piece: 'star tip 3', at: [36, -14], size: 0.8 },
      { kind: 'parted', piece: 'ell / ring', at: [-4, 12], size: 1.4 },
    ],
  };
  const pair = { pocket, plug: mirrored ? mirrorX(plug) : plug, mirrored };
  return {
    recipe,
    outline: {
      shape: 'circle',
      face,
      inner: { contours: [circle(0, 0, 42)] },
      box: bounds(face.contours),
      sizes: { diameter: 96, margin: 6 },
    },
    safe,
    pair,
    islands: islandsOf(pair),
    layouts: { plug: null, pocket: null },
    inlays: [{ wood: recipe.woods.plug, name: 'inlay 1', artwork: { pieces }, safe, pair, into: [] }],
    sheet: { width: 96 + 2 * MARKS_BORDER, height: 96 + 2 * MARKS_BORDER, border: MARKS_BORDER },
    findings: [
      {
        code: 'deep-cut',
        severity: 'warn',
        where: [1 / 3, 0],
        numbers: { depth: 8, ratio: 8 / 3.19 },
        do: 'Depth is 2.5 cutter diameters: take it in passes & clear the chips.',
      },
      {
        code: 'reach-unlimited',
        severity: 'note',
        where: null,
        numbers: { reach: Number.POSITIVE_INFINITY },
        do: 'Nothing to do.',
      },
    ],
    numbers: { cornerRadius: 1.9, pocketArea: area(pocket) },
  };
}
