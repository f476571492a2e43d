import { bounds, type Region } from '../../geometry/region.js';
import { radians } from '../../geometry/trig.js';
import { bad, mm } from '../values.js';
import { type Arrangement, anchor, firstMotif } from './arrangement.js';
import type { FriezeGroup } from './friezes.js';
import { type Isometry, image, type Point } from './isometry.js';
import { largest } from './largest.js';
import { type Lattice, motion } from './lattice.js';
import { standFor } from './place.js';
import { moved, snug } from './snug.js';

/** What a frieze is made of. Lengths in mm, angles in radians. */
export interface Frieze {
  readonly group: FriezeGroup;
  readonly motif: Region;
  readonly seam: number;
  /** Height of the band that holds the motifs. */
  readonly height: number;
  readonly gap: number;
  readonly place: string;
  readonly shift: Point;
  readonly lean: number;
}

/** Rounding that a motif may stick out of its band by, mm. */
const ROUNDING = 1e-9;

/** Is the motif, and with it every copy, within the band? */
export function inBand(w: Arrangement, size: number, height: number): boolean {
  const { minY, maxY } = bounds(firstMotif(w, size).contours);
  return minY >= -height / 2 - ROUNDING && maxY <= height / 2 + ROUNDING;
}

/**
 * The frieze as an arrangement along x, about the line y = 0. The second side of its cell is so long that no copy
 * sees the one beyond it. `fits` says whether motifs of that size, mm, do.
 */
export function strip(
  f: Frieze,
  repeat: number,
  fits: (w: Arrangement, size: number) => boolean,
): Arrangement {
  const lattice: Lattice = { a: [repeat, 0], b: [0, 8 * (f.height + repeat + f.gap)] };
  const motions = f.group.operations.map((o) => motion(lattice, o));
  const home: Point = [f.group.home[0] * repeat, f.group.home[1] * f.height];
  const layout = { name: f.group.name, lattice, motions, home, lean: radians(f.group.lean) };
  const stand = standFor(f.place, layout, f.seam);
  const first: Arrangement = {
    lattice,
    motions,
    motif: f.motif,
    hinge: stand.hinge,
    place: stand.place,
    lean: stand.lean,
    disc: 0,
  };
  const most = 2 * Math.max(f.height, repeat);
  const w = f.place !== 'apart' && f.gap < repeat ? snug(first, { stand, fits, most }) : first;
  return moved(w, f.lean, f.shift);
}

/** The same arrangement with another repeat: places along the band in proportion, sizes as they are. */
export function stretched(w: Arrangement, group: FriezeGroup, repeat: number): Arrangement {
  const lattice: Lattice = { a: [repeat, 0], b: w.lattice.b };
  const factor = repeat / w.lattice.a[0];
  return {
    ...w,
    lattice,
    motions: group.operations.map((o) => motion(lattice, o)),
    hinge: w.hinge && [w.hinge[0] * factor, w.hinge[1]],
    place(size) {
      const [x, y] = w.place(size);
      const [hx] = w.place(0);
      return [hx * factor + (x - hx), y];
    },
  };
}

/** No motif is smaller, mm. */
const LEAST = 1;

/** Whether motifs of a size lie within the band, and whether they keep a gap besides. */
export interface Room {
  within(size: number): boolean;
  fits(size: number, gap: number): boolean;
}

/** The size asked for, or the largest up to `most` that fits when it is 0, mm. Throws BadInput with one that would do. */
export function sizeIn(asked: number, f: Frieze, most: number, { within, fits }: Room): number {
  if (asked > 0) {
    if (within(asked)) return asked;
    const limit = largest(within, asked);
    if (limit > 0)
      throw bad('size', `${mm(asked)} does not fit the height of ${mm(f.height)}; use ${mm(limit)} at most`);
    throw bad('y', 'the motif is moved out of the band; use a number nearer 0');
  }
  const size = largest((v) => fits(v, f.gap), most);
  if (size >= LEAST) return size;
  if (!within(LEAST)) throw bad('y', 'the motif is moved out of the band; use a number nearer 0');
  const widest = largest((v) => fits(LEAST, v), f.gap);
  if (widest > 0)
    throw bad(
      'gap',
      `${mm(f.gap)} leaves no room for the motif; use ${mm(widest)} at most, or a larger repeat`,
    );
  throw bad('size', 'the copies meet where the motif stands; move it with x and y, or give a size above 0');
}

/** The motions of whole repeats from x = 0 on: every figure whose place lies in them, repeat by repeat. */
export function copiesAlong(w: Arrangement, size: number, first: number, repeats: number): Isometry[] {
  const repeat = w.lattice.a[0];
  const from = anchor(w, size);
  return Array.from({ length: repeats }, (_, k) =>
    w.motions.map((m): Isometry => {
      const [x] = image(m, from);
      return { ...m, dx: m.dx + (first + k - Math.floor(x / repeat + ROUNDING)) * repeat };
    }),
  ).flat();
}
