import type { Piece } from '../../src/geometry/artwork.js';
import { bulgedContour, circle } from '../../src/geometry/region.js';
import { intricateOutlines } from './hard-intricate.js';
import {
  box,
  comb,
  DROP,
  HAIRS,
  type Hard,
  hole,
  horn,
  many,
  needle,
  one,
  PLATE,
  piece,
  R,
  ring,
  roundedBox,
} from './hard-shapes.js';

const AROUND = [...HAIRS.map((d) => -d).reverse(), 0, ...HAIRS];

const sharp = (): Hard[] => [
  ...[0.001, 1, 8].map((base) => one(`needle ${base} x 60`, needle(base, 60))),
  one('needle hole', box(-10, 80, -20, 20), hole(needle(8, 60))),
  { ...one('needle refused', needle(1, 60)), rule: { ...DROP, thin: 'refuse' } },
  one('horn', horn(20, 12)),
  one('horn hole', box(-20, 40, -20, 40), hole(horn(20, 12))),
  one(
    'lens',
    bulgedContour([
      { x: -20, y: 0, bulge: 0.1 },
      { x: 20, y: 0, bulge: 0.1 },
    ]),
  ),
];

/** Circles that all but touch, by gaps from a billionth of a millimetre to a thousandth. */
const tangent = (): Hard[] =>
  [0, 1e-9, 1e-7, 1e-5, 1e-3].flatMap((g) => [
    many(`two discs ${g} apart, parted`, [piece('a', circle(-8, 0, 8)), piece('b', circle(8 + g, 0, 8))]),
    many(
      `two discs ${g} apart, joined`,
      [piece('a', circle(-8, 0, 8)), piece('b', circle(8 + g, 0, 8))],
      'join',
    ),
    ...(g > 0
      ? [
          one(`two discs ${g} apart in one piece`, circle(-8, 0, 8), circle(8 + g, 0, 8)),
          one(`hole ${g} from its rim`, circle(0, 0, 16), hole(circle(16 - 8 - g, 0, 8))),
          many(`disc ${g} from the rim of its hole`, [
            piece('a', ...ring(0, 0, 24, 16)),
            piece('b', circle(16 - 8 - g, 0, 8)),
          ]),
        ]
      : []),
  ]);

const exact = (): Hard[] =>
  AROUND.flatMap((d) => [
    one(`comb, teeth 2r ${signed(d)}`, comb(4, 2 * R + d, 5)),
    one(`comb, gaps 2r ${signed(d)}`, comb(4, 5, 2 * R + d)),
    one(`comb, both 2r ${signed(d)}`, comb(4, 2 * R + d, 2 * R + d)),
    one(`disc of r ${signed(d)}`, circle(3, 4, R + d)),
    one(`hole of r ${signed(d)}`, PLATE, hole(circle(3, 4, R + d))),
    one(`corners of r ${signed(d)}`, roundedBox(20, 12, R + d)),
    one(`ends of r ${signed(d)}`, roundedBox(20, 2 * (R + d), R + d)),
    many(`bars 2r ${signed(d)} apart`, [
      piece('a', box(0, 10, 0, 20)),
      piece('b', box(10 + 2 * R + d, 20 + 2 * R + d, 0, 20)),
    ]),
  ]);

export const signed = (d: number): string => (d < 0 ? `- ${-d}` : `+ ${d}`);

const coincident = (): Hard[] => [
  many('tiles that share edges', grid(10)),
  many('tiles that share edges, joined', grid(10), 'join'),
  many('tiles that overlap by 1e-9', grid(10 - 1e-9)),
  many('tiles 1e-9 apart', grid(10 + 1e-9)),
  many('bricks that share parts of edges', [
    piece('a', box(0, 20, 0, 10)),
    piece('b', box(-7, 9, 10, 20)),
    piece('c', box(9, 27, 10, 20)),
  ]),
  many('the same square twice', [piece('a', box(0, 10, 0, 10)), piece('b', box(0, 10, 0, 10))]),
  many('bars that cross', [piece('a', box(-20, 20, -3, 3)), piece('b', box(-3, 3, -20, 20))]),
  many('squares that share a corner', [piece('a', box(0, 10, 0, 10)), piece('b', box(10, 20, 10, 20))]),
  many('a disc that fills its hole', [piece('a', ...ring(0, 0, 20, 10)), piece('b', circle(0, 0, 10))]),
  many('a square in the corner of a square', [piece('a', box(0, 20, 0, 20)), piece('b', box(0, 8, 0, 8))]),
];

function grid(pitch: number): Piece[] {
  return Array.from({ length: 9 }, (_, k) => {
    const [x, y] = [(k % 3) * pitch, Math.floor(k / 3) * pitch];
    return piece(`s${k}`, box(x, x + 10, y, y + 10));
  });
}

/** Every hard outline. Their answers are in corpus/hard/answers.json. */
export function hardOutlines(): Hard[] {
  return [...sharp(), ...tangent(), ...exact(), ...coincident(), ...intricateOutlines()];
}
