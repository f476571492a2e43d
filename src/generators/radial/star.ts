import { intersect, union } from '../../geometry/boolean.js';
import { type Contour, polygon, type Region, reversedContour } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';

/** The star polygon {n/m}: each point is joined to the m-th point on. 1 <= m < n / 2. */
export interface Star {
  readonly n: number;
  readonly m: number;
}

/** Distance of the sides' lines from the middle, for a star with its points at radius `radius`. */
export function sideDistance({ n, m }: Star, radius: number): number {
  return radius * cos((Math.PI * m) / n);
}

/** Radius of the inner corners. */
export function innerRadius(star: Star, radius: number): number {
  return sideDistance(star, radius) / cos((Math.PI * (star.m - 1)) / star.n);
}

/** The star's outer outline about the origin, first point up, counter-clockwise. Point angle 180 (n - 2m) / n. */
export function starOutline(star: Star, radius: number, turn: number): Contour {
  const inner = innerRadius(star, radius);
  const corners = Array.from({ length: 2 * star.n }, (_, i): [number, number] => {
    const a = turn + Math.PI / 2 + (Math.PI * i) / star.n;
    const r = i % 2 === 0 ? radius : inner;
    return [r * cos(a), r * sin(a)];
  });
  // With m = 1 the inner corners lie on the sides of a plain polygon.
  return polygon(star.m === 1 ? corners.filter((_, i) => i % 2 === 0) : corners);
}

/** Nested outlines of one width, one gap apart, round a solid star. All its sides are as far from the middle: exact. */
export function nestedStars(
  star: Star,
  radius: number,
  turn: number,
  bands: number,
  width: number,
  gap: number,
): Region {
  const side = sideDistance(star, radius);
  const at = (inset: number): Contour => starOutline(star, (radius * (side - inset)) / side, turn);
  const contours: Contour[] = [];
  for (let k = 0; k < bands; k++) {
    const inset = k * (width + gap);
    contours.push(at(inset), reversedContour(at(inset + width)));
  }
  contours.push(at(bands * (width + gap)));
  return { contours };
}

/** How deep `bands` nested outlines reach, mm; the star's side distance must be larger. */
export function nestedDepth(bands: number, width: number, gap: number): number {
  return bands * (width + gap);
}

/** The whole star polygon as straps of one width along its chords, mitred at the points, which lie at `radius`. */
export function starStraps(star: Star, radius: number, turn: number, width: number): Region {
  const outer = sideDistance(star, radius);
  const strips = Array.from({ length: star.n }, (_, i): Region => {
    // The middle of chord i looks out half way between points i and i + m.
    const a = turn + Math.PI / 2 + (Math.PI * (2 * i + star.m)) / star.n;
    const c = cos(a);
    const s = sin(a);
    const at = (out: number, along: number): [number, number] => [out * c - along * s, out * s + along * c];
    const inner = outer - width;
    return {
      contours: [polygon([at(outer, -radius), at(outer, radius), at(inner, radius), at(inner, -radius)])],
    };
  });
  return intersect(union(strips), { contours: [starOutline(star, radius, turn)] });
}
