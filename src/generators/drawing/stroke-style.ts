import type { Stroke } from './display.js';
import { readLength, readNumbers } from './numbers.js';
import type { Style } from './properties.js';
import { shortened } from './shortened.js';
import { Unreadable } from './unreadable.js';

const JOINS = ['miter', 'round', 'bevel'] as const;
const CAPS = ['butt', 'round', 'square'] as const;

/** How a line is drawn; null when it has no width. Words that SVG does not know count as its first choice, as it says. */
export function readStroke(style: Style, whole: number): Stroke | null {
  const width = readLength(style['stroke-width'], whole, 'stroke-width');
  if (width < 0) throw new Unreadable('has a negative stroke-width; give one above 0');
  if (width === 0) return null;
  const dashes = style['stroke-dasharray'];
  // A list that cannot be read is as good as none; so are dashes of no length.
  if (dashes !== 'none' && (readNumbers(dashes.replace(/[a-z%]+/gi, ' ')) ?? []).some((d) => d > 0))
    throw new Unreadable(
      `has stroke-dasharray="${shortened(dashes)}", which is not read; draw the dashes as lines of their own, or take it off`,
    );
  const miterLimit = Number(style['stroke-miterlimit']);
  return {
    width,
    fixed: style['vector-effect'] === 'non-scaling-stroke',
    join: JOINS.find((j) => j === style['stroke-linejoin']) ?? 'miter',
    cap: CAPS.find((c) => c === style['stroke-linecap']) ?? 'butt',
    miterLimit: miterLimit >= 1 ? miterLimit : 4,
  };
}
