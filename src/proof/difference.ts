import { pointAlong } from './distance.js';
import type { Drawing } from './drawing.js';
import { STRIDE } from './edge-index.js';

/**
 * Greatest distance, mm, between two drawings of one thing, edge by edge in the order written: both ends and the
 * middle of every arc. Infinity when contours or edges do not pair off one to one.
 */
export function difference(a: Drawing, b: Drawing): number {
  if (a.edges.count !== b.edges.count || a.contours !== b.contours) return Infinity;
  for (let k = 0; k < a.starts.length; k++) if (a.starts[k] !== b.starts[k]) return Infinity;
  let most = 0;
  const see = (x0: number, y0: number, x1: number, y1: number) => {
    const d = (x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0);
    // What is no number is no agreement either.
    if (!(d <= most)) most = d >= 0 ? d : Infinity;
  };
  const [e, f] = [a.edges, b.edges];
  for (let i = 0; i < e.count; i++) {
    see(e.x0[i]!, e.y0[i]!, f.x0[i]!, f.y0[i]!);
    see(e.x1[i]!, e.y1[i]!, f.x1[i]!, f.y1[i]!);
    if (e.r[i] === 0 && f.r[i] === 0) continue;
    const [x0, y0] = pointAlong(a.index.pieces, i * STRIDE, 0.5);
    const [x1, y1] = pointAlong(b.index.pieces, i * STRIDE, 0.5);
    see(x0, y0, x1, y1);
  }
  return Math.sqrt(most);
}
