import { describe, expect, it } from 'vitest';
import type { Region } from '../../../src/geometry/region.js';
import type { Outline } from '../../../src/outline/outline.js';
import {
  BOX,
  DISC,
  disagreement,
  drawn,
  type Hit,
  hits,
  LID,
  NAMES,
  STAVE,
  STRAIGHT,
  VASE,
} from './helper.js';

/** Position within 0.001 mm, as the design asks; direction within a thousandth of a radian (0.06 degrees). */
const SAME = 0.001;

function expectSame(a: readonly Hit[], b: readonly Hit[]): void {
  expect(a.length).toBe(b.length);
  expect(a.length).toBeGreaterThan(0);
  a.forEach((hit, i) => {
    expect(Math.abs(hit.out - b[i]!.out)).toBeLessThan(SAME);
    const apart = Math.abs(hit.angle - b[i]!.angle);
    expect(Math.min(apart, Math.PI - apart)).toBeLessThan(SAME);
  });
}

const ray = (a: number): [number, number] => [Math.cos(a), Math.sin(a)];

/** The order of the figure's rotation about (0, 0). */
function order(region: Region, radius: number): number {
  for (let n = 80; n > 1; n--) {
    const [c, s] = ray((2 * Math.PI) / n);
    const turned = (x: number, y: number) => [x * c - y * s, x * s + y * c] as const;
    if (disagreement(region, [-radius, -radius, radius, radius], turned, 300) < 0.004) return n;
  }
  return 1;
}

describe('round a circle', () => {
  it.each(NAMES)('%s goes over its seam as over any other repeat', (name) => {
    const region = drawn(name, DISC, { rails: name === 'rope' ? 1 : 0 });
    const n = order(region, 80);
    expect(n).toBeGreaterThan(4);
    // Beside the seam at the bottom, on both sides and on it.
    for (const off of [-1e-5, 0, 1e-5, 0.03]) {
      const seam = hits(region, [0, 0], ray(-Math.PI / 2 + off));
      if (seam.length === 0) continue;
      for (const k of [1, 2])
        expectSame(seam, hits(region, [0, 0], ray(-Math.PI / 2 + off + (2 * Math.PI * k) / n)));
    }
  });
});

describe('along a rectangle', () => {
  it.each(NAMES)('%s has four corners alike on a square', (name) => {
    const region = drawn(name, LID);
    expect(disagreement(region, [-50, -50, 50, 50], (x, y) => [-y, x])).toBe(0);
    for (const a of [0.7, Math.PI / 4, 0.9, 1.2, 1.5])
      for (const k of [1, 2, 3]) {
        const quarter = hits(region, [0, 0], ray(a));
        if (quarter.length > 0) expectSame(quarter, hits(region, [0, 0], ray(a + (k * Math.PI) / 2)));
      }
  });

  it.each(['meander', 'rope', 'guilloche', 'scroll', 'wave'])(
    '%s meets in corners alike on an oblong',
    (name) => {
      const region = drawn(name, BOX);
      // From the corners of the inner edge, 64 and 39 mm off the middle, just off the diagonals (where corners lie).
      const diagonals = [
        { at: [-64, -39], along: Math.PI / 4 },
        { at: [64, -39], along: (3 * Math.PI) / 4 },
        { at: [64, 39], along: (-3 * Math.PI) / 4 },
        { at: [-64, 39], along: -Math.PI / 4 },
      ] as const;
      const near = (turn: number): Hit[][] =>
        diagonals.map(({ at, along }) => hits(region, at, ray(along + turn)).filter((h) => h.out < 30));
      for (const turn of [-0.02, 0.02]) {
        const across = near(turn);
        expectSame(across[0]!, across[2]!);
        expectSame(across[1]!, across[3]!);
      }
      // Half way round the corner the repeats of a bend have one length: all four are alike there.
      const middle = near(1e-6).map((c) => c.map((h) => h.out));
      for (const other of middle.slice(1)) {
        expect(other.length).toBe(middle[0]!.length);
        // A strand of the rope reaches on into the sides, whose repeats differ; the key's sides take up what is left.
        if (name === 'meander' || name === 'rope') continue;
        other.forEach((d, i) => {
          expect(Math.abs(d - middle[0]![i]!)).toBeLessThan(SAME);
        });
      }
    },
  );
});

/** The two joints' lines as rays from their apex (or the lower end of parallel ones) up or down the stave. */
function joints({ sizes }: Outline): { left: Joint; right: Joint } {
  const { bottom, top, height } = sizes;
  const slope = (top! - bottom!) / 2 / height!;
  if (slope === 0) {
    const joint = (side: number): Joint => ({ at: [(side * top!) / 2, -height!], along: [0, 1] });
    return { left: joint(-1), right: joint(1) };
  }
  const apex: [number, number] = [0, -(bottom! + top!) / 4 / slope];
  const length = Math.hypot(1, slope);
  const up = slope > 0 ? 1 : -1;
  const joint = (side: number): Joint => ({
    at: apex,
    along: [(side * Math.abs(slope)) / length, up / length],
  });
  return { left: joint(-1), right: joint(1) };
}

interface Joint {
  readonly at: [number, number];
  readonly along: [number, number];
}

describe('across a stave', () => {
  // The neighbour, unrolled, is the stave turned about the apex of its joints: it brings its left joint on this right one.
  for (const [kind, stave] of [
    ['widening', STAVE],
    ['narrowing', VASE],
    ['parallel', STRAIGHT],
  ] as const)
    it.each(NAMES)(`%s, arched, runs on over the joint of ${kind} staves`, (name) => {
      const region = drawn(name, stave, { rails: 1 });
      const { left, right } = joints(stave);
      const [a, b] = [hits(region, left.at, left.along), hits(region, right.at, right.along)];
      expectSame(a, b);
      // The band reaches past the joint: further out there is wood of the pattern still.
      const over = (j: Joint, side: number): Hit[] => hits(region, [j.at[0] + side * 2, j.at[1]], j.along);
      expect(over(left, -1).length).toBeGreaterThan(3);
      expect(over(right, 1).length).toBeGreaterThan(3);
    });

  it.each(NAMES)('%s, level, meets the neighbour in position', (name) => {
    const region = drawn(name, STAVE, { rails: 1, run: 'level' });
    const { left, right } = joints(STAVE);
    const [a, b] = [hits(region, left.at, left.along), hits(region, right.at, right.along)];
    expect(a.length).toBe(b.length);
    expect(a.length).toBeGreaterThan(3);
    a.forEach((h, i) => {
      expect(Math.abs(h.out - b[i]!.out)).toBeLessThan(SAME);
    });
  });

  it('keeps its level: the rails of a straight band lie evenly about it', () => {
    const region = drawn('dentil', STRAIGHT, { rails: 1, level: 40 });
    const ys = hits(region, [39.9, -200], [0, 1]).map((h) => h.out - 200 + 60);
    const middle = (ys[0]! + ys[ys.length - 1]!) / 2;
    expect(middle).toBeCloseTo(40, 9);
  });
});
