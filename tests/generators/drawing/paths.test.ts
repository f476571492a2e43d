import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcBetween, arcPoint } from '../../../src/generators/drawing/ellipse.js';
import { readPathData } from '../../../src/generators/drawing/path-data.js';
import { area, bounds } from '../../../src/geometry/region.js';
import { shown, svg } from './support.js';

/** What these tests use of paper.js, whose core build has no types of its own. */
const paper = createRequire(import.meta.url)('paper/dist/paper-core.js') as {
  setup(size: readonly [number, number]): void;
  CompoundPath: new (data: string) => { unite(): { readonly area: number } };
};
paper.setup([1, 1]);

describe('path data (SVG 2, section 9.3: its grammar allows all of these)', () => {
  it.each([
    ['M10-20L30.5.5', 'M 10 -20 L 30.5 0.5'],
    ['M1.5.5.25-.5', 'M 1.5 0.5 L 0.25 -0.5'],
    ['M0 0 10 0 10 10z', 'M 0 0 L 10 0 L 10 10 Z'],
    ['m1 1 10 0 0 10z', 'M 1 1 L 11 1 L 11 11 Z'],
    ['M0 0a5 6 30 0110 3', 'M 0 0 A 5 6 30 0 1 10 3'],
    ['M0 0a5,6,30,1,0,10,3 5 6 0 00-4-2', 'M 0 0 A 5 6 30 1 0 10 3 A 5 6 0 0 0 6 1'],
    ['M0,0\n\tL1e1,+2E-1', 'M 0 0 L 10 0.2'],
    ['M 09 007.5 L.5e1 4.', 'M 9 7.5 L 5 4'],
    ['M5 5h10v-3H2V8', 'M 5 5 L 15 5 L 15 2 L 2 2 L 2 8'],
    ['M0 0c1 2 3 4 5 6s7 8 9 9', 'M 0 0 C 1 2 3 4 5 6 C 7 8 12 14 14 15'],
    ['M0 0s7 8 9 9', 'M 0 0 C 0 0 7 8 9 9'],
    ['M0 0q5 0 5 5t5 5T0 20', 'M 0 0 Q 5 0 5 5 Q 5 10 10 10 Q 15 10 0 20'],
    // A smooth command after one of the other kind has nothing to mirror.
    ['M0 0q5 0 5 5s9 9 9 0', 'M 0 0 Q 5 0 5 5 C 5 5 14 14 14 5'],
    ['M10 10h5v5z l-3 0 0-3z', 'M 10 10 L 15 10 L 15 15 Z M 10 10 L 7 10 L 7 7 Z'],
    ['M10 10h5v5zm1 1h3v3z', 'M 10 10 L 15 10 L 15 15 Z M 11 11 L 14 11 L 14 14 Z'],
    ['M0 0A0 5 0 0 1 9 9', 'M 0 0 L 9 9'],
    ['M0 0L9 0A5 5 0 0 1 9 0L9 9', 'M 0 0 L 9 0 L 9 9'],
  ])('reads %s as %s', (odd, plain) => {
    expect(readPathData(odd)).toEqual(readPathData(plain));
  });

  it('has steps as written', () => {
    expect(readPathData('M1 2L3 4Q5 6 7 8C1 2 3 4 5 6Z')).toEqual([
      {
        start: [1, 2],
        steps: [
          { kind: 'line', to: [3, 4] },
          { kind: 'quadratic', handle: [5, 6], to: [7, 8] },
          { kind: 'cubic', first: [1, 2], second: [3, 4], to: [5, 6] },
        ],
        closed: true,
      },
    ]);
    expect(readPathData('')).toEqual([]);
    expect(readPathData('none')).toEqual([]);
  });

  it.each([
    ['L0 0', /no M at character 1/],
    ['M0 0L1', /cannot be read/],
    ['M0 0L1 2,', /cannot be read/],
    ['M0 0A1 1 0 2 0 3 3', /no flag at character 12, "2 0 3 3"/],
    ['M0 0X3', /cannot be read/],
    ['M0 0L1e999 0', /a number too large/],
    ['M1e308 0l1e308 0', /too far/],
    ['M0 0L1..5 3', /cannot be read/],
    ['M0 0R1 2 3 4', /cannot be read/],
  ])('refuses %s', (data, message) => {
    expect(() => readPathData(data)).toThrow(message);
  });

  it('gives random paths the area that paper.js gives them', () => {
    const n = fc.integer({ min: 5, max: 95 });
    const d = fc.integer({ min: -30, max: 30 });
    const step = fc.integer({ min: 1, max: 30 });
    const flag = fc.constantFrom('0', '1');
    const leg = fc.oneof(
      fc.tuple(n, n).map(([x, y]) => `L${x} ${y}`),
      fc.tuple(d, d).map(([x, y]) => `l${x} ${y}`),
      fc.tuple(n).map(([x]) => `H${x}`),
      fc.tuple(d).map(([y]) => `v${y}`),
      fc.tuple(n, n, n, n, n, n).map((v) => `C${v.join(' ')}`),
      fc.tuple(d, d, d, d).map((v) => `s${v.join(' ')}`),
      fc.tuple(d, d, d, d).map((v) => `q${v.join(' ')}`),
      fc.tuple(n, n).map((v) => `T${v.join(' ')}`),
      fc
        .tuple(fc.integer({ min: 8, max: 40 }), fc.integer({ min: 8, max: 40 }), d, flag, flag, d, step)
        .map(([rx, ry, turn, large, sweep, x, y]) => `a${rx} ${ry} ${turn} ${large}${sweep}${x} ${y}`),
    );
    let compared = 0;
    fc.assert(
      fc.property(fc.tuple(n, n), fc.array(leg, { minLength: 2, maxLength: 7 }), ([x, y], legs) => {
        const data = `M${x} ${y}${legs.join('')}Z`;
        // paper.js does not know glued flags.
        const parted = data.replace(/(a\S+ \S+ \S+) ([01])([01])/g, '$1 $2 $3 ');
        const wanted = Math.abs(new paper.CompoundPath(parted).unite().area);
        fc.pre(wanted > 20);
        compared++;
        // The nonzero region, self-crossings resolved by either. paper.js draws arcs as cubics, which stray by 2.7e-4.
        const ours = shown(svg(`<path d="${data}"/>`));
        const box = bounds(ours.contours);
        const stray = 5e-4 * (box.maxX - box.minX) * (box.maxY - box.minY);
        expect(Math.abs(area(ours) - wanted), data).toBeLessThan(0.1 + stray);
      }),
      { seed: 7, numRuns: 150 },
    );
    expect(compared).toBeGreaterThan(100);
  });
});

