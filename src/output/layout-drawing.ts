import type { Island } from '../fit/islands.js';
import { isNumbered } from '../fit/islands.js';
import { type Laid, type Layout, layoutRegion } from '../fit/layout.js';
import { type Contour, circle, polygon, type Region } from '../geometry/region.js';
import type { Units } from './format.js';
import { MARKS_BORDER, type Marks, referenceSide, squareAt } from './marks.js';
import { type Label, numberLabel } from './numbers.js';
import { type Frame, frameOf } from './ring.js';

/** A layout as drawings hold it: the board's middle at (0, 0), the board's lower left corner the datum. */
export interface LayoutDrawing {
  readonly region: Region;
  readonly marks: Marks;
  readonly frame: Frame;
}

/** Sheet of a layout, mm: the board and the border for the marks. */
export function layoutSheet({ board }: Layout): { width: number; height: number; border: number } {
  return {
    width: board.length + 2 * MARKS_BORDER,
    height: board.width + 2 * MARKS_BORDER,
    border: MARKS_BORDER,
  };
}

/** The drawing of a layout of plug parts, or of whole pieces. `mirrored`: the parts come from a mirrored drawing. */
export function layoutDrawing(
  layout: Layout,
  part: 'pocket' | 'plug',
  islands: readonly Island[],
  mirrored: boolean,
  units: Units,
): LayoutDrawing {
  const { length, width } = layout.board;
  const [x0, y0] = [-length / 2, -width / 2];
  const outline: Contour[] = [box(x0, y0, length, width)];
  // The line to saw along for the clean rest.
  if (layout.offcut) outline.push(box(x0 + layout.used, y0, layout.offcut.length, width));
  if (part === 'pocket') for (const l of layout.laid) outline.push(...l.around);
  // Cut parts keep their spacing from the edge, so the datum's arms have that room.
  const arm = Math.min(3, 0.6 * layout.spacing);
  const sheet = layoutSheet(layout);
  return {
    region: layoutRegion(layout),
    frame: frameOf(sheet, units),
    marks: {
      outline,
      datum: {
        circle: circle(x0, y0, arm / 2),
        lines: [
          [x0 - arm, y0, x0 + arm, y0],
          [x0, y0 - arm, x0, y0 + arm],
        ],
      },
      ...reference(layout, units, sheet),
      numbers: layoutNumbers(layout, part, islands, mirrored),
    },
  };
}

/** The numbers of the parts where they lie, upright. */
function layoutNumbers(
  layout: Layout,
  part: 'pocket' | 'plug',
  islands: readonly Island[],
  mirrored: boolean,
): Label[] {
  if (!isNumbered(islands.length)) return [];
  const label = (l: Laid, { number, at: [x, y], room }: Island): Label => {
    const px = mirrored && part === 'plug' ? -x : x;
    const { c, s } = l.turn;
    return numberLabel(number, px * c - y * s + l.dx, px * s + y * c + l.dy, room);
  };
  if (part === 'pocket') return layout.laid.flatMap((l) => islands.map((i) => label(l, i)));
  return layout.laid.map((l) => label(l, islands.find((i) => i.number === l.item.number)!));
}

/** The square to check the scale by, in the border under the board's right end. */
function reference(
  { board }: Layout,
  units: Units,
  sheet: { width: number; height: number; border: number },
): Pick<Marks, 'square' | 'label'> {
  return squareAt(
    board.length / 2 - referenceSide(units),
    -board.width / 2 - (sheet.border + referenceSide(units)) / 2,
    sheet,
    units,
  );
}

function box(x: number, y: number, length: number, width: number): Contour {
  return polygon([
    [x, y],
    [x + length, y],
    [x + length, y + width],
    [x, y + width],
  ]);
}
