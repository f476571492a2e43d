import { type Edge, parameterEnd, pointParameter } from './edge.js';
import { SAME_POINT } from './tolerances.js';

/** Radius of the ball that touches (x, y) with its centre along the unit normal (nx, ny), and edge f. Infinite: none. */
export function ballRadius(x: number, y: number, nx: number, ny: number, f: Edge): number {
  const end = parameterEnd(f);
  let best = Math.min(throughPoint(x, y, nx, ny, f.x0, f.y0), throughPoint(x, y, nx, ny, f.x1, f.y1));
  if (f.r === 0) {
    const ux = (f.x1 - f.x0) / end;
    const uy = (f.y1 - f.y0) / end;
    let mx = -uy;
    let my = ux;
    let s = (x - f.x0) * mx + (y - f.y0) * my;
    if (s < 0) {
      s = -s;
      mx = -mx;
      my = -my;
    }
    const closing = 1 - (nx * mx + ny * my);
    // Pieces that touch: rounding decides on which side of the other's edge the point lies, so none is asked.
    if (closing > 1e-12 || s < SAME_POINT) {
      const rho = s < SAME_POINT ? 0 : s / closing;
      const t = (x + nx * rho - f.x0) * ux + (y + ny * rho - f.y0) * uy;
      if (t >= 0 && t <= end && rho < best) best = rho;
    }
    return best;
  }
  const radius = Math.abs(f.r);
  const wx = x - f.cx;
  const wy = y - f.cy;
  const w2 = wx * wx + wy * wy;
  const along = wx * nx + wy * ny;
  const beyond = w2 - radius * radius;
  const rho =
    Math.abs(beyond) < 2 * radius * SAME_POINT
      ? 0
      : beyond > 0
        ? beyond / (2 * (radius - along))
        : -beyond / (2 * (radius + along));
  if (rho >= 0 && rho < best) {
    const t = pointParameter(f, x + nx * rho, y + ny * rho);
    if (t >= 0 && t <= end) best = rho;
  }
  return best;
}

function throughPoint(x: number, y: number, nx: number, ny: number, qx: number, qy: number): number {
  const dx = qx - x;
  const dy = qy - y;
  const ahead = dx * nx + dy * ny;
  const d2 = dx * dx + dy * dy;
  if (d2 < 1e-18) return 0;
  return ahead > 0 ? d2 / (2 * ahead) : Number.POSITIVE_INFINITY;
}
