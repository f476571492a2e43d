import { random } from '../../../src/generators/random.js';
import type { Artwork } from '../../../src/geometry/artwork.js';
import { contains, distanceToBoundary, type Region } from '../../../src/geometry/region.js';

/** Everything that is drawn, as one bag of contours; pieces do not overlap. */
export function all(art: Artwork): Region {
  return { contours: art.pieces.flatMap((p) => p.region.contours) };
}

/** Is a region itself again when turned (and mirrored first) about the origin? Tried at 500 places of a disc. */
export function bears(region: Region, radius: number, turn: number, mirror = false): boolean {
  const next = random(5);
  for (let tried = 0; tried < 500; ) {
    const r = radius * Math.sqrt(next());
    const a = 2 * Math.PI * next();
    const b = (mirror ? Math.PI - a : a) + turn;
    const [x, y] = [r * Math.cos(a), r * Math.sin(a)];
    const same = contains(region, x, y) === contains(region, r * Math.cos(b), r * Math.sin(b));
    // Beside the boundary either answer will do.
    if (!same && distanceToBoundary(region, x, y) > 0.02) return false;
    if (same) tried++;
  }
  return true;
}

/**
 * Which symmetry group a figure has about the origin: "D8" or "C8" of the greatest n up to 48 whose turn it bears,
 * with or without mirrors. D_n has order 2n, C_n order n.
 */
export function groupOf(region: Region, radius: number): string {
  for (let n = 48; n >= 1; n--)
    if (bears(region, radius, (2 * Math.PI) / n)) return `${bears(region, radius, 0, true) ? 'D' : 'C'}${n}`;
  throw new Error('a region is not even itself');
}
