import type { Edge } from '../geometry/edge.js';

/** How much a tangent may turn at a joint, radians: a direction this far beside an arc may still be a normal there. */
const TURN = 2e-3;

/**
 * Whether two edges that do not cross may face each other from less than d apart: whether there can be a point of either
 * such that the line between them is normal to both. Errs on the side of yes. Where smooth boundaries that bend no
 * tighter than r come nearer than 2r to each other, some two of their edges do (Federer 1959; Aamari et al. 2019,
 * theorem 3.4: the reach is set by a curvature or by such a pair).
 */
export function mayFace(e: Edge, f: Edge, d: number): boolean {
  if (e.r === 0) return f.r === 0 ? parallel(e, f) : lineFacesArc(e, f, d);
  return f.r === 0 ? lineFacesArc(f, e, d) : arcFacesArc(e, f, d);
}

function parallel(e: Edge, f: Edge): boolean {
  const ax = e.x1 - e.x0;
  const ay = e.y1 - e.y0;
  const bx = f.x1 - f.x0;
  const by = f.y1 - f.y0;
  const cross = ax * by - ay * bx;
  return cross * cross <= 4 * TURN * TURN * (ax * ax + ay * ay) * (bx * bx + by * by);
}

/** On the perpendicular through the arc's centre. */
function lineFacesArc(l: Edge, a: Edge, d: number): boolean {
  const ux = l.x1 - l.x0;
  const uy = l.y1 - l.y0;
  const length = Math.sqrt(ux * ux + uy * uy);
  const dx = a.cx - l.x0;
  const dy = a.cy - l.y0;
  const radius = Math.abs(a.r);
  const spare = TURN * (radius + d) * length;
  const along = dx * ux + dy * uy;
  if (along < -spare || along > length * length + spare) return false;
  // Left of the line the centre is `away` from it, and its nearest way there is to the right: along (uy, -ux).
  const away = (ux * dy - uy * dx) / length;
  return (
    (Math.abs(away - radius) < d && pointsAt(a, uy, -ux, length, TURN)) ||
    (Math.abs(away + radius) < d && pointsAt(a, -uy, ux, length, TURN))
  );
}

/** On the line of centres. */
function arcFacesArc(e: Edge, f: Edge, d: number): boolean {
  const dx = f.cx - e.cx;
  const dy = f.cy - e.cy;
  const c = Math.sqrt(dx * dx + dy * dy);
  const p = Math.abs(e.r);
  const q = Math.abs(f.r);
  // Arcs about nearly one centre face each other everywhere.
  const turn = (TURN * (c + p + q)) / c;
  if (!(turn < 0.5)) return true;
  // The line meets the circles, from e's centre, at -p and p, and at c - q and c + q: how near are they to each other?
  const aheadNear = Math.abs(c - q - p) < d;
  const aheadFar = Math.abs(c + q - p) < d;
  const behindNear = Math.abs(c - q + p) < d;
  const behindFar = c + q + p < d;
  return (
    ((aheadNear || aheadFar) &&
      pointsAt(e, dx, dy, c, turn) &&
      ((aheadNear && pointsAt(f, -dx, -dy, c, turn)) || (aheadFar && pointsAt(f, dx, dy, c, turn)))) ||
    ((behindNear || behindFar) &&
      pointsAt(e, -dx, -dy, c, turn) &&
      ((behindNear && pointsAt(f, -dx, -dy, c, turn)) || (behindFar && pointsAt(f, dx, dy, c, turn))))
  );
}

/** Does a direction of the given length point at an arc, or past its ends by no more than `turn`? */
function pointsAt(a: Edge, x: number, y: number, length: number, turn: number): boolean {
  const s = a.r > 0 ? 1 : -1;
  const spare = -turn * length * Math.abs(a.r);
  return (
    ((a.x0 - a.cx) * y - (a.y0 - a.cy) * x) * s >= spare &&
    (x * (a.y1 - a.cy) - y * (a.x1 - a.cx)) * s >= spare
  );
}
