import { arc, type Edge } from './edge.js';
import { type Contour, type Region, reversedContour } from './region.js';
import { cos, sin } from './trig.js';

/** x -> -x. Contours are reversed so that inside stays on the left. */
export function mirrorX(region: Region): Region {
  return {
    contours: region.contours.map((c) =>
      reversedContour(c.map((e) => arc(-e.x0, e.y0, -e.x1, e.y1, -e.cx, e.cy, -e.r))),
    ),
  };
}

/** Moves, turns (radians, counter-clockwise about the origin, first) and scales (first of all; positive) a contour. */
export function placed(c: Contour, dx: number, dy: number, turn = 0, scale = 1): Contour {
  const k = cos(turn) * scale;
  const m = sin(turn) * scale;
  const map = (x: number, y: number): [number, number] => [x * k - y * m + dx, x * m + y * k + dy];
  return c.map((e): Edge => {
    const [x0, y0] = map(e.x0, e.y0);
    const [x1, y1] = map(e.x1, e.y1);
    const [cx, cy] = e.r === 0 ? [0, 0] : map(e.cx, e.cy);
    return arc(x0, y0, x1, y1, cx, cy, e.r * scale);
  });
}

export function placedRegion(region: Region, dx: number, dy: number, turn = 0, scale = 1): Region {
  return { contours: region.contours.map((c) => placed(c, dx, dy, turn, scale)) };
}
