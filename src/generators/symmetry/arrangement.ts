import { type Box, bounds, circle, type Region } from '../../geometry/region.js';
import { placedRegion } from '../../geometry/transform.js';
import { apartFromImage } from './clearance.js';
import { after, type Isometry, image, type Point, turned } from './isometry.js';
import { type Lattice, stepsInto } from './lattice.js';

/** A motif and how it is repeated, before its size is known. */
export interface Arrangement {
  readonly lattice: Lattice;
  /** The group's operations, but for steps of the lattice; the first is the identity. */
  readonly motions: readonly Isometry[];
  /** The motif, box centred on (0, 0), longer side 1. */
  readonly motif: Region;
  /** A point on a mirror or centre: copies that share its image are one figure. Null when every copy is one of its own. */
  readonly hinge: Point | null;
  /** Where the middle of the motif lies, mm, when it is `size` mm large. */
  place(size: number): Point;
  /** Turn of the motif, radians. */
  readonly lean: number;
  /** Diameter of the discs on (0, 0) and its images, mm; 0 for none. */
  readonly disc: number;
}

/** What stands for the place of a copy: its figure's hinge, or its own middle. */
export function anchor(w: Arrangement, size: number): Point {
  return w.hinge ?? w.place(size);
}

/** Points this near to each other are one place, mm. */
const ONE_PLACE = 1e-6;

/** The motif of that size in its first place. */
export function firstMotif(w: Arrangement, size: number): Region {
  const [x, y] = w.place(size);
  return placedRegion(w.motif, x, y, w.lean, size);
}

export function firstDisc(w: Arrangement): Region {
  return { contours: [circle(0, 0, w.disc / 2)] };
}

/** Every motion, identity left out, that brings a thing about `from` to within `reach` of it. */
function around(w: Arrangement, from: Point, reach: number): Isometry[] {
  const [x, y] = from;
  const box = { minX: x - reach, minY: y - reach, maxX: x + reach, maxY: y + reach };
  return into(w, from, box).filter((m) => m !== w.motions[0]);
}

/** Every motion that brings the point into the box. */
export function into(w: Arrangement, from: Point, box: Box): Isometry[] {
  return w.motions.flatMap((m) =>
    stepsInto(box, w.lattice, image(m, from)).map((step) =>
      step[0] === 0 && step[1] === 0 ? m : after(turned(0, step[0], step[1]), m),
    ),
  );
}

/** The disc's motions into the box, one for each place: several operations leave it where it is. */
export function discsInto(w: Arrangement, box: Box): Isometry[] {
  const seen: Isometry[] = [];
  return into(w, [0, 0], box).filter((m) => {
    const known = seen.some((o) => same([o.dx, o.dy], [m.dx, m.dy]));
    if (!known) seen.push(m);
    return !known;
  });
}

export function same(p: Point, q: Point): boolean {
  return Math.abs(p[0] - q[0]) + Math.abs(p[1] - q[1]) < ONE_PLACE;
}

/** Half the diagonal of the box of a motif of size 1. */
export function reachOf(motif: Region): number {
  const { maxX, maxY } = bounds(motif.contours);
  return Math.sqrt(maxX * maxX + maxY * maxY);
}

/**
 * Do motifs of that size keep the gap from each other and from the discs? Copies about one point (a mirror or a centre
 * of rotation the motif is set on) are one figure and keep none.
 */
export function keepsGap(w: Arrangement, size: number, gap: number): boolean {
  const motif = firstMotif(w, size);
  const reach = reachOf(w.motif) * size;
  for (const m of around(w, w.place(size), 2 * reach + gap))
    if (!(w.hinge && same(image(m, w.hinge), w.hinge)) && !apartFromImage(motif, m, motif, gap)) return false;
  if (w.disc === 0) return true;
  const disc = firstDisc(w);
  const [x, y] = w.place(size);
  const far = reach + w.disc / 2 + gap;
  const box = { minX: x - far, minY: y - far, maxX: x + far, maxY: y + far };
  return discsInto(w, box).every(
    (m) => (w.hinge && same([m.dx, m.dy], w.hinge)) || apartFromImage(motif, m, disc, gap),
  );
}

/** Does the motif touch a copy of itself or a disc? */
export function merges(w: Arrangement, size: number): boolean {
  const motif = firstMotif(w, size);
  const reach = reachOf(w.motif) * size;
  const [x, y] = w.place(size);
  if (around(w, [x, y], 2 * reach).some((m) => !apartFromImage(motif, m, motif, ONE_PLACE))) return true;
  if (w.disc === 0) return false;
  const disc = firstDisc(w);
  const far = reach + w.disc / 2;
  const box = { minX: x - far, minY: y - far, maxX: x + far, maxY: y + far };
  return discsInto(w, box).some((m) => !apartFromImage(motif, m, disc, ONE_PLACE));
}
