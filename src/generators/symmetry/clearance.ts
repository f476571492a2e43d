import { nearerThan } from '../../geometry/apart.js';
import { meet } from '../../geometry/crossings.js';
import type { Edge } from '../../geometry/edge.js';
import { type Box, bounds, edgeBox, type Region, windingNumber } from '../../geometry/region.js';
import { type Isometry, image, imageOf } from './isometry.js';

/** An edge with its box. */
interface Boxed {
  readonly edge: Edge;
  readonly box: Box;
}

interface Motif {
  readonly box: Box;
  readonly edges: readonly Boxed[];
}

/** A motif is held against many copies of itself: its boxes are made once. */
const motifs = new WeakMap<Region, Motif>();

function boxed(region: Region): Motif {
  let known = motifs.get(region);
  if (!known) {
    const edges = region.contours.flat().map((edge) => ({ edge, box: edgeBox(edge) }));
    known = { box: bounds(region.contours), edges };
    motifs.set(region, known);
  }
  return known;
}

/** Are two regions at least `gap` mm apart? Not if they touch or one holds the other, whatever the gap. */
export function apart(a: Region, b: Region, gap: number): boolean {
  const { box: p, edges } = boxed(a);
  const q = bounds(b.contours);
  if (!within(p, q, gap)) return true;
  const second: Boxed[] = [];
  for (const c of b.contours)
    for (const edge of c) {
      const box = edgeBox(edge);
      if (within(box, p, gap)) second.push({ edge, box });
    }
  for (const { edge, box } of edges) {
    if (!within(box, q, gap)) continue;
    for (const other of second)
      if (within(box, other.box, gap) && !edgesApart(edge, other.edge, gap)) return false;
  }
  return !holds(a, b) && !holds(b, a);
}

/** Far beyond rounding, mm. */
const SURELY = 1e-6;

/** Is a region at least `gap` mm from the image of another? As `apart`, but what boxes alone tell is told without the image. */
export function apartFromImage(a: Region, m: Isometry, b: Region, gap: number): boolean {
  if (!within(boxed(a).box, imageBox(m, boxed(b).box), gap + SURELY)) return true;
  return apart(a, imageOf(m, b), gap);
}

/** A box round the image of a box. */
function imageBox(m: Isometry, { minX, minY, maxX, maxY }: Box): Box {
  const [x, y] = image(m, [(minX + maxX) / 2, (minY + maxY) / 2]);
  const [halfX, halfY] = [(maxX - minX) / 2, (maxY - minY) / 2];
  const dx = Math.abs(m.xx) * halfX + Math.abs(m.xy) * halfY;
  const dy = Math.abs(m.yx) * halfX + Math.abs(m.yy) * halfY;
  return { minX: x - dx, minY: y - dy, maxX: x + dx, maxY: y + dy };
}

/** Are two boxes no further apart than `gap` mm? */
function within(p: Box, q: Box, gap: number): boolean {
  const dx = p.minX > q.maxX ? p.minX - q.maxX : q.minX > p.maxX ? q.minX - p.maxX : 0;
  if (dx > gap) return false;
  const dy = p.minY > q.maxY ? p.minY - q.maxY : q.minY > p.maxY ? q.minY - p.maxY : 0;
  return dy <= gap && Math.sqrt(dx * dx + dy * dy) <= gap;
}

function edgesApart(e: Edge, f: Edge, gap: number): boolean {
  return !meet(e, f) && !nearerThan(e, f, gap);
}

/** Does the first region hold a contour of the second? */
function holds(a: Region, b: Region): boolean {
  return b.contours.some((c) => windingNumber(a.contours, c[0]!.x0, c[0]!.y0) !== 0);
}
