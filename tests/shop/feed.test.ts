import { describe, expect, it } from 'vitest';
import {
  biteFor,
  chipOf,
  cornerFeed,
  cornerThinning,
  feedOf,
  radiusFor,
  rpmOf,
  thinning,
} from '../../src/shop/feed.js';
import { seeded } from '../support/random.js';

describe('feed, turns and chip load', () => {
  it('give the published examples', () => {
    // A cutter seller's page, published: 500 inches a minute / (15,000 x 2), printed .017.
    expect(chipOf(500, 15_000, 2)).toBeCloseTo(0.0167, 4);
    // Another's: 2 flutes x 0.1 mm x 18,000 = 3,600 mm a minute.
    expect(feedOf(18_000, 2, 0.1)).toBeCloseTo(3600, 9);
    // A third's grid for two flutes: inches a minute, turns, chip load. The last cell is printed .017, which by its own
    // formula is wrong by more than its rounding: .0158.
    for (const [feed, rpm, chip] of [
      [100, 10_000, 0.005],
      [300, 10_000, 0.015],
      [600, 10_000, 0.03],
      [300, 18_000, 0.008],
      [600, 19_000, 0.016],
    ] as const)
      expect(Math.abs(chipOf(feed, rpm, 2) - chip), `${feed} at ${rpm}`).toBeLessThan(0.001);
  });
  it('are one formula three ways', () => {
    expect(rpmOf(3600, 2, 0.1)).toBeCloseTo(18_000, 9);
    const random = seeded(6);
    for (let k = 0; k < 200; k++) {
      const [rpm, flutes, chip] = [1000 + 5e4 * random(), 1 + Math.floor(4 * random()), 0.01 + random()];
      expect(chipOf(feedOf(rpm, flutes, chip), rpm, flutes)).toBeCloseTo(chip, 12);
      expect(chipOf(1000, rpm * 1.1, flutes)).toBeLessThan(chipOf(1000, rpm, flutes));
    }
  });
  it('want turns and flutes', () => {
    expect(() => chipOf(1000, 0, 2)).toThrow('over 0');
    expect(() => feedOf(1000, 0, 2)).toThrow('over 0');
  });
});

/**
 * The thickest chip over the chip load, by brute force: the edge runs round the cutter's circle, the wood it finds is
 * what lies outside the circle of the edge before, a hair of feed behind, and where `wood` says. Along its own radius.
 */
function thickest(radius: number, wood: (x: number, y: number) => boolean): number {
  const feed = radius * 1e-5;
  let most = 0;
  for (let k = 0; k < 200_000; k++) {
    const a = (2 * Math.PI * k) / 200_000;
    const [x, y] = [radius * Math.cos(a), radius * Math.sin(a)];
    if (!wood(x, y)) continue;
    // The cutter moves towards +x; its circle before was about (-feed, 0).
    const b = feed * Math.cos(a);
    const before = -b + Math.sqrt(b * b - feed * feed + radius * radius);
    most = Math.max(most, radius - before);
  }
  return most / feed;
}

describe('thinning of chips', () => {
  it('is 0.54 for 0.25 mm with 3.175 mm', () => {
    expect(thinning(0.25, 3.175)).toBeCloseTo(0.54, 2);
  });
  it('is that of the cutter as it moves on', () => {
    for (const bite of [0.05, 0.25, 0.8, 1.5, 1.6, 2.4, 3.175]) {
      const R = 3.175 / 2;
      expect(thinning(bite, 3.175), `${bite}`).toBeCloseTo(
        thickest(R, (_, y) => y > R - bite),
        3,
      );
    }
  });
  it('is undone by the bite that it wants', () => {
    for (const share of [0, 0.1, 0.54, 0.9, 1])
      expect(thinning(biteFor(share, 3.175), 3.175)).toBeCloseTo(share, 9);
  });
  it('is less in an inside corner, as the cutter moves on there', () => {
    for (const [turn, bite] of [
      [0.1, 0.3],
      [0.3, 0.05],
      [1, 0.3],
      [1, 0.9],
      [5, 0.3],
      [50, 0.3],
    ] as const) {
      const R = 1.5;
      // The corner's middle lies off to the right of the way, since the wall is on the left: at (0, -turn).
      const inner = turn + R - bite;
      const wood = (x: number, y: number): boolean => x * x + (y + turn) * (y + turn) > inner * inner;
      expect(cornerThinning(bite, R, turn), `${turn} ${bite}`).toBeCloseTo(thickest(R, wood), 3);
      expect(cornerThinning(bite, R, turn)).toBeGreaterThanOrEqual(thinning(bite, 2 * R));
    }
    expect(cornerThinning(0.3, 1.5, 1e6)).toBeCloseTo(thinning(0.3, 3), 4);
    expect(cornerThinning(0.3, 1.5, 0)).toBe(1);
    expect(cornerThinning(0, 1.5, 0.3)).toBe(0);
  });
});

describe('feed in corners', () => {
  it('is that of the centripetal acceleration', () => {
    // Worked by hand: sqrt(250 x 0.3175) = 8.9093 mm a second, x 60 = 534.6 mm a minute.
    expect(cornerFeed(250, 0.3175)).toBeCloseTo(534.6, 1);
    expect(cornerFeed(250, 0)).toBe(0);
    expect(cornerFeed(1000, 0.3175) / cornerFeed(250, 0.3175)).toBeCloseTo(2, 12);
  });
  it('is that of a point that runs round, differentiated twice', () => {
    const [radius, a] = [2.5, 400];
    const w = cornerFeed(a, radius) / 60 / radius;
    const at = (t: number): [number, number] => [radius * Math.cos(w * t), radius * Math.sin(w * t)];
    const h = 1e-4;
    const [p, q, r] = [at(-h), at(0), at(h)];
    const acceleration = Math.hypot((p[0] - 2 * q[0] + r[0]) / h ** 2, (p[1] - 2 * q[1] + r[1]) / h ** 2);
    expect(acceleration).toBeCloseTo(a, 1);
  });
  it('tells the radius that lets a feed through', () => {
    // 50 mm a second on 10 mm: 2500 / 10 = 250 mm/s2.
    expect(radiusFor(3000, 250)).toBeCloseTo(10, 12);
    expect(cornerFeed(250, radiusFor(1234, 250))).toBeCloseTo(1234, 9);
  });
});
