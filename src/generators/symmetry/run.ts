import { subtract } from '../../geometry/boolean.js';
import { bounds, polygon, type Region } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import { bad, mm } from '../values.js';
import { type Arrangement, firstMotif, keepsGap } from './arrangement.js';
import { imageOf, turned } from './isometry.js';
import { copiesAlong, type Frieze, inBand, type Room, sizeIn, stretched, strip } from './strip.js';

/** A frieze laid on the piece: its motifs' regions and its border lines. */
export interface Laid {
  readonly motifs: readonly Region[];
  readonly rails: readonly Region[];
}

/** Border lines of a frieze, mm; width 0 for none. Between them and the band lies the gap. */
export interface Rails {
  readonly width: number;
  readonly gap: number;
}

/** Length of a repeat and size of the motif as asked for, mm; 0 for what suits. */
export interface Asked {
  readonly repeat: number;
  readonly size: number;
}

/** From the middle of the band to the outside of its rails, mm. */
export function halfWidth(f: Frieze, rails: Rails): number {
  return f.height / 2 + (rails.width > 0 ? rails.gap + rails.width : 0);
}

/** More copies than this are refused. */
const MOST = 5000;

/** How many whole repeats go into a length, mm: at least one. */
export function count(f: Frieze, asked: Asked, long: number): number {
  const repeat = asked.repeat || f.group.repeat * f.height;
  const most = Math.floor(MOST / f.group.operations.length);
  const repeats = Math.max(1, Math.round(long / repeat));
  if (repeats <= most) return repeats;
  throw new Refusal(
    'too-large',
    `pattern.${asked.repeat > 0 ? 'repeat' : 'height'}: makes ${repeats} repeats, more than ${most}; use a repeat of ${mm(Math.ceil((long / most) * 100) / 100)} or more`,
  );
}

/** Straight across the region at the level y: as many whole repeats as fit, spread to reach both ends. */
export function across(f: Frieze, asked: Asked, rails: Rails, level: number, field: Region): Laid {
  const half = halfWidth(f, rails);
  const { minY, maxY } = bounds(field.contours);
  if (2 * half > maxY - minY) {
    const most = Math.floor((f.height - (2 * half - (maxY - minY))) * 100) / 100;
    if (most <= 0) throw bad('rail', 'the border lines alone are higher than the outline; use 0 for none');
    throw bad('height', `${mm(f.height)} with its rails is higher than the outline; use ${mm(most)} at most`);
  }
  const [x0, x1] = clear(field, level - half, level + half);
  const room = x1 - x0;
  const repeats = count(f, asked, room + f.gap);
  const holds = (v: Arrangement, size: number, gap = f.gap): boolean =>
    inBand(v, size, f.height) && keepsGap(v, size, gap);
  let w = strip(f, (room + f.gap) / repeats, holds);
  const fit: Room = {
    within: (size) => inBand(w, size, f.height),
    fits: (size, gap) => holds(w, size, gap),
  };
  let size = sizeIn(asked.size, f, 2 * room, fit);
  w = spread(w, f, size, repeats, room);
  if (asked.size === 0) size = sizeIn(0, f, size, fit);
  const box = bounds(copies(w, size, repeats).flatMap((r) => r.contours));
  if (box.maxX - box.minX > room + 1e-6)
    throw bad('size', `the motifs are longer than the ${mm(room)} between the ends; make them smaller`);
  const shift = turned(0, (x0 + x1) / 2 - (box.minX + box.maxX) / 2, level);
  const rail = (y: number): Region => ({
    contours: [
      polygon([
        [x0, y],
        [x1, y],
        [x1, y + rails.width],
        [x0, y + rails.width],
      ]),
    ],
  });
  return {
    motifs: copies(w, size, repeats).map((r) => imageOf(shift, r)),
    rails: rails.width > 0 ? [rail(level - half), rail(level + half - rails.width)] : [],
  };
}

function copies(w: Arrangement, size: number, repeats: number): Region[] {
  const motif = firstMotif(w, size);
  return copiesAlong(w, size, 0, repeats).map((m) => imageOf(m, motif));
}

/** Stretches the repeat until the copies reach from end to end. */
function spread(w: Arrangement, f: Frieze, size: number, repeats: number, room: number): Arrangement {
  const long = (repeat: number): number => {
    const box = bounds(copies(stretched(w, f.group, repeat), size, repeats).flatMap((r) => r.contours));
    return box.maxX - box.minX;
  };
  let lo = w.lattice.a[0] / 2;
  let hi = w.lattice.a[0] * 2;
  for (let k = 0; k < 40; k++) {
    const middle = (lo + hi) / 2;
    if (long(middle) > room) hi = middle;
    else lo = middle;
  }
  return stretched(w, f.group, repeats > 1 ? lo : Math.min(lo, w.lattice.a[0]));
}

/** Between which x the region is whole from y0 to y1, on both sides of its middle. Throws BadInput when it is nowhere. */
function clear(field: Region, y0: number, y1: number): [number, number] {
  const { minX, maxX, minY, maxY } = bounds(field.contours);
  if (y0 < minY || y1 > maxY) {
    const most = Math.floor((maxY - minY - (y1 - y0)) * 50) / 100;
    throw bad('level', `puts the frieze beyond the outline's margin; use ${mm(-most)} to ${mm(most)}`);
  }
  const strip = polygon([
    [minX - 1, y0],
    [maxX + 1, y0],
    [maxX + 1, y1],
    [minX - 1, y1],
  ]);
  const outside = subtract({ contours: [strip] }, field);
  const middle = (minX + maxX) / 2;
  let from = minX;
  let to = maxX;
  for (const c of outside.contours) {
    const box = bounds([c]);
    if (box.maxX <= middle) from = Math.max(from, box.maxX);
    else if (box.minX >= middle) to = Math.min(to, box.minX);
    else throw bad('level', 'the frieze would cross an opening or edge there; move it or let it run round');
  }
  return [from, to];
}
