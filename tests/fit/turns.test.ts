import { describe, expect, it } from 'vitest';
import { moved } from '../../src/fit/layout.js';
import { shapeOf } from '../../src/fit/shape.js';
import { alikeParts, turnsOf } from '../../src/fit/turns.js';
import { type Contour, circle, reversedContour } from '../../src/geometry/region.js';
import { mirrorX } from '../../src/geometry/transform.js';
import { turnedPart } from '../../src/inspect/turned-part.js';
import { makeOutline } from '../../src/outline/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { rounded, star } from '../output/sample-job.js';
import { exampleText } from '../recipe/example.js';
import { seeded } from '../support/random.js';

type Point = readonly [number, number];

const turned = (contours: readonly Contour[], degrees: number, dx = 0, dy = 0): Contour[] => {
  const a = (degrees * Math.PI) / 180;
  return moved(contours, { c: Math.cos(a), s: Math.sin(a) }, dx, dy);
};
const rectangle = (w: number, h: number): Contour[] => [
  rounded(
    [
      [-w / 2, -h / 2],
      [w / 2, -h / 2],
      [w / 2, h / 2],
      [-w / 2, h / 2],
    ],
    2,
  ),
];
const regular = (n: number): Contour[] => [
  rounded(
    Array.from(
      { length: n },
      (_, k): Point => [20 * Math.cos((2 * Math.PI * k) / n), 20 * Math.sin((2 * Math.PI * k) / n)],
    ),
    2,
  ),
];
/** A block letter S: it looks the same turned by 180 degrees, and its mirror image is another shape. */
const S: Contour[] = [
  rounded(
    [
      [-15, -25],
      [15, -25],
      [15, 5],
      [-5, 5],
      [-5, 15],
      [15, 15],
      [15, 25],
      [-15, 25],
      [-15, -5],
      [5, -5],
      [5, -15],
      [-15, -15],
    ],
    2,
  ),
];
/** No two sides alike. */
const COMMA: Contour[] = [
  rounded(
    [
      [0, 0],
      [31, 2],
      [24, 13],
      [11, 9],
      [3, 21],
    ],
    2,
  ),
];

const found = (contours: readonly Contour[], clearance = 0.08) => {
  const { angles, any, over } = turnsOf(shapeOf(contours), clearance);
  return { angles: angles.map((a) => Math.round((a * 180000) / Math.PI) / 1000), any, over };
};

describe('turns', () => {
  // The symmetry groups of plane figures: dihedral D1, D2, D4, Dn, cyclic C1, C2, and O(2) of the circle (Weyl 1952, Symmetry).
  const cases: [string, Contour[], { angles: number[]; any: boolean; over: boolean }][] = [
    ['square', rectangle(20, 20), { angles: [90, 180, 270], any: false, over: true }],
    ['rectangle', rectangle(30, 20), { angles: [180], any: false, over: true }],
    ['triangle', regular(3), { angles: [120, 240], any: false, over: true }],
    ['pentagon', regular(5), { angles: [72, 144, 216, 288], any: false, over: true }],
    ['letter S', S, { angles: [180], any: false, over: false }],
    ['comma', COMMA, { angles: [], any: false, over: false }],
    ['circle', [circle(3, 4, 9)], { angles: [], any: true, over: true }],
    ['ring', [circle(3, 4, 9), reversedContour(circle(3, 4, 5))], { angles: [], any: true, over: true }],
    [
      'ring off centre',
      [circle(3, 4, 9), reversedContour(circle(5, 4, 4))],
      { angles: [], any: false, over: true },
    ],
    [
      'star',
      [rounded(star(4, 5, 6, 16, 9), 1.9)],
      { angles: [60, 120, 180, 240, 300], any: false, over: true },
    ],
  ];
  it.each(cases)('of a %s, however it lies', (_, contours, expected) => {
    for (const degrees of [0, 33, 90]) expect(found(turned(contours, degrees, 50, -7))).toEqual(expected);
  });

  it('of a twelve-sided polygon are eleven', () => {
    expect(found(regular(12)).angles).toEqual(Array.from({ length: 11 }, (_, k) => 30 * (k + 1)));
  });

  it('allow what the clearance allows and no more', () => {
    // 20 by 20.1: turned by 90 degrees it stands out by 0.05 mm on each side.
    expect(found(rectangle(20, 20.1), 0.06).angles).toEqual([90, 180, 270]);
    expect(found(rectangle(20, 20.1), 0.04).angles).toEqual([180]);
    expect(found(rectangle(20, 20.1), 0).angles).toEqual([180]);
  });

  it('see a notch that one corner has and the others have not', () => {
    const notched: Contour[] = [
      rounded(
        [
          [-10, -10],
          [10, -10],
          [10, 10],
          [4, 10],
          [4, 9],
          [0, 9],
          [0, 10],
          [-10, 10],
        ],
        0.4,
      ),
    ];
    expect(found(notched)).toEqual({ angles: [], any: false, over: false });
  });
});

