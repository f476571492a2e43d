import type { Ball } from '../../geometry/thicken/balls.js';
import { SPARE } from '../../geometry/tolerances.js';
import type { Room } from './room.js';

/** How fast a shift may come and go along a line: mm in a mm. */
const SLOPE = 0.15;

/** By how much the middle of a new band can move to the left at a ball, mm: what is lacking on a side, least and most. */
export interface Span {
  readonly lack: number;
  readonly least: number;
  readonly most: number;
}

/**
 * How far a band's middle can move at a ball so that each side can give what is asked of it; null where both together
 * cannot. In the middle each gives half.
 */
export function spanOf(w: number, { left, right }: Room, h: number): Span | null {
  const lack = h - w;
  if (lack <= 0) return { lack: 0, least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY };
  if (left + right < 2 * lack) return null;
  return { lack, least: lack - right, most: left - lack };
}

/**
 * Shifts of the balls of a stretch: none where both sides can give half, else all to one side, else as little as each
 * place needs. A shift of that kind stays the same for a width beyond the place that needs it, past corners that need
 * none, and goes gently.
 */
export function shiftsOf(balls: readonly Ball[], spans: readonly Span[], h: number): number[] {
  for (const side of [0, 1, -1]) {
    if (spans.some(({ lack, least, most }) => least > side * lack || most < side * lack)) continue;
    // The side that gives nothing is left alone, so the band stays a hair away from it.
    return spans.map(({ lack }) => side * (lack + Math.min(lack, 2 * SPARE)));
  }
  const at = [0];
  balls.forEach((ball, i) => {
    if (i > 0) at.push(at[i - 1]! + apart(balls[i - 1]!, ball));
  });
  const up = balls.map(() => 0);
  const down = balls.map(() => 0);
  spans.forEach((span, j) => {
    if (span.least <= 0 && span.most >= 0) return;
    balls.forEach((_, i) => {
      const d = SLOPE * Math.max(0, Math.abs(at[i]! - at[j]!) - 2 * h);
      up[i] = Math.max(up[i]!, span.least - d);
      down[i] = Math.min(down[i]!, span.most + d);
    });
  });
  return spans.map((s, i) => Math.min(s.most, Math.max(s.least, up[i]! + down[i]!)));
}

/** The balls of a stretch moved to the left. */
export function shifted(balls: readonly Ball[], by: readonly number[]): readonly Ball[] {
  if (by.every((o) => o === 0)) return balls;
  const moved = balls.map(
    (ball, i): Ball => ({ ...ball, x: ball.x - ball.ty * by[i]!, y: ball.y + ball.tx * by[i]! }),
  );
  return moved.map((ball, i): Ball => {
    const [a, c] = [moved[Math.max(0, i - 1)]!, moved[Math.min(moved.length - 1, i + 1)]!];
    const l = apart(a, c);
    return l < 1e-9 ? ball : { ...ball, tx: (c.x - a.x) / l, ty: (c.y - a.y) / l };
  });
}

function apart(a: Ball, b: Ball): number {
  return Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));
}
