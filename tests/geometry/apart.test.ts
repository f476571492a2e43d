import { describe, expect, it } from 'vitest';
import { nearerThan, surelyApart } from '../../src/geometry/apart.js';
import { meet } from '../../src/geometry/crossings.js';
import { arc, type Edge, line, parameterEnd, pointAt } from '../../src/geometry/edge.js';
import { nearestPoints } from '../../src/geometry/nearest.js';
import { seeded } from '../support/random.js';

const SAMPLES = 300;

/** The least distance between points strewn evenly over two edges: too large by no more than it takes to miss the nearest. */
function sampled(e: Edge, f: Edge): number {
  const points = (g: Edge) =>
    Array.from({ length: SAMPLES + 1 }, (_, k) => pointAt(g, (parameterEnd(g) * k) / SAMPLES));
  const there = points(f);
  let least = Number.POSITIVE_INFINITY;
  for (const [x, y] of points(e))
    for (const [u, v] of there) least = Math.min(least, Math.hypot(u - x, v - y));
  return least;
}

const random = seeded(5);

function anyEdge(): Edge {
  const [x, y] = [random() * 20, random() * 20];
  if (random() < 0.4) return line(x, y, x + (random() - 0.5) * 12, y + (random() - 0.5) * 12);
  const r = 0.5 + random() * 8;
  const from = random() * 2 * Math.PI;
  const to = from + (0.1 + random() * 2.8) * (random() < 0.5 ? 1 : -1);
  const at = (a: number): [number, number] => [x + r * Math.cos(a), y + r * Math.sin(a)];
  return arc(...at(from), ...at(to), x, y, to > from ? r : -r);
}

describe('two edges that do not cross', () => {
  const pairs = Array.from({ length: 6000 }, (): [Edge, Edge] => [anyEdge(), anyEdge()])
    .map(([e, f]) => ({ e, f, distance: nearestPoints([e], [f])!.distance, sampled: 0 }))
    .filter((p) => p.distance > 0.5 && !meet(p.e, p.f))
    .slice(0, 500);
  for (const p of pairs) p.sampled = sampled(p.e, p.f);

  it('are as far apart as points strewn over them', () => {
    for (const p of pairs) {
      expect(p.distance).toBeLessThanOrEqual(p.sampled + 1e-9);
      // Where they bend side by side the strewn points miss the nearest by half a step along either.
      expect(p.sampled - p.distance).toBeLessThan(0.01);
    }
  });

  it('come nearer than what is a little more than that, and not nearer than a little less', () => {
    for (const { e, f, distance } of pairs) {
      expect(nearerThan(e, f, distance * 1.001)).toBe(true);
      expect(nearerThan(e, f, distance * 0.999)).toBe(false);
    }
  });

  it('are surely apart only where they are, and mostly then', () => {
    for (const { e, f, distance } of pairs) expect(surelyApart(e, f, distance * 1.001)).toBe(false);
    const sure = pairs.filter(({ e, f, distance }) => surelyApart(e, f, distance / 2));
    expect(sure.length).toBeGreaterThan(pairs.length / 2);
  });
});
