import { footOn } from '../../geometry/nearest.js';
import { distanceToEdge } from '../../geometry/region.js';
import type { Ball, Boundary } from '../../geometry/thicken/balls.js';
import { ahead } from '../../geometry/thicken/ends.js';
import { ballRadius } from '../../geometry/touching-ball.js';
import { OPENING, type Side } from './narrow.js';

/** What is wanted of a narrow place, and what has to be left beside it, mm. */
export interface Wanted {
  readonly side: Side;
  /** Half the width asked. */
  readonly h: number;
  /** Least width of what lies beside it. */
  readonly keep: number;
  /** Whether what lies beyond the side may have to be widened as well, and takes its share. */
  readonly shared: boolean;
  /** Where what lies beside it may be made wide again at the cost of what lies behind: the width that has to stay there. */
  readonly behind?: number;
}

/** What the sides of a ball can give, mm: of its second contact, on the left of the axis, and its first. */
export interface Room {
  readonly left: number;
  readonly right: number;
}

/** Left over for the extra that bands are wide, mm. */
const MARGIN = 0.01;

/** cos 150 degrees: what lies between sides that are further from parallel is a corner, which a cut only moves. */
const CORNER = -0.866;

/** The same for a rounded corner, whose other side is met straight ahead: sine of 30 degrees. */
const SLANT = 0.5;

export function roomOf(b: Boundary, ball: Ball, wanted: Wanted): Room {
  return {
    left: give(b, ball.qx, ball.qy, ball, wanted),
    right: give(b, ball.px, ball.py, ball, wanted),
  };
}

function give(
  b: Boundary,
  x: number,
  y: number,
  ball: Ball,
  { side, h, keep, shared, behind }: Wanted,
): number {
  const [nx, ny] = [(x - ball.x) / ball.w, (y - ball.y) / ball.w];
  const most = keep / 2 + 2 * h;
  const beyond = touching(b, x, y, nx, ny, most);
  if (beyond === 'free') return Number.POSITIVE_INFINITY;
  if (beyond === 'own') {
    // The rounded end of a limb has its whole length to give, a disc its diameter, a rounded corner what it likes.
    const { distance, direction } = ahead(b, x + nx * 1e-6, y + ny * 1e-6, nx, ny, 2 * most);
    const slant = Math.abs(direction[0] * nx + direction[1] * ny);
    return slant > SLANT ? Number.POSITIVE_INFINITY : Math.max(0, distance - keep - MARGIN);
  }
  if (beyond.facing > CORNER) return Number.POSITIVE_INFINITY;
  let thickness = 2 * beyond.w;
  if (shared || behind !== undefined) {
    const [cx, cy] = [x + nx * beyond.w, y + ny * beyond.w];
    const { qx, qy } = beyond;
    const far = 2 * most;
    const next = touching(b, qx, qy, (qx - cx) / beyond.w, (qy - cy) / beyond.w, far);
    const across =
      typeof next === 'object' && next.facing < (side === 'gap' ? OPENING : CORNER) ? 2 * next.w : 2 * far;
    if (across < 2 * h) thickness -= h - across / 2;
    else if (behind !== undefined) thickness += Math.max(0, across - behind - MARGIN);
  }
  return Math.max(0, thickness - keep - MARGIN);
}

/** A ball set against a place of the boundary and grown: radius, contact, cosine of the angle between contacts. */
interface Touching {
  readonly w: number;
  readonly qx: number;
  readonly qy: number;
  readonly facing: number;
}

/** own: the ball fills the arc it stands in; free: it reached the most. */
function touching(
  b: Boundary,
  x: number,
  y: number,
  nx: number,
  ny: number,
  most: number,
): Touching | 'own' | 'free' {
  let own = Number.POSITIVE_INFINITY;
  let w = most;
  let touched = -1;
  const around = b.index.near({ minX: x, maxX: x, minY: y, maxY: y }, 2 * most);
  for (const j of around) {
    const e = b.edges[j]!;
    if (distanceToEdge(e, x, y) < 1e-6) {
      if (e.r !== 0 && (e.cx - x) * nx + (e.cy - y) * ny > 0) own = Math.min(own, Math.abs(e.r));
      continue;
    }
    const rho = ballRadius(x, y, nx, ny, e);
    if (rho < w) {
      w = rho;
      touched = j;
    }
  }
  if (own < most && w > own - 1e-6) return 'own';
  if (touched < 0) return 'free';
  const [cx, cy] = [x + nx * w, y + ny * w];
  const [qx, qy] = footOn(b.edges[touched]!, cx, cy);
  return { w, qx, qy, facing: (-nx * (qx - cx) - ny * (qy - cy)) / w };
}
