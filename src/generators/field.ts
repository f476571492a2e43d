import { intersect } from '../geometry/boolean.js';
import { crossings } from '../geometry/crossings.js';
import { drawRegion } from '../geometry/draw-region.js';
import { EdgesIndex } from '../geometry/edges-index.js';
import type { Pen } from '../geometry/pen.js';
import { type Box, bounds, contains, polygon, type Region, windingNumber } from '../geometry/region.js';
import { placedRegion } from '../geometry/transform.js';
import type { Outline } from '../outline/outline.js';
import type { ChoiceParameter, FlagParameter, LengthParameter } from '../schema/parameter.js';
import { length } from './values.js';

/** What every field pattern lets its user choose. */
export const fillParameter: ChoiceParameter = {
  kind: 'choice',
  name: 'fill',
  meaning: 'What happens at the edge of the pattern.',
  say: 'figures … at the edge',
  default: 'clip',
  options: [
    { value: 'clip', meaning: 'figures are cut off there' },
    { value: 'whole', meaning: 'only whole figures are drawn' },
  ],
};

export const frameParameter: FlagParameter = {
  kind: 'flag',
  name: 'frame',
  meaning: 'Whether clipped straps end in a strap all round.',
  say: 'clipped straps … a strap all round',
  words: ['end in', 'do without'],
  default: true,
};

export const bandParameter: LengthParameter = length(
  'band',
  'Height of a band across the middle that holds the pattern; 0 for the whole outline.',
  { say: 'filling … of the height', zero: 'all' },
  0,
  0,
  3000,
);

/** The part of the outline that the pattern may fill. */
export function fieldOf(outline: Outline, band: number): Region {
  if (band === 0) return outline.inner;
  const { minX, maxX, minY, maxY } = bounds(outline.inner.contours);
  const half = band / 2;
  if (half >= maxY && -half <= minY) return outline.inner;
  const strip = polygon([
    [minX - 1, -half],
    [maxX + 1, -half],
    [maxX + 1, half],
    [minX - 1, half],
  ]);
  return intersect(outline.inner, { contours: [strip] });
}

/** One figure of a field pattern. */
export interface Motif {
  readonly name: string;
  readonly region: Region;
}

/**
 * Draws each figure as a piece of its own, cut by the edge of the field or left out there. Returns how many were
 * drawn: 0 is for the caller to refuse.
 */
export function drawFilled(pen: Pen, motifs: Iterable<Motif>, field: Region, fill: 'clip' | 'whole'): number {
  const place = placer(field);
  let drawn = 0;
  for (const { name, region } of motifs) {
    const where = place(region);
    if (where === 'outside' || (where === 'across' && fill === 'whole')) continue;
    const kept = where === 'inside' ? region : intersect(region, field);
    if (kept.contours.length === 0) continue;
    pen.piece(name);
    drawRegion(pen, kept);
    drawn++;
  }
  return drawn;
}

/** A figure that pokes out by less than this share of its size is still inside: one that just fits must not fall to rounding. */
const POKE = 1e-7;

/** Tells how figures lie to a region: inside it, outside it or across its boundary. */
export function placer(field: Region): (figure: Region) => 'inside' | 'outside' | 'across' {
  const edges = field.contours.flat();
  const index = new EdgesIndex(edges);
  const box = bounds(field.contours);
  return (figure) => {
    const around = bounds(figure.contours);
    if (figure.contours.length === 0 || !meet(around, box)) return 'outside';
    const cx = (around.minX + around.maxX) / 2;
    const cy = (around.minY + around.maxY) / 2;
    const shrunk = placedRegion(figure, cx * POKE, cy * POKE, 0, 1 - POKE);
    for (const contour of shrunk.contours)
      for (const side of contour) {
        let met = false;
        for (const i of index.near(bounds([[side]]), 0))
          crossings(side, edges[i]!, () => {
            met = true;
          });
        if (met) return 'across';
      }
    // A boundary that meets no side may still lie wholly within the figure.
    if (field.contours.some((c) => windingNumber(shrunk.contours, c[0]!.x0, c[0]!.y0) !== 0)) return 'across';
    // A figure of several parts may have them on both sides.
    const inside = shrunk.contours.filter((c) => contains(field, c[0]!.x0, c[0]!.y0)).length;
    if (inside === 0) return 'outside';
    return inside === shrunk.contours.length ? 'inside' : 'across';
  };
}

function meet(a: Box, b: Box): boolean {
  return a.minX < b.maxX && a.maxX > b.minX && a.minY < b.maxY && a.maxY > b.minY;
}
