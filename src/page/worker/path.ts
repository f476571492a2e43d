import type { Edge } from '../../geometry/edge.js';
import { chordLength } from '../../geometry/edge.js';
import type { Contour } from '../../geometry/region.js';

/** Thousandths of a millimetre: finer than a screen shows at any zoom. */
const GRID = 1000;
/** Of radii: what is off in one is off many times over in its arc. */
const FINE = 1e6;

function at(v: number): string {
  // A minus before a nought is not written: String leaves it away.
  return String(Math.round(v * GRID) / GRID);
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
  const r = radiusText(e);
  return `A${r} ${r} 0 0 ${e.r > 0 ? 0 : 1} ${at(e.x1)} ${at(-e.y1)}`;
}

/**
 * The radius at which an arc stands as high over its rounded ends as it does over its own. Near half a circle its own
 * radius, rounded as the ends are, would set its crown off by ten times as much.
 */
function radiusText(e: Edge): string {
  const half = chordLength(e) / 2;
  const own = Math.abs(e.r);
  const high = (half * half) / (own + Math.sqrt(Math.max(0, own * own - half * half)));
  const [dx, dy] = [Number(at(e.x1)) - Number(at(e.x0)), Number(at(e.y1)) - Number(at(e.y0))];
  const r = high > 0 ? ((dx * dx + dy * dy) / 4 + high * high) / (2 * high) : own;
  return String(Math.round(r * FINE) / FINE);
}
