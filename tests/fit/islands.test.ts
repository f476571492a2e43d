import { describe, expect, it } from 'vitest';
import { build } from '../../src/build.js';
import { deepestPoint } from '../../src/fit/deepest-point.js';
import { islandsOf, readingOrder } from '../../src/fit/islands.js';
import type { Pair } from '../../src/fit/pair.js';
import { circle, type Region, reversedContour } from '../../src/geometry/region.js';
import { mirrorX } from '../../src/geometry/transform.js';
import { draw } from '../../src/output/draw.js';
import { marksOf } from '../../src/output/marks.js';
import { readDxf, readSvg } from '../../src/proof/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { rounded, sampleJob, samplePattern } from '../output/sample-job.js';
import { exampleText } from '../recipe/example.js';
import { seeded } from '../support/random.js';
import type { Ring } from '../support/reference.js';
import { ringsOf } from '../support/rings.js';

const box = (x: number, y: number, w = 10, h = 10) => ({ minX: x, minY: y, maxX: x + w, maxY: y + h });

/** Is a point inside rings, even-odd? Shimrat 1962, "Algorithm 112: position of point relative to polygon". */
function inside(rings: readonly Ring[], x: number, y: number): boolean {
  let odd = false;
  for (const ring of rings)
    ring.forEach(([ax, ay], i) => {
      const [bx, by] = ring[(i + 1) % ring.length]!;
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) odd = !odd;
    });
  return odd;
}

describe('reading order', () => {
  it('goes by rows from the top, left to right, whatever order and last digits the boxes come in', () => {
    const random = seeded(7);
    const cells = Array.from({ length: 20 }, (_, k) => ({
      k,
      x: (k % 5) * 20,
      y: 100 - Math.floor(k / 5) * 20,
    }));
    for (let trial = 0; trial < 50; trial++) {
      const order = [...cells].sort(() => random() - 0.5);
      const noise = (): number => (random() - 0.5) * 2e-9;
      // Boxes of a row stand up to 3 mm out of line.
      const boxes = order.map((c) => box(c.x + noise(), c.y + (c.k % 3) + noise()));
      expect(readingOrder(boxes).map((i) => order[i]!.k)).toEqual(cells.map((c) => c.k));
    }
  });

  it('goes downwards where two of a row stand above each other, whatever the last digits', () => {
    for (const noise of [-1e-9, 0, 1e-9])
      expect(readingOrder([box(noise, 0), box(0, 3, 10, 10), box(20, 1)])).toEqual([1, 0, 2]);
  });

  it('is not thrown off by one part as tall as all rows', () => {
    const small = [box(0, 40), box(20, 40), box(0, 0), box(20, 0)];
    const tall = box(60, -20, 10, 90);
    expect(readingOrder([...small, tall])).toEqual([0, 1, 4, 2, 3]);
  });
});

describe('the deepest point', () => {
  it('of a triangle is as deep as its inscribed circle: area over half the perimeter (Euclid IV.4)', () => {
    const triangle = rounded(
      [
        [0, 0],
        [40, 0],
        [10, 30],
      ],
      1e-6,
    );
    const half = (40 + Math.hypot(30, 30) + Math.hypot(10, 30)) / 2;
    const inradius = (40 * 30) / 2 / half;
    const { room } = deepestPoint([triangle]);
    expect(room).toBeLessThanOrEqual(inradius + 1e-6);
    expect(room).toBeGreaterThan(0.95 * inradius);
  });

  it('of a ring is in the middle of its band, and never in its hole', () => {
    const { at, room } = deepestPoint([circle(5, -3, 20), reversedContour(circle(5, -3, 14))]);
    expect(room).toBeGreaterThan(0.9 * 3);
    expect(Math.abs(Math.hypot(at[0] - 5, at[1] + 3) - 17)).toBeLessThan(0.3);
  });

  it('of a long thin part is inside it', () => {
    const { at, room } = deepestPoint([
      rounded(
        [
          [-200, 0],
          [200, 1],
          [200, 5],
          [-200, 4],
        ],
        1,
      ),
    ]);
    expect(room).toBeGreaterThan(1.8);
    expect(Math.abs(at[0])).toBeLessThan(200);
  });
});

