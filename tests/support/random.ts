import { type Contour, polygon } from '../../src/geometry/region.js';

/** A small seeded generator (mulberry32, public domain), so that every random test can be run again. */
export function seeded(seed: number): () => number {
  let s = seed >>> 0;
  return () => {
    s = (s + 0x6d2b79f5) | 0;
    let t = Math.imul(s ^ (s >>> 15), 1 | s);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A simple polygon of 3 to 10 corners about a centre, its corners at 0.35 to 1 of `size`: sharp, spiky, irregular. */
export function randomPolygon(random: () => number, cx: number, cy: number, size: number): Contour {
  const n = 3 + Math.floor(random() * 8);
  const turn = random() * 2 * Math.PI;
  const points: [number, number][] = [];
  for (let i = 0; i < n; i++) {
    const angle = turn + (i * 2 * Math.PI) / n;
    const d = size * (0.35 + 0.65 * random());
    points.push([cx + d * Math.cos(angle), cy + d * Math.sin(angle)]);
  }
  return polygon(points);
}

/** A square or other regular polygon standing on a corner or an edge. */
export function regular(sides: number, cx: number, cy: number, radius: number, turn = 0): Contour {
  return polygon(
    Array.from({ length: sides }, (_, i): [number, number] => {
      const a = turn + (i * 2 * Math.PI) / sides;
      return [cx + radius * Math.cos(a), cy + radius * Math.sin(a)];
    }),
  );
}
