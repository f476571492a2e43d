import { chordLength, type Edge } from './edge.js';

/** Quickly, whether two edges that do not cross are at least d apart: chords are, by more than the arcs bulge beside them. */
export function surelyApart(e: Edge, f: Edge, d: number): boolean {
  const clear = d + bulgeBound(e) + bulgeBound(f);
  const c2 = clear * clear;
  return (
    toChord2(e.x0, e.y0, f) >= c2 &&
    toChord2(e.x1, e.y1, f) >= c2 &&
    toChord2(f.x0, f.y0, e) >= c2 &&
    toChord2(f.x1, f.y1, e) >= c2
  );
}

/** An arc under half a circle strays from its chord by less than half the chord's length. */
function bulgeBound(e: Edge): number {
  return e.r === 0 ? 0 : chordLength(e) / 2;
}

/** Squared distance from a point to an edge's chord. */
function toChord2(x: number, y: number, e: Edge): number {
  const dx = e.x1 - e.x0;
  const dy = e.y1 - e.y0;
  const px = x - e.x0;
  const py = y - e.y0;
  const t = px * dx + py * dy;
  const l2 = dx * dx + dy * dy;
  if (t <= 0) return px * px + py * py;
  if (t >= l2) return (x - e.x1) * (x - e.x1) + (y - e.y1) * (y - e.y1);
  const off = px * dy - py * dx;
  return (off * off) / l2;
}