describe('islands', () => {
  const shuffled = (mirrored: boolean): Pair => {
    const [ell, outer, hole, star] = samplePattern(1.9, 0.08).contours;
    // The plug's contours in another order than the pocket's: only where they lie can tell whose they are.
    const plug: Region = { contours: [star!, hole!, ell!, outer!] };
    return { pocket: samplePattern(1.9, 0), plug: mirrored ? mirrorX(plug) : plug, mirrored };
  };

  it.each([false, true])('pair each plug part with the pocket part it lies in (mirrored: %s)', (mirrored) => {
    const islands = islandsOf(shuffled(mirrored));
    // Up right the ring, left the ell whose middle is lower, then the star.
    expect(islands.map((i) => i.number)).toEqual([1, 2, 3]);
    expect(islands.map((i) => i.plug.length)).toEqual([2, 1, 1]);
    for (const { plug, pocket, at, room } of islands) {
      const set = mirrored ? mirrorX({ contours: plug }).contours : plug;
      const pocketRings = ringsOf(pocket, 0.001);
      for (const ring of ringsOf(set, 0.001))
        for (const [x, y] of ring) expect(inside(pocketRings, x, y)).toBe(true);
      for (let k = 0; k < 12; k++) {
        const a = (k * Math.PI) / 6;
        const [x, y] = [at[0] + 0.999 * room * Math.cos(a), at[1] + 0.999 * room * Math.sin(a)];
        expect(inside(ringsOf(set, 0.001), x, y)).toBe(true);
      }
    }
  });

  it('tell a dot in a ring from the ring', () => {
    const ring = (r: number, R: number) => [circle(0, 0, R), reversedContour(circle(0, 0, r))];
    const pocket = { contours: [...ring(10, 20), circle(0, 0, 5)] };
    const plug = { contours: [circle(0, 0, 4.9), ...ring(10.1, 19.9)] };
    const islands = islandsOf({ pocket, plug, mirrored: false });
    for (const i of islands) expect(i.pocket.length).toBe(i.plug.length);
    expect(islands.map((i) => i.plug.length).sort()).toEqual([1, 2]);
  });

  it('say when a plug part lies in no pocket', () => {
    const { pocket } = shuffled(false);
    const plug = { contours: [circle(70, 70, 5)] };
    expect(() => islandsOf({ pocket, plug, mirrored: false })).toThrow(/plug part 1 lies in no pocket/);
  });
});

describe('numbers in the drawings', () => {
  const job = build(readRecipe(exampleText(), 'x.json'), { fonts: new Map(), drawings: new Map() });
  const files = draw(job, { png: () => new Uint8Array() });
  const text = (name: string): string => files.get(name) as string;
  const inSvg = (svg: string): [string, number, number][] => {
    const group = /<g id="numbers">([\s\S]*?)<\/g>/.exec(svg)?.[1] ?? '';
    return [...group.matchAll(/<text x="([\d.]+)" y="([\d.]+)"[^>]*>(\d+)<\/text>/g)].map((m) => [
      m[3]!,
      Number(m[1]),
      Number(m[2]),
    ]);
  };
  const inDxf = (dxf: string): [string, string][] =>
    [...dxf.matchAll(/\nTEXT\n[\s\S]*?\n {0,2}8\n(\w+)\n[\s\S]*?\n {0,2}1\n([^\n]*)\n/g)].map((m) => [
      m[1]!,
      m[2]!,
    ]);

  it('are the same at the same places in pocket and plug, in a group of the marks, and read by nobody as cut', () => {
    const numbers = inSvg(text('pocket.svg'));
    expect(numbers.map((n) => n[0])).toEqual(job.islands.map((i) => String(i.number)));
    expect(numbers.length).toBe(14);
    expect(inSvg(text('plug.svg'))).toEqual(numbers);
    for (const name of ['pocket.svg', 'plug.svg']) {
      expect(text(name).indexOf('<g id="marks"')).toBeLessThan(text(name).indexOf('<g id="numbers"'));
      expect(text(name).indexOf('<g id="numbers"')).toBeLessThan(text(name).search(/<g id="(pocket|plug)">/));
      expect(readSvg(text(name)).nesting.parts).toBe(14);
    }
    for (const name of ['pocket.dxf', 'plug.dxf']) {
      const found = inDxf(text(name)).filter(([, t]) => /^\d+$/.test(t));
      expect(found).toEqual(numbers.map(([n]) => ['MARKS', n]));
      expect(readDxf(text(name)).nesting.parts).toBe(14);
    }
  });

  it('are moved, never mirrored, on a mirrored plug', () => {
    const plain = sampleJob();
    const turned = sampleJob({ fit: { ...plain.recipe.fit, face: 'down' } });
    const [a, b] = [marksOf(plain, false).numbers!, marksOf(turned, true).numbers!];
    expect(b.map((n) => n.text)).toEqual(['1', '2', '3']);
    expect(b.map((n) => n.text)).toEqual(a.map((n) => n.text));
    b.forEach((n, i) => {
      expect(n.x).toBeCloseTo(-a[i]!.x, 9);
      expect(n.y).toBeCloseTo(a[i]!.y, 9);
    });
    const svg = draw(turned, { png: () => new Uint8Array() }).get('plug.svg') as string;
    expect(svg).not.toMatch(/transform|scale\(/);
  });

  it('are drawn for 2 to 400 parts', () => {
    const of = (n: number) => {
      const one = sampleJob();
      const island = one.islands[0]!;
      return marksOf(
        { ...one, islands: Array.from({ length: n }, (_, k) => ({ ...island, number: k + 1 })) },
        false,
      ).numbers!.length;
    };
    expect([1, 2, 400, 401].map(of)).toEqual([0, 2, 400, 0]);
  });
});
