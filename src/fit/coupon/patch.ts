import { enforce } from '../../cutter/enforce.js';
import type { Rule } from '../../cutter/rule.js';
import type { Piece } from '../../geometry/artwork.js';
import { intersect } from '../../geometry/boolean.js';
import { EdgesIndex } from '../../geometry/edges-index.js';
import { Undecided } from '../../geometry/fault.js';
import { footOn } from '../../geometry/nearest.js';
import { area, type Box, bounds, contains, flatten, parts, type Region } from '../../geometry/region.js';
import { boxRegion, grown, overlap, within } from './box.js';
import { thinnest } from './narrows.js';

/** A window of the pattern, made cuttable. */
export interface Patch {
  readonly region: Region;
  /** Is the boundary in the places it was cut for the very boundary of the pattern? */
  readonly kept: boolean;
  /** Is it thinner somewhere, in wall or limb, than the pattern is anywhere? Then it is harder than the piece. */
  readonly harder: boolean;
}

/** What a patch is compared with: the thinnest wall and limb of the whole pattern, mm; Infinity where there is none. */
export interface Thinness {
  readonly wall: number;
  readonly limb: number;
}

/** How far the boundary in a place may be off the pattern's, mm: what the coordinates of a file are off by, and less. */
const SAME = 1e-4;

/** Chords along which the boundary of a place is compared stray from it by this, mm. */
const CHORD = 0.01;

/** How much a window is enlarged, mm, when the boundary runs so along its edge that nothing can be decided. */
const NUDGE = 0.013;

/**
 * The part of a pattern in a window, with the corners that the window cuts rounded like any others. Crumbs that the window
 * cuts off beside the places wanted are left out. The pattern is cuttable already, so what the window does not touch stays.
 *
 * @param places boxes in which the boundary has to stay as it is
 */
export function makePatch(
  pieces: readonly Piece[],
  window: Box,
  places: readonly Box[],
  rule: Rule,
  pattern: Thinness,
): Patch {
  const cut = clipped(pieces, window, rule);
  const least = 16 * rule.r * rule.r;
  const whole = parts(cut)
    .filter((p) => area({ contours: p }) >= least || places.some((b) => touches(p, b)))
    .flat();
  const region = { contours: whole };
  const source = { contours: pieces.flatMap((p) => p.region.contours) };
  const thin = (kind: 'wall' | 'limb'): boolean => {
    const found = thinnest(region, kind, rule.r);
    return found !== null && found.size < pattern[kind] - 0.01;
  };
  return {
    region,
    kept: places.every((b) => follows(source, region, b) && follows(region, source, b)),
    harder: thin('wall') || thin('limb'),
  };
}

function clipped(pieces: readonly Piece[], window: Box, rule: Rule): Region {
  for (let attempt = 0; ; attempt++)
    try {
      const box = boxRegion(grown(window, attempt * NUDGE));
      const inside = pieces.flatMap(({ name, region }) => {
        if (!overlap(bounds(region.contours), window)) return [];
        const part = intersect(region, box);
        return part.contours.length > 0 ? [{ name, region: part }] : [];
      });
      return enforce({ pieces: inside }, rule).region;
    } catch (e) {
      if (!(e instanceof Undecided) || attempt === 3) throw e;
    }
}

function touches(part: Region['contours'], box: Box): boolean {
  const { minX, minY, maxX, maxY } = box;
  return (
    part.some((c) => flatten(c, CHORD).some(([x, y]) => within(box, x, y))) ||
    contains({ contours: part }, (minX + maxX) / 2, (minY + maxY) / 2) ||
    intersect({ contours: part }, boxRegion(box)).contours.length > 0
  );
}

/** Does every point of a's boundary in the box lie on b's? Seen at points along it, each no more than a chord apart. */
function follows(a: Region, b: Region, box: Box): boolean {
  const edges = b.contours.flat();
  const index = new EdgesIndex(edges);
  const on = (x: number, y: number): boolean =>
    index.near({ minX: x, minY: y, maxX: x, maxY: y }, SAME).some((k) => {
      const [fx, fy] = footOn(edges[k]!, x, y);
      return (fx - x) * (fx - x) + (fy - y) * (fy - y) <= SAME * SAME;
    });
  return a.contours.every((c) => stations(c, box).every(([x, y]) => on(x, y)));
}

/** Points of a contour that lie in the box: ends and a few between of every edge near it. */
function stations(contour: Region['contours'][number], box: Box): [number, number][] {
  return contour.flatMap((e) => {
    if (!overlap(bounds([[e]]), box)) return [];
    const chain = e.r === 0 ? straight(e.x0, e.y0, e.x1, e.y1, box) : flatten([e], CHORD / 10);
    return chain.filter(([x, y]) => within(box, x, y));
  });
}

/** Points along a line at most an eighth of the box's longer side apart. */
function straight(x0: number, y0: number, x1: number, y1: number, box: Box): [number, number][] {
  const step = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 8;
  const length = Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
  const n = Math.max(1, Math.ceil(length / step));
  return Array.from({ length: n + 1 }, (_, k) => [x0 + ((x1 - x0) * k) / n, y0 + ((y1 - y0) * k) / n]);
}
