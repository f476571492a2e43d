import { enforce } from '../../src/cutter/enforce.js';
import { filleted } from '../../src/cutter/fillet.js';
import { tightPlaces } from '../../src/cutter/tight.js';
import { makePair } from '../../src/fit/split.js';
import type { Piece } from '../../src/geometry/artwork.js';
import type { Edge } from '../../src/geometry/edge.js';
import type { Contour } from '../../src/geometry/region.js';
import { type Rolled, roll, rollOutside } from '../../src/geometry/roll.js';
import { tidied } from '../../src/geometry/tidy.js';
import type { Hard } from './hard-shapes.js';
import { gapOff, outside, stray } from './meters.js';
import { closing, combined, offsetBy, opening, polygonArea, type Rings } from './reference.js';
import { ringsOf } from './rings.js';

/** A law of the pass: gives what an outline breaks, in words; nothing where the law holds. */
export type Law = (given: Hard) => string[];

export function passed({ pieces, rule }: Hard): readonly Piece[] {
  return enforce({ pieces }, rule).pieces;
}

export function contoursOf(pieces: readonly Piece[]): Contour[] {
  return pieces.flatMap((p) => [...p.region.contours]);
}

/** Only what is over its limit is said. */
function over(limit: number, measured: number, what: string): string[] {
  return measured > limit ? [`${what} ${measured} mm`] : [];
}

/** The pass changes nothing of its own result by more than 0.001 mm. */
export const idempotent: Law = (given) => {
  const once = passed(given);
  const twice = passed({ ...given, pieces: once });
  if (once.length !== twice.length) return [`${once.length} pieces, then ${twice.length}`];
  return over(0.001, stray(contoursOf(once), contoursOf(twice)), 'moved by');
};

/** Opening adds nothing and closing takes nothing away, to 1e-6 mm. */
export const oneWay: Law = ({ pieces, rule: { r } }) =>
  pieces.flatMap(({ region }) => {
    const drawn = region.contours.map(tidied);
    const opened = { contours: roll(drawn, r).contours };
    const closed = { contours: rollOutside(drawn, r).contours };
    return [
      ...over(0, outside(opened, { contours: drawn }), 'opening adds'),
      ...over(0, outside({ contours: drawn }, closed), 'closing takes'),
    ];
  });

/** Opening and closing leave every arc's ends on its circle, to 1e-7 mm: a ball that rolls along it finds its way on. */
export const onCircles: Law = ({ pieces, rule: { r } }) =>
  pieces.flatMap(({ region }) => {
    const opened = roll(region.contours.map(tidied), r).contours;
    const off = [...opened, ...rollOutside(opened, r).contours].flat().map(offCircle);
    return over(1e-7, Math.max(0, ...off), 'an arc off its circle by');
  });

function offCircle({ x0, y0, x1, y1, cx, cy, r }: Edge): number {
  const off = (x: number, y: number): number => Math.abs(Math.hypot(x - cx, y - cy) - Math.abs(r));
  return r === 0 ? 0 : Math.max(off(x0, y0), off(x1, y1));
}

/**
 * Before narrow places are settled the pass opens, then closes (`roll`, then `rollOutside`). With a disc larger to open and
 * one smaller to close an engine must leave less, the other way round more.
 */
export const sandwiched: Law = ({ pieces, rule: { r } }) => {
  const e = 0.003;
  const chord = 0.0005;
  return pieces.flatMap(({ region }) => {
    const rings = ringsOf(region.contours, chord);
    const ours = ringsOf(rollOutside(roll(region.contours.map(tidied), r).contours, r).contours, chord);
    const less = closing('clipper', opening('clipper', rings, r + e, chord), r - e, chord);
    const more = closing('clipper', opening('clipper', rings, r - e, chord), r + e, chord);
    return [
      ...spill(less, ours).map((a) => `leaves out ${a} mm2`),
      ...spill(ours, more).map((a) => `holds ${a} mm2 too much`),
    ];
  });
};

/** Area of a outside b, mm2, but for what is no wider than a chord strays on either side. */
export function spill(a: Rings, b: Rings): number[] {
  const area = polygonArea(offsetBy('clipper', combined('difference', a, b), -0.0005, 0.0001));
  return area > 1e-6 ? [area] : [];
}

/** The plug lies in the pocket, the clearance away everywhere, to 1e-6 mm. */
export const fits: Law = (given) => {
  const pieces = passed(given);
  const safe = { region: { contours: contoursOf(pieces) }, pieces, changes: [] };
  return (['plug', 'pocket', 'both'] as const).flatMap((from) => {
    const clearance = 0.08;
    const { pocket, plug } = makePair(safe, { clearance, from, face: 'up' });
    return [
      ...over(0, outside(plug, pocket), `${from}: plug outside by`),
      ...over(1e-6, gapOff(plug, pocket, clearance), `${from}: gap at the plug off by`),
      ...over(1e-6, gapOff(pocket, plug, clearance), `${from}: gap at the pocket off by`),
    ];
  });
};

/** Arcs set into corners and the rolling ball come to the same, to 0.001 mm, wherever both apply. */
export const twoRoutes: Law = ({ pieces, rule: { r } }) =>
  pieces.flatMap(({ region }) => {
    const both = byBothRoutes(region.contours.map(tidied), r);
    return both ? over(0.001, stray(both.arcs, both.rolled), 'the two routes are apart by') : [];
  });

/**
 * A drawing with arcs in its corners, and the same opened and closed by a rolling ball; null unless both apply: the arcs fit and
 * are sound, and the ball rests in single corners only. (A limb under 2r between a concave corner and another edge is one that
 * filling the corner first would save and opening first cuts.)
 */
export function byBothRoutes(
  drawn: readonly Contour[],
  r: number,
): { arcs: Contour[]; rolled: readonly Contour[] } | null {
  const arcs: Contour[] = [];
  for (const c of drawn) {
    const f = filleted(c, r);
    if (!f) return null;
    arcs.push(f);
  }
  if (tightPlaces(arcs, r, true).length > 0) return null;
  const opened = roll(drawn, r);
  const closed = rollOutside(opened.contours, r);
  return cornersOnly(opened) && cornersOnly(closed) ? { arcs, rolled: closed.contours } : null;
}

function cornersOnly({ rests, lost }: Rolled): boolean {
  return lost.length === 0 && rests.every((rest) => rest.corner && rest.dropped.length <= 2);
}
