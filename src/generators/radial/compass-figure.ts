import type { Contour } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import { lens, petal } from './petal.js';
import { polar } from './polar.js';

/**
 * The figure that compasses draw when they step their own radius round a circle, for n petals: each petal lies
 * between two arcs through the middle, and neighbours touch along the arcs' ends; rim petals lie between the circle
 * and its mirrored arcs. Here every arc is moved in by half the gap, so neighbours stay one gap apart.
 */
export interface CompassFigure {
  readonly n: number;
  /** Radius of the circle that the uncut petals reach, mm. */
  readonly radius: number;
  readonly gap: number;
}

/** Radius of the circle for a figure whose petals reach `outer`, by their tips or by the backs of rim petals. */
export function compassRadius(n: number, outer: number, gap: number, rim: boolean): number {
  if (rim) return outer + gap / 2;
  let lo = outer;
  let hi = 4 * (outer + gap);
  for (let k = 0; k < 60; k++) {
    const radius = (lo + hi) / 2;
    if (radius / 2 + innerLens(radius, Math.PI / n, gap).length / 2 < outer) lo = radius;
    else hi = radius;
  }
  return (lo + hi) / 2;
}

/** The petals about the middle, the first in direction `first`. */
export function compassPetals({ n, radius, gap }: CompassFigure, first: number): Contour[] {
  const { length, width } = innerLens(radius, Math.PI / n, gap);
  if (width <= 0) return [];
  return Array.from({ length: n }, (_, i) =>
    petal((radius - length) / 2, (radius + length) / 2, width, first + (2 * Math.PI * i) / n),
  );
}

/** The petals between neighbouring tips, along the circle. From 6 petals on they clear the others. */
export function compassRim({ n, radius, gap }: CompassFigure, first: number): Contour[] {
  const half = Math.PI / n;
  const { length, width } = innerLens(2 * radius * sin(half), half, gap);
  if (width <= 0) return [];
  return Array.from({ length: n }, (_, i) => {
    const angle = first + half + 2 * half * i;
    const [mx, my] = polar(radius * cos(half), angle);
    const [ax, ay] = polar(length / 2, angle + Math.PI / 2);
    return lens([mx - ax, my - ay], [mx + ax, my + ay], width);
  });
}

/** A lens `chord` long whose arcs leave its chord at the angle `half`, with both arcs moved in by gap / 2. */
function innerLens(chord: number, half: number, gap: number): { length: number; width: number } {
  const radius = chord / 2 / sin(half);
  const off = radius * cos(half);
  const r = radius - gap / 2;
  return r <= off
    ? { length: 0, width: 0 }
    : { length: 2 * Math.sqrt(r * r - off * off), width: 2 * (r - off) };
}
