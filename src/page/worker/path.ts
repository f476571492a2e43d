import type { Edge } from '../../geometry/edge.js';
import { chordLength } from '../../geometry/edge.js';
import type { Contour } from '../../geometry/region.js';

/** Thousandths of a millimetre: finer than a screen shows at any zoom. */
const GRID = 1000;

function at(v: number): string {
  const n = Math.round(v * GRID) / GRID;
  return Object.is(n, -0) ? '0' : String(n);
}

/** SVG path data of closed contours: mm, y down, the middle at 0, 0; lines and true arcs. */
export function pathOf(contours: readonly Contour[]): string {
  let d = '';
  for (const contour of contours) {
    const [first] = contour;
    if (first) d += `M${at(first.x0)} ${at(-first.y0)}${contour.map(step).join('')}Z`;
  }
  return d;
}

/** The same of open stretches. */
export function openPathOf(stretches: readonly (readonly Edge[])[]): string {
  return stretches
    .filter((s) => s.length > 0)
    .map((s) => `M${at(s[0]!.x0)} ${at(-s[0]!.y0)}${s.map(step).join('')}`)
    .join('');
}

function step(e: Edge): string {
  if (e.r === 0) return `L${at(e.x1)} ${at(-e.y1)}`;
  // A counter-clockwise arc with y up looks counter-clockwise on the screen too, which SVG calls sweep 0.
  const r = at(Math.max(Math.abs(e.r), chordLength(e) / 2));
  return `A${r} ${r} 0 0 ${e.r > 0 ? 0 : 1} ${at(e.x1)} ${at(-e.y1)}`;
}
