import { intersect, subtract, union } from '../../geometry/boolean.js';
import { parts, polygon, type Region } from '../../geometry/region.js';
import { cos, sin, tan } from '../../geometry/trig.js';
import { type Star, sideDistance, starStraps } from './star.js';

/** What a weave is made of, mm: the star's radius and turn, its straps' width, the gap where one passes under another. */
export interface Weave {
  readonly star: Star;
  readonly radius: number;
  readonly turn: number;
  readonly width: number;
  readonly gap: number;
}

/**
 * The straps of a star polygon over and under each other in turn: the one below is interrupted by a gap on both
 * sides of the one above. Returns the pieces that are left.
 */
export function wovenStraps({ star, radius, turn, width, gap }: Weave): Region[] {
  const { n, m } = star;
  const outer = sideDistance(star, radius);
  const far = 4 * radius;
  // Chord k looks out half way between points k and k + m; a strip lies between two distances out.
  const strip = (k: number, from: number, to: number, along0 = -far, along1 = far): Region => {
    const a = turn + Math.PI / 2 + (Math.PI * (2 * k + m)) / n;
    const c = cos(a);
    const s = sin(a);
    const at = (out: number, along: number): [number, number] => [out * c - along * s, out * s + along * c];
    return {
      contours: [polygon([at(from, along0), at(from, along1), at(to, along1), at(to, along0)].reverse())],
    };
  };
  const cuts: Region[] = [];
  for (let k = 0; k < n; k++)
    for (let j = 1; j < m; j++) {
      // Chord k meets chord k + j as its crossing m - 2 + j from the start, and that chord's m - 1 - j: one is even.
      const over = (m - 2 + j) % 2 === 0 ? k : k + j;
      const under = over === k ? k + j : k;
      for (const [from, to] of [
        [outer, outer + gap],
        [outer - width - gap, outer - width],
      ] as const)
        cuts.push(intersect(strip(over, from, to), strip(under, outer - width - CLEAN, outer + CLEAN)));
    }
  const straps = starStraps(star, radius, turn, width);
  return parts(subtract(straps, union(cuts))).map((contours) => ({ contours }));
}

/** Cuts reach this far beyond a strap's sides, mm, so that no sliver is left there. */
const CLEAN = 1e-4;

/**
 * The radius a star needs, mm, so that at every crossing of its straps there is room for one to pass wholly over
 * before it dips under the next.
 */
export function leastWovenRadius({ n, m }: Star, width: number, gap: number): number {
  // Chords j apart cross at the angle 2 pi j / n. The j-th crossing lies out tan(pi j / n) from a chord's middle,
  // where out is the distance of the straps' centre lines from the star's middle.
  const over = (j: number): number => span(width / 2, width, (2 * Math.PI * j) / n);
  const under = (j: number): number => span(width / 2 + gap, width, (2 * Math.PI * j) / n);
  let out = 0;
  for (let j = 1; j < m; j++) {
    const apart = j === 1 ? 2 * tan(Math.PI / n) : tan((Math.PI * j) / n) - tan((Math.PI * (j - 1)) / n);
    const before = Math.max(1, j - 1);
    out = Math.max(out, Math.max(over(before) + under(j), under(before) + over(j)) / apart);
  }
  // Beyond the last crossing a strap only has its point to reach.
  if (m > 1) out = Math.max(out, under(m - 1) / (tan((Math.PI * m) / n) - tan((Math.PI * (m - 1)) / n)));
  return (out + width / 2) / cos((Math.PI * m) / n);
}

/** How far along a strap of one width a crossing reaches whose sides lie `half` off the other's centre line, mm. */
function span(half: number, width: number, angle: number): number {
  return (half + (width / 2) * Math.abs(cos(angle))) / sin(angle);
}