describe('parts that can be taken for each other', () => {
  const groups = (list: readonly Contour[][]) => alikeParts(list.map(shapeOf), 0.08);

  it('are grouped by shape, and those that need no turn told apart from those that do', () => {
    const list = [
      COMMA,
      S,
      turned(COMMA, 40, 90, 3),
      turned(S, 0, 60),
      turned(COMMA, 77, -70, 8),
      rectangle(30, 20),
    ];
    expect(groups(list)).toEqual([
      { members: [0, 2, 4], turned: true },
      { members: [1, 3], turned: false },
    ]);
  });

  it('are not mirror images, nor those of a size larger by more than the clearance', () => {
    expect(groups([COMMA, [...mirrorX({ contours: COMMA }).contours]])).toEqual([]);
    expect(groups([rectangle(30, 20), turned(rectangle(30.3, 20), 20, 50)])).toEqual([]);
    expect(groups([rectangle(30, 20), turned(rectangle(30.1, 20), 20, 50)])).toEqual([
      { members: [0, 1], turned: true },
    ]);
  });
});

describe('many parts', () => {
  /** Six-sided, no two alike: corners at steady angles, distances from a stream of numbers. */
  const stream = seeded(11);
  const many = Array.from({ length: 60 }, () => [
    rounded(
      Array.from({ length: 6 }, (_, k): Point => {
        const r = 10 + 4 * stream();
        return [r * Math.cos((k * Math.PI) / 3), r * Math.sin((k * Math.PI) / 3)];
      }),
      1.6,
    ),
  ]);

  it('are each found again among all when turned, and never taken for another', () => {
    const copies = many.map((c, k) => turned(c, 7 * k + 1, 100 * k, 3));
    const groups = alikeParts([...many, ...copies].map(shapeOf), 0.08);
    expect(groups).toEqual(many.map((_, k) => ({ members: [k, k + many.length], turned: true })));
  });

  it('are compared by the clearance asked, whatever was asked of the same shapes before', () => {
    const shapes = [rectangle(30, 20), turned(rectangle(30.1, 20), 20, 50)].map(shapeOf);
    const asked = (clearance: number) => alikeParts(shapes, clearance).length;
    expect([asked(0.08), asked(0.02), asked(0.08)]).toEqual([1, 0, 1]);
  });
});

describe('the finding', () => {
  const findings = (contours: readonly Contour[], changes: Record<string, unknown> = {}) => {
    const recipe = readRecipe(exampleText(changes), 'x.json');
    const region = { contours };
    return turnedPart({
      recipe,
      outline: makeOutline(recipe.outline.shape, recipe.outline.values),
      artwork: { pieces: [] },
      safe: { region, pieces: [], changes: [] },
      pair: { pocket: region, plug: region, mirrored: false },
    }).map((f) => `${f.severity} ${f.code}: ${f.do}`);
  };
  const row = (...shapes: Contour[][]): Contour[] => shapes.flatMap((s, k) => turned(s, 0, k * 60));

  it('gathers alike parts, and warns of those that go in wrongly two ways', () => {
    expect(findings(row(rectangle(20, 20), S, rectangle(20, 20), COMMA))).toEqual([
      'warn turned-part: Parts 1 and 3 also fit turned by 90, 180 or 270 degrees, or turned over: the grain would run across; mark the top edge of each before it is cut out.',
      'note turned-part: Part 2 also fits turned by 180 degrees: the grain would run along all the same, but its figure would not match; mark its top edge before it is cut out.',
    ]);
  });

  it('is a note where both woods are one', () => {
    const [first] = findings(rectangle(20, 20), { 'woods.plug': 'white ash' });
    expect(first).toMatch(/^note turned-part: The part also fits turned by 90, 180 or 270 degrees/);
  });

  it('names parts of one shape that lie turned', () => {
    const [only, ...more] = findings([...COMMA, ...turned(COMMA, 90, 60, 0), ...turned(COMMA, 180, 120, 0)]);
    expect(more).toEqual([]);
    expect(only).toMatch(/^warn alike-parts: Parts 1 to 3 have one shape, turned to different sides/);
  });

  it('looks at the whole plug on a carrier, which nobody turns over', () => {
    const four = [0, 90, 180, 270].flatMap((d) => turned(turned(COMMA, 0, 20, 5), d));
    expect(findings(four, { 'fit.plug': 'carrier', 'stock.plug': 20 })).toEqual([
      'warn turned-part: The plug on its carrier also fits turned by 90, 180 or 270 degrees: the grain would run across; mark its top edge before it is cut out.',
    ]);
    expect(findings(rectangle(30, 20), { 'fit.plug': 'carrier', 'stock.plug': 20 })[0]).toMatch(
      /^note turned-part: The plug on its carrier also fits turned by 180 degrees: /,
    );
    expect(findings(row(S, COMMA), { 'fit.plug': 'carrier', 'stock.plug': 20 })).toEqual([]);
  });
});
