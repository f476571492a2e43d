import { type Contour, circle } from '../../geometry/region.js';
import { strokeLoops } from '../../geometry/stroke.js';
import type { Ball, Boundary } from '../../geometry/thicken/balls.js';
import { ahead, isFreeEnd } from '../../geometry/thicken/ends.js';
import { type Run, turned } from '../../geometry/thicken/runs.js';
import { fitted, type Node, shortened, turnedNodes } from '../../geometry/thicken/spine.js';

/** The closed end of a slot: how far beyond the last ball's middle it lies, and where. */
interface SlotEnd {
  readonly beyond: number;
  readonly tip: readonly [number, number];
}

/**
 * All that a disc of radius w covers on its way along a stretch of the axis. At the closed end of a slot it goes no
 * further than the slot does; a slot or hole shorter than the disc is wide is covered by one in its middle.
 */
export function alongAxis(b: Boundary, { balls, closed }: Run, w: number): Contour[] {
  if (closed) return strokeLoops(fitted(balls, true), 2 * w, { closed: true, join: 'round' });
  const end = slotEnd(b, balls[balls.length - 1]!, w);
  const start = slotEnd(b, turned(balls)[balls.length - 1]!, w);
  if (start && end) {
    const [dx, dy] = [end.tip[0] - start.tip[0], end.tip[1] - start.tip[1]];
    const [x, y] = [start.tip[0] + dx / 2, start.tip[1] + dy / 2];
    if (dx * dx + dy * dy < 4 * w * w) return [circle(x, y, w)];
  }
  const cut = end ? upTo(balls, end, w) : balls;
  const nodes = start ? turnedNodes(upTo(turnedNodes(cut), start, w)) : cut;
  if (nodes.length === 1) return [circle(nodes[0]!.x, nodes[0]!.y, w)];
  return strokeLoops(fitted(nodes, false), 2 * w, { closed: false, cap: 'round', join: 'round' });
}

function slotEnd(b: Boundary, last: Ball, w: number): SlotEnd | null {
  if (last.w >= w) return null;
  const beyond = ahead(b, last.x, last.y, last.tx, last.ty, 8 * w).distance;
  if (!isFreeEnd(b, last, beyond)) return null;
  return { beyond, tip: [last.x + last.tx * beyond, last.y + last.ty * beyond] };
}

/** Nodes cut back so that a disc about the last one reaches the slot's end. */
function upTo(nodes: readonly Node[], { beyond, tip }: SlotEnd, w: number): readonly Node[] {
  if (beyond >= w) return nodes;
  const cut = shortened(nodes, w - beyond);
  if (cut) return cut;
  const last = nodes[nodes.length - 1]!;
  return [{ ...last, x: tip[0] - last.tx * w, y: tip[1] - last.ty * w }];
}
