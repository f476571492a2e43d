import type { Clip, ClipShape, Display } from './display.js';
import { type Matrix, multiply } from './matrix.js';
import { rectanglePath } from './outline-path.js';
import type { Style } from './properties.js';
import { lengths, type Whole, wholeOf } from './shapes.js';
import { Unreadable } from './unreadable.js';
import { type Rect, viewMatrix } from './viewport.js';
import type { SvgElement } from './xml.js';

/** What an element is drawn in. */
export interface Context {
  readonly style: Style | null;
  readonly matrix: Matrix;
  readonly whole: Whole;
  readonly clips: readonly Clip[];
  /** The elements that `use` has led to, outermost first. */
  readonly used: readonly SvgElement[];
  readonly depth: number;
}

/** The context inside an element with a viewport of its own, which cuts off what sticks out unless its style lets it. */
export function inViewport(
  context: Context,
  element: SvgElement,
  style: Style,
  port: Rect,
  box: Rect | null,
): Context {
  const view: Matrix = box ? viewMatrix(box, port, element) : [1, 0, 0, 1, port.x, port.y];
  const whole = box ?? port;
  const path = [rectanglePath(port.x, port.y, port.width, port.height)];
  const seen: ClipShape = { path, matrix: context.matrix, rule: 'nonzero' };
  const open = style.overflow === 'visible' || style.overflow === 'auto';
  return {
    ...context,
    matrix: multiply(context.matrix, view),
    whole: wholeOf(whole.width, whole.height),
    clips: open ? context.clips : [...context.clips, [seen]],
  };
}

/** The size a drawing shows at, CSS pixels; null when it gives none. */
export function pageSize(root: SvgElement, box: Rect | null): Display['page'] {
  const own = (name: 'width' | 'height'): number | null => {
    const text = root.attributes.get(name)?.trim();
    if (text === undefined || text === 'auto' || text.endsWith('%')) return null;
    return lengths(root, wholeOf(1, 1))(name, 'other');
  };
  const w = own('width');
  const h = own('height');
  const width = w ?? (box ? (h === null ? box.width : (h * box.width) / box.height) : null);
  const height = h ?? (box ? (w === null ? box.height : (w * box.height) / box.width) : null);
  if (width === null || height === null) return null;
  if (width > 0 && height > 0) return { width, height };
  throw new Unreadable('has a width or height that is not above 0');
}
