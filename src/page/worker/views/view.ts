import type { Outline } from '../../../outline/outline.js';
import { down } from '../figure.js';
import { pathOf } from '../path.js';
import type { Shape, View, ViewName } from '../protocol.js';

/** A view from what differs between views. */
export function viewOf(
  view: ViewName,
  outline: Pick<Outline, 'box'>,
  rest: Partial<Omit<View, 'view'>>,
): View {
  return { view, box: down(outline.box), picture: '', shapes: [], labels: [], key: [], says: '', ...rest };
}

/** The face as a plain sheet of wood. */
export function faceShape({ face }: Outline): Shape {
  return { d: pathOf(face.contours), look: 'face' };
}

/** "3 parts", "one part". */
export function counted(n: number, what: string): string {
  return n === 1 ? `one ${what}` : `${n} ${what}s`;
}
