import { bounds, contains, distanceToBoundary, type Region } from '../../geometry/region.js';
import { atan2 } from '../../geometry/trig.js';
import type { Outline } from '../../outline/outline.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import type { FrameSide } from './frame-track.js';

/** Refuses outlines with corners that are not square to a band whose corners are made for square ones. */
export function squareOnly(values: Values, outline: Outline): void {
  if (values.across === true || outline.shape !== 'polygon' || outline.inner.contours[0]?.length === 4)
    return;
  throw new Refusal(
    'no-room',
    'pattern.generator: this band turns square corners only; use it on a rectangle, circle, ring or stave, or set across',
  );
}

/** Has the outline sides that a band follows round corners? */
export function hasCorners(outline: Outline): boolean {
  return outline.shape === 'rectangle' || outline.shape === 'polygon';
}

/**
 * The sides of the outline's inner edge moved in by `depth` mm, meeting in sharp corners, counter-clockwise. A
 * rectangle's corners count as square. Null when nothing is left.
 */
export function frameSides(outline: Outline, depth: number): FrameSide[] | null {
  const corners = outline.shape === 'rectangle' ? boxCorners(outline.inner) : lineStarts(outline.inner);
  const n = corners.length;
  const headings = corners.map((p, i) => unit(p, corners[(i + 1) % n]!));
  const moved = corners.map(([x, y], i): [number, number] => {
    const [ax, ay] = headings[(i + n - 1) % n]!;
    const [bx, by] = headings[i]!;
    // Both sides moved to their left by depth meet at corner + depth (b - a) / (a x b).
    const cross = ax * by - ay * bx;
    return [x + (depth * (bx - ax)) / cross, y + (depth * (by - ay)) / cross];
  });
  const sides = moved.map((start, i) => {
    const [hx, hy] = headings[i]!;
    const end = moved[(i + 1) % n]!;
    // Negative when the sides were moved past the middle.
    const length = (end[0] - start[0]) * hx + (end[1] - start[1]) * hy;
    return { start, heading: atan2(hy, hx), length };
  });
  return sides.every((s) => s.length > 1e-6) ? sides : null;
}

/** How much deeper than the inner edge sharp corners must lie to be inside it: more than 0 for rounded corners, mm. */
export function cornerRoom(outline: Outline): number {
  if (outline.shape !== 'rectangle') return 0;
  const { maxX, maxY } = bounds(outline.inner.contours);
  if (contains(outline.inner, maxX - 1e-6, maxY - 1e-6)) return 0;
  // On the diagonal the rounded corner lies r (sqrt 2 - 1) inside the square one, and r (1 - 1 / sqrt 2) along each side.
  return (distanceToBoundary(outline.inner, maxX, maxY) / Math.SQRT2) * (1 + 1e-9);
}

function boxCorners(region: Region): [number, number][] {
  const { minX, minY, maxX, maxY } = bounds(region.contours);
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
}

function lineStarts(region: Region): [number, number][] {
  return region.contours[0]!.map((e) => [e.x0, e.y0]);
}

function unit(p: readonly [number, number], q: readonly [number, number]): [number, number] {
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const l = Math.sqrt(dx * dx + dy * dy);
  return [dx / l, dy / l];
}
