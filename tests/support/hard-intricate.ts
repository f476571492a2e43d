import { bulgedContour, polygon } from '../../src/geometry/region.js';
import { placed } from '../../src/geometry/transform.js';
import { carpet, cells, dragon, koch, plus } from './hard-fractals.js';
import {
  box,
  comb,
  dotted,
  HAIRS,
  type Hard,
  hole,
  nest,
  noiseCircle,
  one,
  PLATE,
  R,
  spiral,
  star,
} from './hard-shapes.js';
import { seeded } from './random.js';

const slivers = (): Hard[] =>
  HAIRS.flatMap((w) => [
    one(`sliver ${w} wide`, box(0, 20, 0, w)),
    one(
      `spike ${w} wide`,
      polygon([
        [0, 0],
        [20, 0],
        [20, 20],
        [10 + w, 20],
        [10 + w / 2, 35],
        [10, 20],
        [0, 20],
      ]),
    ),
    one(
      `slit ${w} wide`,
      polygon([
        [0, 0],
        [20, 0],
        [20, 20],
        [10 + w, 20],
        [10 + w / 2, 5],
        [10, 20],
        [0, 20],
      ]),
    ),
    one(`slit ${w} wide inside`, PLATE, hole(box(-5, 5, 0, w))),
    one(`halves with ${w} between`, box(0, 10, 0, 20), box(10 + w, 20, 0, 20)),
  ]);

const intricate = (): Hard[] => [
  one('spiral, wide', spiral(4, 4, 4)),
  one('spiral, gaps too narrow', spiral(4, 4, 3)),
  one('spiral, band too narrow', spiral(4, 3, 4)),
  one('Koch 4', koch(4, 120)),
  one('Koch 5 small', koch(5, 40)),
  one('carpet 3', ...cells(carpet(3), 30, 2.5)),
  one('carpet 2 large', ...cells(carpet(2), 10, 10)),
  one('plus 3', ...cells(plus(3), 30, 4)),
  one('plus 4 small', ...cells(plus(4), 90, 1.1)),
  one('dragon 9', ...cells(dragon(9), 40, 3.5)),
  one('dragon 10 small', ...cells(dragon(10), 60, 1.3)),
  one('nested 100 deep', ...nest(100, 3.5)),
  one('nested 100 deep, gaps 2r', ...nest(100, 2 * R)),
  one('nested 20 deep, too narrow', ...nest(20, 3.1)),
  one('thousand-point noise', noiseCircle(seeded(11), 1000, 30, 0.4)),
  one('thousand-point loud noise', noiseCircle(seeded(12), 1000, 60, 6)),
  one('thousand-point quiet noise', noiseCircle(seeded(13), 1000, 30, 1e-6)),
  one('thousand-point noise hole', box(-50, 50, -50, 50), hole(noiseCircle(seeded(14), 1000, 30, 2))),
];

/** Far away, tiny, huge. */
const scales = (): Hard[] => [
  ...[1e3, 1e4, 1e5, 1e6].flatMap((d) => [
    one(`star ${d} mm away`, placed(star(), d, -d, 0.3)),
    one(`comb ${d} mm away`, placed(comb(4, 3, 5), d, -d, 0.3)),
    one(`koch ${d} mm away`, placed(koch(3, 60), d, -d, 0.3)),
  ]),
  one('tiny star', placed(star(), 0, 0, 0, (0.001 * R) / 20)),
  one('tiny beside large', box(0, 20, 0, 20), placed(star(), 30, 0, 0, (0.001 * R) / 20)),
  one('tiny hole', PLATE, hole(placed(star(), 0, 0, 0, (0.001 * R) / 20))),
  one('huge star', placed(star(), 0, 0, 0.3, 1e4)),
  one('huge koch', koch(4, 1e5)),
];

const awkward = (): Hard[] => [
  ...[160, 169.9, 169.999999, 170].map((degrees) =>
    one(
      `lens of two arcs of ${degrees} degrees`,
      bulgedContour([
        { x: -10, y: 0, bulge: Math.tan((degrees / 720) * Math.PI) },
        { x: 10, y: 0, bulge: Math.tan((degrees / 720) * Math.PI) },
      ]),
    ),
  ),
  one(
    'moon of arcs of nearly 170 degrees',
    bulgedContour([
      { x: -10, y: 0, bulge: Math.tan((169.9 / 720) * Math.PI) },
      { x: 10, y: 0, bulge: -Math.tan((100 / 720) * Math.PI) },
    ]),
  ),
  one('collinear points', polygon(dotted(0))),
  one('collinear points to 1e-10', polygon(dotted(1e-10))),
  one('collinear points to 1e-6', polygon(dotted(1e-6))),
  one(
    'repeated points',
    polygon(
      (
        [
          [0, 0],
          [20, 0],
          [20, 20],
          [0, 20],
        ] as const
      ).flatMap((p) => [p, p, p]),
    ),
  ),
  one(
    'points repeated to 1e-9',
    polygon(
      (
        [
          [0, 0],
          [20, 0],
          [20, 20],
          [0, 20],
        ] as const
      ).flatMap(([x, y]) => [0, 1, 2].map((k): [number, number] => [x + k * 1e-9, y + ((k * 7) % 3) * 1e-9])),
    ),
  ),
];

export const intricateOutlines = (): Hard[] =>
  [slivers, intricate, scales, awkward].flatMap((family) => family());
