import { subtract, union } from '../../geometry/boolean.js';
import { offset } from '../../geometry/offset.js';
import { EMPTY, parts, polygon, type Region } from '../../geometry/region.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { turned, UP } from './polar.js';
import { drawRim, rimParameters } from './rim.js';
import { annulus, drawDisc, drawPiece, size, stageOf } from './stage.js';

export const compassRose: Generator = {
  name: 'compass-rose',
  title: 'Compass rose',
  family: 'radial',
  summary: 'A compass rose of 4, 8, 16 or 32 points, each split lengthwise between plug and field, or solid.',
  parameters: [
    {
      kind: 'choice',
      name: 'points',
      meaning: 'Number of points.',
      say: '… points',
      default: '8',
      options: ['4', '8', '16', '32'].map((value) => ({ value, meaning: `${value} points` })),
    },
    {
      kind: 'choice',
      name: 'style',
      meaning: 'How the points are drawn.',
      say: 'each …',
      default: 'split',
      options: [
        { value: 'split', meaning: 'one half of each point is let in, the other is left' },
        { value: 'solid', meaning: 'the points are let in whole, as one star' },
      ],
    },
    {
      kind: 'number',
      name: 'shorter',
      meaning: 'Length of the points between others as a share of the length of those.',
      say: 'shorter points … of the longer',
      default: 0.86,
      min: 0.2,
      max: 1,
    },
    {
      kind: 'number',
      name: 'waist',
      meaning: 'Radius of the valleys between the four main points, as a share of their length.',
      say: 'valleys at … of their length',
      default: 0.33,
      min: 0.1,
      max: 0.8,
    },
    length('eye', 'Diameter of the opening in the middle.', '… left free in the middle', 13, 0, 3000),
    length(
      'disc',
      'Diameter of the disc in the eye; 0 for none.',
      { say: '… disc in the eye', often: [0, 30], zero: 'no' },
      0,
      0,
    ),
    {
      kind: 'number',
      name: 'band',
      meaning:
        'Outer radius of a ring behind the points, as a share of the length of the longest; 0 for none.',
      say: 'a ring behind them out to … of their length',
      zero: 'none',
      default: 0.8,
      min: 0,
      max: 1,
    },
    size,
    ...rimParameters(0),
    length('gap', 'Width of the walls between points, rings and disc.', 'walls … wide', 4.2, 0.2),
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const stage = stageOf(values, outline, pen);
    const eye = Math.max(stage.bore, num(values, 'eye') / 2);
    const outer = drawRim(values, stage.radius, eye, stage.pen);
    const disc = num(values, 'disc') / 2;
    if (disc > 0 && disc >= eye && stage.bore === 0)
      throw bad('disc', `${mm(2 * disc)} fills the eye; make it less than ${mm(2 * eye)}`);
    if (eye >= outer * num(values, 'waist')) {
      const most = 2 * outer * num(values, 'waist');
      throw bad(
        'eye',
        `${mm(2 * eye)} cuts the points apart; make it less than ${mm(most)}, or the waist larger`,
      );
    }
    const rose = roseOf(values, outer, eye);
    rose.pieces.forEach((p, i) => {
      drawPiece(stage.pen, `point ${i + 1}`, p);
    });
    const band = num(values, 'band') * outer;
    if (band > eye) {
      const ring = annulus(band, Math.max(band - num(values, 'ring'), eye));
      const plugs = offset(union(rose.pieces), num(values, 'gap'));
      parts(subtract(ring, union([rose.star, plugs]))).forEach((contours, i) => {
        drawPiece(stage.pen, `band ${i + 1}`, { contours });
      });
    }
    if (disc > 0 && stage.bore === 0) drawDisc(stage.pen, 'disc', disc);
  },
};

interface Rose {
  /** The points, halves of both kinds of wood together. */
  readonly star: Region;
  /** What of them is let in. */
  readonly pieces: readonly Region[];
}

/** The points from the front to the back: each rank stands behind those before it. */
function roseOf(values: Values, outer: number, eye: number): Rose {
  const n = Number(values.points);
  const first = num(values, 'turn') + UP;
  const split = values.style === 'split';
  const waist = num(values, 'waist') * outer * Math.SQRT1_2;
  let star = EMPTY;
  let wall = EMPTY;
  let length = outer;
  const pieces: Region[] = [];
  for (const rank of ranks(n)) {
    if (length <= waist)
      throw bad(
        'shorter',
        'the shortest points would not reach beyond the waist; use a larger share, or fewer points',
      );
    const points = rank.map((i): Point => ({ length, waist, direction: first - (2 * Math.PI * i) / n }));
    const hidden = union([star, wall, annulus(eye, 0)]);
    const seen = points.map((p) => subtract(split ? half(p) : whole(p), hidden));
    if (seen.some((r) => r.contours.length === 0))
      throw bad(
        'points',
        `some of ${n} stand hidden behind others; use fewer, a smaller waist or a larger share in shorter`,
      );
    pieces.push(...seen);
    star = union([star, ...points.map(whole)]);
    if (split) wall = offset(union(pieces), num(values, 'gap'));
    length *= num(values, 'shorter');
  }
  return { star, pieces: split ? pieces : [subtract(star, annulus(eye, 0))] };
}

/** Numbers of the points of each rank, clockwise from the top: the four main ones, those between, and so on. */
function ranks(n: number): number[][] {
  const out: number[][] = [];
  const all = Array.from({ length: n }, (_, i) => i);
  for (let step = n / 4; step >= 1; step /= 2)
    out.push(all.filter((i) => i % step === 0 && (step === n / 4 || i % (2 * step) !== 0)));
  return out;
}

/** A point of the rose: a kite with its tail in the middle, widest, `waist` to either side, at radius `waist`. */
interface Point {
  readonly length: number;
  readonly direction: number;
  readonly waist: number;
}

function whole({ length, direction, waist }: Point): Region {
  const corners = [
    [0, 0],
    [waist, -waist],
    [length, 0],
    [waist, waist],
  ] as const;
  return { contours: [polygon(corners.map((p) => turned(p, direction)))] };
}

/** The half of the point that lies clockwise of its axis. */
function half({ length, direction, waist }: Point): Region {
  const corners = [
    [0, 0],
    [waist, -waist],
    [length, 0],
  ] as const;
  return { contours: [polygon(corners.map((p) => turned(p, direction)))] };
}
