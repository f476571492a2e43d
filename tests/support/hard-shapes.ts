import type { Rule } from '../../src/cutter/rule.js';
import type { Piece } from '../../src/geometry/artwork.js';
import { bulgedContour, type Contour, circle, polygon, reversedContour } from '../../src/geometry/region.js';
import { regular, seeded } from './random.js';

/** The corner radius that the hard outlines are drawn for, mm. */
export const R = 1.6;

/** An outline that is hard on the pass, by formula. */
export interface Hard {
  readonly name: string;
  readonly pieces: readonly Piece[];
  readonly rule: Rule;
}

export const DROP: Rule = { r: R, thin: 'drop', touch: 'part' };

/** How far from what counts, mm: far under every tolerance, near some, over all. */
export const HAIRS = [1e-9, 1e-6, 1e-3];

export type Point = [number, number];

export const piece = (name: string, ...contours: Contour[]): Piece => ({ name, region: { contours } });

export function box(x0: number, x1: number, y0: number, y1: number): Contour {
  return polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);
}

export const hole = (c: Contour): Contour => reversedContour(c);

export const ring = (x: number, y: number, outer: number, inner: number): Contour[] => [
  circle(x, y, outer),
  hole(circle(x, y, inner)),
];

/** A straight back 6 mm high with `count` teeth of one width, a gap between each two, 9 mm long. */
export function comb(count: number, tooth: number, gap: number): Contour {
  const points: Point[] = [[0, 0]];
  const end = count * tooth + (count - 1) * gap;
  points.push([end, 0]);
  for (let k = count - 1; k >= 0; k--) {
    const x = k * (tooth + gap);
    points.push([x + tooth, 15], [x, 15]);
    if (k > 0) points.push([x, 6], [x - gap, 6]);
  }
  return polygon(points);
}

/** An isosceles triangle lying on its side. */
export function needle(base: number, length: number): Contour {
  return polygon([
    [0, -base / 2],
    [length, 0],
    [0, base / 2],
  ]);
}

/** A horn: two arcs that are tangent where they meet in its tip, one end straight. */
export function horn(outer: number, inner: number): Contour {
  // Both circles touch the x axis at the origin from above; the end is the level y = inner.
  const far = Math.sqrt(2 * outer * inner - inner * inner);
  const sweep = Math.acos((outer - inner) / outer);
  return bulgedContour([
    { x: 0, y: 0, bulge: Math.tan(sweep / 4) },
    { x: far, y: inner, bulge: 0 },
    { x: inner, y: inner, bulge: -Math.tan(Math.PI / 8) },
  ]);
}

/** A band of one width along an Archimedean spiral, its turns `gap` apart, in short chords. */
export function spiral(turns: number, width: number, gap: number): Contour {
  const step = 0.05;
  const pitch = (width + gap) / (2 * Math.PI);
  const along = (offset: number): Point[] => {
    const side: Point[] = [];
    for (let a = 2 * Math.PI; a <= 2 * Math.PI * (turns + 1); a += step)
      side.push([(pitch * a + offset) * Math.cos(a), (pitch * a + offset) * Math.sin(a)]);
    return side;
  };
  return polygon([...along(width / 2), ...along(-width / 2).reverse()]);
}

/** A circle of `count` corners, each pushed in or out by up to `noise` mm. */
export function noiseCircle(random: () => number, count: number, radius: number, noise: number): Contour {
  return polygon(
    Array.from({ length: count }, (_, i): Point => {
      const a = (2 * Math.PI * i) / count;
      const d = radius + noise * (2 * random() - 1);
      return [d * Math.cos(a), d * Math.sin(a)];
    }),
  );
}

export const one = (name: string, ...contours: Parameters<typeof piece>[1][]): Hard => ({
  name,
  pieces: [piece('p', ...contours)],
  rule: DROP,
});
export const many = (name: string, pieces: Piece[], touch: Rule['touch'] = 'part'): Hard => ({
  name,
  pieces,
  rule: { ...DROP, touch },
});

/** A plate 30 mm square about the middle. */
export const PLATE = box(-15, 15, -15, 15);

export function roundedBox(width: number, height: number, r: number) {
  const [w, h] = [width / 2, height / 2];
  const bulge = Math.SQRT2 - 1;
  return bulgedContour([
    { x: -w + r, y: -h, bulge: 0 },
    { x: w - r, y: -h, bulge },
    { x: w, y: -h + r, bulge: 0 },
    { x: w, y: h - r, bulge },
    { x: w - r, y: h, bulge: 0 },
    { x: -w + r, y: h, bulge },
    { x: -w, y: h - r, bulge: 0 },
    { x: -w, y: -h + r, bulge },
  ]).filter((e) => Math.hypot(e.x1 - e.x0, e.y1 - e.y0) > 0);
}

export function nest(count: number, step: number) {
  return Array.from({ length: count }, (_, k) => {
    const c = regular(4, 0, 0, (count - k) * step * Math.SQRT2, Math.PI / 4);
    return k % 2 === 0 ? c : hole(c);
  });
}

export function star() {
  return polygon(
    Array.from({ length: 14 }, (_, i): [number, number] => {
      const a = (i * Math.PI) / 7;
      const d = i % 2 === 0 ? 20 : 11;
      return [d * Math.cos(a), d * Math.sin(a)];
    }),
  );
}

/** A square of 20 mm with 250 points a side, each off its line by up to `noise`. */
export function dotted(noise: number): [number, number][] {
  const random = seeded(5);
  const corners = [
    [0, 0],
    [20, 0],
    [20, 20],
    [0, 20],
  ] as const;
  return corners.flatMap(([x, y], k) => {
    const [u, v] = corners[(k + 1) % 4]!;
    return Array.from({ length: 250 }, (_, i): [number, number] => [
      x + ((u - x) * i) / 250 + (i > 0 ? noise * (random() - 0.5) : 0),
      y + ((v - y) * i) / 250 + (i > 0 ? noise * (random() - 0.5) : 0),
    ]);
  });
}