describe('elliptical arcs (SVG 2, elliptical arc implementation notes)', () => {
  const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
  const arcs = fc.record({
    start: fc.tuple(number(-50, 50), number(-50, 50)),
    end: fc.tuple(number(-50, 50), number(-50, 50)),
    rx: number(0.5, 80),
    ry: number(0.5, 80),
    turn: number(-400, 400),
    large: fc.boolean(),
    positive: fc.boolean(),
  });

  it('start and end where told, turn as the flags say, and lie on an ellipse of the radii or the least that reaches', () => {
    fc.assert(
      fc.property(arcs, ({ start, end, rx, ry, turn, large, positive }) => {
        fc.pre(Math.hypot(end[0] - start[0], end[1] - start[1]) > 0.1);
        const arc = arcBetween(start, end, rx, ry, turn, large, positive)!;
        const p = arcPoint(arc, arc.from);
        const q = arcPoint(arc, arc.from + arc.by);
        for (const i of [0, 1]) {
          expect(p[i]).toBeCloseTo(start[i], 5);
          expect(q[i]).toBeCloseTo(end[i], 5);
        }
        expect(arc.by > 0).toBe(positive);
        const u = Math.hypot(...arc.u);
        const v = Math.hypot(...arc.v);
        expect(u / v).toBeCloseTo(rx / ry, 6);
        expect(u).toBeGreaterThan(rx * (1 - 1e-12));
        const reached = u < rx * (1 + 1e-12);
        // Radii made longer leave exactly half an ellipse.
        if (!reached) expect(Math.abs(arc.by)).toBeCloseTo(Math.PI, 5);
        else if (Math.abs(Math.abs(arc.by) - Math.PI) > 1e-6) expect(Math.abs(arc.by) > Math.PI).toBe(large);
        expect(Math.atan2(arc.u[1], arc.u[0]) * Math.sign(1)).toBeCloseTo(
          Math.atan2(Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)),
          6,
        );
      }),
      { seed: 11, numRuns: 400 },
    );
  });

  it('are halves of a circle over its diameter, the sweep flag choosing which (closed form)', () => {
    expect(arcPoint(arcBetween([0, 0], [10, 0], 5, 5, 0, false, true)!, 1.5 * Math.PI)[1]).toBeCloseTo(-5, 9);
    const half = '<path d="M20 20A15 15 0 0 1 50 20Z"/>';
    expect(area(shown(svg(half)))).toBeCloseTo((Math.PI * 225) / 2, 6);
    // Radii of 1 over a chord of 30 grow to 15.
    expect(area(shown(svg('<path d="M20 20A1 1 0 0 0 50 20Z"/>')))).toBeCloseTo((Math.PI * 225) / 2, 6);
    expect(area(shown(svg('<path d="M20 20A-15 15 0 0 0 50 20Z"/>')))).toBeCloseTo((Math.PI * 225) / 2, 6);
  });
});
