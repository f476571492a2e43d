import { union } from '../../geometry/boolean.js';
import { type Box, bounds, parts, type Region } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import type { Motif } from '../field.js';
import { mm } from '../values.js';
import { type Arrangement, discsInto, firstDisc, firstMotif, into, merges, reachOf } from './arrangement.js';
import { after, type Isometry, imageOf, type Point } from './isometry.js';
import { cellArea } from './lattice.js';

/** Copies with more edges than this in all are refused ... */
const MOST_EDGES = 120_000;

/** ... and those with more than this when they have to be joined to each other, which costs more. */
const MOST_JOINED = 20_000;

/**
 * Every figure that may show in the field, in the piece's coordinates; `frame` brings the pattern there. Copies that
 * touch, discs among them, become one figure. Throws Refusal when there would be too many.
 */
export function repeated(
  w: Arrangement,
  size: number,
  frame: Isometry,
  field: Region,
  name: string,
): { motifs: Motif[]; discs: Motif[] } {
  const reach = reachOf(w.motif) * size;
  const box = grown(boxBefore(frame, bounds(field.contours)), Math.max(reach, w.disc / 2));
  const count = ((box.maxX - box.minX) * (box.maxY - box.minY) * w.motions.length) / cellArea(w.lattice);
  refuse(w, count, MOST_EDGES);
  const joined = merges(w, size);
  if (joined) refuse(w, count, MOST_JOINED);

  const motif = firstMotif(w, size);
  const copies = into(w, w.place(size), box).map((m) => imageOf(after(frame, m), motif));
  const disc = firstDisc(w);
  const discs = w.disc > 0 ? discsInto(w, box).map((m) => imageOf(after(frame, m), disc)) : [];
  const named = (kind: string) => (region: Region, i: number) => ({ name: `${kind} ${i + 1}`, region });
  if (!joined) return { motifs: copies.map(named(name)), discs: discs.map(named('disc')) };
  const figures = parts(union([...copies, ...discs])).map((contours) => ({ contours }));
  return { motifs: figures.map(named('figure')), discs: [] };
}

function refuse(w: Arrangement, count: number, edges: number): void {
  const most = Math.floor(edges / w.motif.contours.flat().length);
  if (count <= most) return;
  const [ax, ay] = w.lattice.a;
  const side = Math.sqrt(ax * ax + ay * ay);
  const least = Math.ceil(side * Math.sqrt(count / most) * 100) / 100;
  throw new Refusal(
    'too-large',
    `pattern.cell: ${mm(side)} makes about ${Math.round(count)} copies, more than ${most}; use ${mm(least)} or more`,
  );
}

/** The box of what a motion brings into the box. */
function boxBefore(m: Isometry, box: Box): Box {
  const all = [box.minX, box.maxX].flatMap((x) =>
    [box.minY, box.maxY].map((y): Point => {
      const [u, v] = [x - m.dx, y - m.dy];
      return [m.xx * u + m.yx * v, m.xy * u + m.yy * v];
    }),
  );
  const xs = all.map((p) => p[0]);
  const ys = all.map((p) => p[1]);
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}

function grown(box: Box, by: number): Box {
  return { minX: box.minX - by, minY: box.minY - by, maxX: box.maxX + by, maxY: box.maxY + by };
}
