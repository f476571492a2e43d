import { Helper } from 'dxf';
import { describe, expect, it } from 'vitest';
import {
  area,
  bounds,
  distanceToBoundary,
  type Region,
  windingNumber,
} from '../../../src/geometry/region.js';
import { expectSound } from '../../support/artwork.js';
import { seeded } from '../../support/random.js';
import {
  arcEntity,
  as,
  block,
  circleEntity,
  dxf,
  entity,
  insert,
  layer,
  lineEntity,
  lines,
  poly,
  read,
  rectangle,
  region,
  said,
} from './dxf-support.js';

const H = Math.SQRT1_2;

/** A circle of radius 10 as a rational quadratic of nine control points (Piegl and Tiller, The NURBS Book, 7.5). */
const NURBS_CIRCLE = spline(
  2,
  [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
  [
    [10, 0],
    [10, 10],
    [0, 10],
    [-10, 10],
    [-10, 0],
    [-10, -10],
    [0, -10],
    [10, -10],
    [10, 0],
  ],
  [1, H, 1, H, 1, H, 1, H, 1],
);

function spline(
  degree: number,
  knots: readonly number[],
  points: readonly (readonly [number, number])[],
  weights: readonly number[] = [],
): string {
  return entity(
    'SPLINE',
    [8, '0'],
    [71, degree],
    [72, knots.length],
    [73, points.length],
    ...knots.map((k) => [40, k] as const),
    ...weights.map((w) => [41, w] as const),
    ...points.flatMap(([x, y]) => [[10, x] as const, [20, y] as const]),
  );
}

function box(r: Region): number[] {
  const b = bounds(r.contours);
  return [b.maxX - b.minX, b.maxY - b.minY];
}

/** Vertices of an older polyline. */
function old(flags: number, ...vertices: (readonly [number, number, number?, number?])[]): string {
  const list = vertices.map(([x, y, b = 0, f = 0]) =>
    entity('VERTEX', [8, '0'], [10, x], [20, y], [42, b], [70, f]),
  );
  return `${entity('POLYLINE', [8, '0'], [66, 1], [70, flags])}${list.join('')}${entity('SEQEND')}`;
}

describe('the area of an entity by closed form', () => {
  // A bulge is tan(sweep / 4): 1 is a half circle.
  const slot = 20 * 10 + Math.PI * 25;
  it.each([
    [
      'lines',
      lines([
        [0, 0],
        [30, 0],
        [0, 40],
        [0, 0],
      ]),
      600,
    ],
    ['circle', circleEntity(7, -3, 10), 100 * Math.PI],
    [
      'arcs of 120 degrees',
      [0, 120, 240].map((a) => arcEntity(5, 5, 12, a, a + 120)).join(''),
      144 * Math.PI,
    ],
    [
      'an arc over 0 degrees and its chord',
      arcEntity(0, 0, 10, 270, 90) + lineEntity(0, -10, 0, 10),
      50 * Math.PI,
    ],
    [
      'an arc of 350 degrees and its chord',
      arcEntity(0, 0, 10, 5, 355) +
        lineEntity(
          10 * Math.cos(Math.PI / 36),
          10 * Math.sin(Math.PI / 36),
          10 * Math.cos(Math.PI / 36),
          -10 * Math.sin(Math.PI / 36),
        ),
      50 * (Math.PI * (350 / 180) + Math.sin(Math.PI / 18)),
    ],
    [
      'light polyline with bulges',
      poly([
        [0, 0],
        [20, 0, 1],
        [20, 10],
        [0, 10, 1],
      ]),
      slot,
    ],
    [
      'light polyline, clockwise',
      poly([
        [0, 0, -1],
        [0, 10],
        [20, 10, -1],
        [20, 0],
      ]),
      slot,
    ],
    [
      'light polyline left open',
      poly(
        [
          [0, 0],
          [20, 0, 1],
          [20, 10],
          [0, 10, 1],
          [0, 0],
        ],
        false,
      ),
      slot,
    ],
    [
      'bulge of 300 degrees',
      poly([
        [0, 0, Math.tan((75 / 180) * Math.PI)],
        [10, 0],
      ]),
      100 * ((300 / 360) * Math.PI + Math.sin(Math.PI / 3) / 2),
    ],
    ['older polyline with bulges', old(1, [0, 0], [20, 0, 1], [20, 10], [0, 10, 1]), slot],
    [
      'older polyline with the frame of a spline',
      old(5, [0, 0, 0, 16], [0, 0], [10, 0], [99, 99, 0, 16], [10, 10], [0, 10]),
      100,
    ],
    ['nurbs circle', NURBS_CIRCLE, 100 * Math.PI],
    [
      'spline of degree 1',
      spline(
        1,
        [0, 0, 1, 2, 3, 4, 4],
        [
          [0, 0],
          [8, 0],
          [8, 5],
          [0, 5],
          [0, 0],
        ],
      ),
      40,
    ],
  ] as const)('%s', (_, text, expected) => {
    const r = region(dxf(text));
    expect(area(r)).toBeCloseTo(expected, 6);
    expectSound(r);
  });

  it.each([
    ['ellipse', [0, 2 * Math.PI], '', Math.PI * 450],
    ['half an ellipse and its axis', [0, Math.PI], lineEntity(-24, -18, 24, 18), Math.PI * 225],
  ] as const)('%s, within the fit of curves', (_, [from, to], more, expected) => {
    // Major axis of 30 mm along (4, 3), half as wide: its area is pi a b, its outline under 146 mm long.
    const text = entity(
      'ELLIPSE',
      [8, '0'],
      [10, 0],
      [20, 0],
      [11, 24],
      [21, 18],
      [40, 0.5],
      [41, from],
      [42, to],
    );
    const r = region(dxf(text + more));
    expect(Math.abs(area(r) - expected)).toBeLessThan(146 * 0.0015);
  });

  it('follows splines of any degree where de Boor puts them, weights too', () => {
    const random = seeded(7);
    for (const degree of [2, 3, 4, 5])
      for (const rational of [false, true]) {
        const n = 12;
        const points = Array.from({ length: n }, (_, i): [number, number] => {
          const a = (i * 2 * Math.PI) / (n - 1);
          const r = 30 + 6 * random();
          return [r * Math.cos(a), r * Math.sin(a)];
        });
        points[n - 1] = points[0];
        const inner = Array.from({ length: n - degree - 1 }, (_, i) => i + 1 + (i % 3 === 2 ? -1 : 0));
        const last = n - degree;
        const knots = [
          ...Array(degree + 1).fill(0),
          ...inner.sort((a, b) => a - b),
          ...Array(degree + 1).fill(last),
        ];
        const weights = points.map(() => (rational ? 0.5 + random() : 1));
        const drawing = read(dxf(spline(degree, knots, points, weights)));
        const r = { contours: drawing.figures(1).flatMap((p) => p.region.contours) };
        const [mx, my] = drawing.middle;
        for (let k = 0; k < 300; k++) {
          const [x, y] = byBasis(degree, knots, points, weights, (k / 300) * last);
          expect(distanceToBoundary(r, x - mx, y - my)).toBeLessThan(0.002);
        }
      }
  });
});

/** A point of a spline by the recursive definition of its basis functions (Cox and de Boor). */
function byBasis(
  p: number,
  u: number[],
  points: [number, number][],
  w: number[],
  t: number,
): [number, number] {
  const basis = (i: number, d: number): number => {
    if (d === 0) return t >= u[i] && t < u[i + 1] ? 1 : 0;
    const a = u[i + d] > u[i] ? ((t - u[i]) / (u[i + d] - u[i])) * basis(i, d - 1) : 0;
    const b =
      u[i + d + 1] > u[i + 1] ? ((u[i + d + 1] - t) / (u[i + d + 1] - u[i + 1])) * basis(i + 1, d - 1) : 0;
    return a + b;
  };
  let [x, y, sum] = [0, 0, 0];
  points.forEach(([px, py], i) => {
    const b = basis(i, p) * w[i];
    x += b * px;
    y += b * py;
    sum += b;
  });
  return [x / sum, y / sum];
}

describe('against an independent reader', () => {
  const blade = poly([
    [0, 0, 0.3],
    [12, 1, -0.2],
    [14, 9, 0.6],
    [2, 8],
  ]);
  const files: [string, string][] = [
    ['shapes', dxf(blade + circleEntity(40, 5, 8) + circleEntity(42, 6, 3) + rectangle(0, 20, 9, 5))],
    [
      'blocks within blocks, turned and scaled unevenly',
      dxf(
        insert('leaf', 10, 20, [41, 2], [42, 0.7], [50, 33]) +
          insert('pair', -40, 10, [50, -20]) +
          insert('leaf', 90, 0, [41, -1], [42, 1]),
        {
          blocks:
            block('leaf', 3, 2, blade) +
            block('pair', 0, 0, insert('leaf', 0, 0) + insert('leaf', 30, 5, [50, 90])),
        },
      ),
    ],
    [
      'columns and rows',
      dxf(insert('hole', 1, 2, [70, 3], [71, 2], [44, 15], [45, 25], [41, 1.4], [42, 0.6], [50, 30]), {
        blocks: block('hole', 0, 0, circleEntity(2, 1, 5)),
      }),
    ],
    [
      'facing down',
      dxf(
        circleEntity(30, 2, 6, '0', [210, 0], [220, 0], [230, -1]) +
          arcEntity(5, 5, 12, 20, 140, [210, 0], [220, 0], [230, -1]) +
          lines([
            [-5 - 12 * Math.cos(Math.PI / 9), 5 + 12 * Math.sin(Math.PI / 9)],
            [-5 - 12 * Math.cos((7 * Math.PI) / 9), 5 + 12 * Math.sin((7 * Math.PI) / 9)],
          ]) +
          insert('leaf', 10, 30, [50, 33], [230, -1]),
        { blocks: block('leaf', 3, 2, blade) },
      ),
    ],
  ];
  it.each(files)('%s enclose the same places by the even-odd rule', (_, text) => {
    const drawing = read(text);
    const r = { contours: drawing.figures(1).flatMap((p) => p.region.contours) };
    const [mx, my] = drawing.middle;
    const rings = new Helper(text).toPolylines().polylines.map((p) => p.vertices);
    const random = seeded(11);
    const b = bounds(r.contours);
    let [inside, asked] = [0, 0];
    for (let k = 0; k < 4000; k++) {
      const x = b.minX + (b.maxX - b.minX) * random();
      const y = b.minY + (b.maxY - b.minY) * random();
      // The other reader draws arcs in chords of 5 degrees: near the outline it does not count.
      if (distanceToBoundary(r, x, y) < 0.1) continue;
      asked++;
      const ours = windingNumber(r.contours, x, y) > 0;
      const theirs = rings.filter((ring) => oddCrossings(ring, x + mx, y + my)).length % 2 === 1;
      if (ours) inside++;
      expect(ours, `at ${x + mx}, ${y + my}`).toBe(theirs);
    }
    expect(asked).toBeGreaterThan(3000);
    expect(inside).toBeGreaterThan(100);
  });
});

function oddCrossings(ring: readonly (readonly number[])[], x: number, y: number): boolean {
  let odd = false;
  ring.forEach(([x0, y0], i) => {
    const [x1, y1] = ring[(i + 1) % ring.length];
    if (y0 <= y !== y1 <= y && x < x0 + ((x1 - x0) * (y - y0)) / (y1 - y0)) odd = !odd;
  });
  return odd;
}

describe('units, layers, blocks and facing', () => {
  // Codes and sizes: DXF reference, $INSUNITS; inch 25.4 mm exactly (international yard, 1959), others by SI prefixes.
  it.each([
    [1, 25.4],
    [2, 304.8],
    [4, 1],
    [5, 10],
    [6, 1000],
    [8, 2.54e-5],
    [9, 0.0254],
    [10, 914.4],
    [13, 0.001],
    [14, 100],
    [15, 1e4],
    [16, 1e5],
  ])('reads unit %i as %f mm', (code, mm) => {
    const side = 20 / mm;
    const drawing = read(dxf(rectangle(0, 0, side, side), { header: `9\n$INSUNITS\n70\n${code}\n` }));
    expect(area({ contours: drawing.figures(1)[0].region.contours })).toBeCloseTo(400, 6);
    expect(drawing.unit).toBe(code === 1 ? 'in' : 'mm');
    expect(drawing.extent).toBeCloseTo(20, 9);
  });

  it('takes mm where none is named, and says so', () => {
    for (const header of ['', '9\n$INSUNITS\n70\n0\n']) {
      const drawing = read(dxf(rectangle(0, 0, 20, 20), { header }));
      expect(drawing.unit).toBe(null);
      expect(drawing.extent).toBe(20);
    }
  });

  const layers = layer('CUT') + layer('Off', 0, -3) + layer('Frozen', 1);
  const on = (name: string, x: number) => circleEntity(x, 0, 5, name);
  it('leaves out layers that are off or frozen, and picks layers by name', () => {
    const all = dxf(on('CUT', 0) + on('Off', 20) + on('Frozen', 40) + on('marks', 60), { layers });
    const circles = (r: Region): number => Math.round(area(r) / (25 * Math.PI));
    expect(circles(region(all))).toBe(2);
    expect(circles(region(all, as({ layer: 'cut' })))).toBe(1);
    expect(box(region(all, as({ layer: 'CUT, MARKS' })))[0]).toBeCloseTo(70, 9);
    expect(said(all, as({ layer: 'cutt' }))).toBe(
      'pattern.layer: no layer "cutt" of part.dxf holds anything; those that do: "CUT", "Off", "Frozen", "marks"',
    );
    expect(said(all, as({ layer: 'off' }))).toMatch(
      /^part\.dxf: shows no lines; give closed outlines on layers/,
    );
  });

  it("puts a block's layer 0 on its insert's layer, and hides a frozen insert whole", () => {
    const blocks = block('b', 0, 0, on('0', 0) + on('CUT', 20));
    const put = (name: string) =>
      dxf(entity('INSERT', [8, name], [2, 'B'], [10, 0], [20, 0]), { blocks, layers });
    expect(box(region(put('CUT')))[0]).toBeCloseTo(30, 9);
    expect(box(region(put('Off')))[0]).toBeCloseTo(10, 9);
    expect(said(put('Frozen'))).toMatch(/shows no lines/);
  });

  it('mirrors what faces down, x for x', () => {
    const down = [
      [210, 0],
      [220, 0],
      [230, -1],
    ] as const;
    const flipped = read(
      dxf(arcEntity(10, 0, 5, 0, 90, ...down) + lineEntity(-10, 0, -15, 0) + lineEntity(-10, 0, -10, 5)),
    );
    expect(area(flipped.figures(1)[0].region)).toBeCloseTo((25 * Math.PI) / 4, 9);
    expect(flipped.middle[0]).toBeCloseTo(-12.5, 9);
    // Half a circle stands out at x = 20: the bulge turns with its polyline.
    const tab = read(
      dxf(
        poly(
          [
            [0, 0],
            [20, 0, 1],
            [20, 10],
            [0, 10],
          ],
          true,
          ...down,
        ),
      ),
    );
    expect(area(tab.figures(1)[0].region)).toBeCloseTo(200 + 12.5 * Math.PI, 9);
    expect(tab.middle).toEqual([expect.closeTo(-12.5, 9), 5]);
    // An ellipse has its centre and axis in the world whichever way it faces; its parameter runs the other way.
    const half = entity(
      'ELLIPSE',
      [8, '0'],
      [10, 0],
      [20, 0],
      [11, 10],
      [21, 0],
      [40, 0.5],
      [41, 0],
      [42, Math.PI],
      ...down,
    );
    expect(read(dxf(half + lineEntity(-10, 0, 10, 0))).middle[1]).toBeCloseTo(-2.5, 6);
  });

  it('leaves paper space, hidden entities and what is no outline out, and says so', () => {
    const text = dxf(
      rectangle(0, 0, 10, 10) +
        entity('POINT', [8, '0'], [10, 1]) +
        entity('POINT', [8, '0']) +
        entity('CIRCLE', [8, '0'], [67, 1], [10, 50], [40, 4]) +
        entity('CIRCLE', [8, '0'], [60, 1], [10, 50], [40, 4]) +
        entity('CIRCLE', [8, '0'], [210, 1], [220, 0], [230, 0], [10, 50], [40, 4]),
    );
    expect(area(region(text))).toBeCloseTo(100, 9);
    expect(read(text).repairs.map((r) => [r.kind, r.what, r.count])).toEqual([
      ['left-out', expect.stringMatching(/^POINT, the first on line \d+$/), 2],
      ['left-out', expect.stringMatching(/^CIRCLE in a plane of its own/), 1],
    ]);
  });
});

describe('a DXF that cannot be read as it looks', () => {
  it.each([
    [
      entity('TEXT', [8, 'notes'], [1, 'x']),
      /^part\.dxf:\d+: TEXT on layer "notes": is text.*lettering generator/,
    ],
    [entity('MTEXT', [8, '0']), /MTEXT: is text/],
    [entity('3DFACE', [8, '0']), /3DFACE: is a body or face in space/],
    [old(64), /POLYLINE: is a mesh in space/],
    [insert('gone', 0, 0), /INSERT: shows the block "gone", which is not in the file/],
    [entity('LINE', [10, 'abc']), /LINE: has "abc" under group code 10, which is no number/],
    [entity('LINE', [10, '1e308'], [11, 3]), /LINE: has "1e308" under group code 10/],
    [entity('CIRCLE', [40, 'NaN']), /CIRCLE: has "NaN"/],
    [entity('CIRCLE', [40, -2]), /radius below 0/],
    [
      entity('SPLINE', [71, 3], [11, 0], [21, 0], [11, 9], [21, 9]),
      /spline of fit points alone.*export it with control points/,
    ],
    [spline(7, [0, 1], [[0, 0]]), /degree 7; 1 to 5 are read/],
    [
      spline(
        2,
        [0, 0, 1],
        [
          [0, 0],
          [1, 0],
          [1, 1],
        ],
      ),
      /3 control points and 3 knots/,
    ],
    [
      spline(
        1,
        [0, 2, 1, 3],
        [
          [0, 0],
          [1, 0],
        ],
      ),
      /knots do not rise/,
    ],
    [
      spline(
        1,
        [0, 0, 1, 1],
        [
          [0, 0],
          [1, 0],
        ],
        [1, 0],
      ),
      /weights are not above 0/,
    ],
    [
      entity('HATCH', [8, '0']) + entity('DIMENSION', [8, '0']),
      /^part\.dxf: shows no lines \(it holds 1 HATCH, 1 DIMENSION, which are no outlines\)/,
    ],
    [circleEntity(0, 0, 1e9), /reaches over 50 m/],
    [circleEntity(0, 0, 0.05), /encloses nothing/],
    ['LINE\n1\n', /^part\.dxf:\d+: has "LINE" where a group code/],
  ])('says where and what: %#', (inside, message) => {
    expect(said(dxf(inside))).toMatch(message);
    for (const line of said(dxf(inside)).split('\n')) expect(line.length).toBeLessThan(400);
  });

  it.each([
    ['', /holds no SECTION/],
    ['0\nSECTION\n2\nENTITIES\n0\nLINE\n8', /^part\.dxf:7: ends in the middle of a pair/],
    ['0\nSECTION\n2\nENTITIES\n0\nLINE\n8\n0\n', /ends before its EOF/],
    ['0\nPOLYLINE\n', /has "POLYLINE" where a SECTION should start/],
    ['\0\x01junk'.repeat(99), /where a group code/],
  ])('says what is wrong with a broken file: %#', (text, message) => {
    expect(said(text)).toMatch(message);
  });

  it('names its line', () => {
    const text = dxf(rectangle(0, 0, 5, 5) + entity('TEXT', [8, '0']));
    const line = Number(/part\.dxf:(\d+)/.exec(said(text))![1]);
    expect(text.split('\n')[line - 1]).toBe('TEXT');
  });
});

describe('a DXF that would take for ever', () => {
  const chain = (n: number) =>
    Array.from({ length: n }, (_, k) =>
      block(`b${k}`, 0, 0, insert(`b${k + 1}`, 0, 0) + insert(`b${k + 1}`, 1, 0)),
    );
  const zigzag = Array.from({ length: 60_000 }, (_, i) => `10\n${i / 1000}\n20\n${i % 2}\n`).join('');
  it.each<[string, () => string, RegExp]>([
    ['a million entities of nothing', () => dxf('0\nLINE\n'.repeat(990_000)), /shows no lines/],
    ['more than a million entities', () => dxf('0\nLINE\n'.repeat(1_100_000)), /more than 1000000 entities/],
    [
      'blocks that double forty times',
      () => dxf(insert('b0', 0, 0), { blocks: chain(40).join('') + block('b40', 0, 0, '') }),
      /more than 1000000 entities/,
    ],
    [
      'a block within itself',
      () => dxf(insert('a', 0, 0), { blocks: block('a', 0, 0, insert('A', 1, 1)) }),
      /shows the block "a" within itself/,
    ],
    [
      'blocks nested very deep',
      () =>
        dxf(insert('b0', 0, 0), {
          blocks: Array.from({ length: 70 }, (_, k) => block(`b${k}`, 0, 0, insert(`b${k + 1}`, 0, 0))).join(
            '',
          ),
        }),
      /nested deeper than 64 blocks/,
    ],
    [
      'columns and rows of nothing',
      () => dxf(insert('a', 0, 0, [70, 32767], [71, 32767]), { blocks: block('a', 0, 0, '') }),
      /more than 1000000 entities/,
    ],
    [
      'a polyline of very many corners',
      () => dxf(entity('LWPOLYLINE') + '10\n1\n20\n2\n'.repeat(1_100_000)),
      /more than 1000000 edges/,
    ],
    ['one line very often', () => dxf(lineEntity(0, 0, 9, 9).repeat(50_000)), /cross each other too often/],
    [
      'a zigzag crossed by one line',
      () => dxf(entity('LWPOLYLINE', [70, 1]) + zigzag),
      /cross each other at too many places/,
    ],
    ['more than 20 MB', () => '0\n'.repeat(10_000_001), /holds 20\.0 MB; a drawing is 20 MB at most/],
  ])(
    'is refused within seconds: %s',
    (_, text, message) => {
      const made = text();
      const start = performance.now();
      expect(said(made)).toMatch(message);
      // Five seconds by itself; the bound is wide since tests run side by side.
      expect(performance.now() - start).toBeLessThan(15_000);
    },
    60_000,
  );
});
