import type { Remark } from './artwork.js';
import type { Region } from './region.js';

/**
 * Drawing code talks to a pen, so that a recorder, a meter or a writer can all receive it. Millimetres, y up.
 * Paths may be drawn in either sense and may overlap within a piece: a piece is what has winding number other than 0.
 */
export interface Pen {
  /** Starts a new piece; what follows belongs to it until the next call. Names appear in messages ("letter 3, 'e'"). */
  piece(name: string): void;
  move(x: number, y: number): void;
  line(x: number, y: number): void;
  /** A circular arc to (x, y) with bulge tan(sweep / 4), positive counter-clockwise. */
  arc(x: number, y: number, bulge: number): void;
  quadratic(cx: number, cy: number, x: number, y: number): void;
  cubic(c1x: number, c1y: number, c2x: number, c2y: number, x: number, y: number): void;
  /** A whole sound region, for which the pen need not look for crossings. */
  region(region: Region): void;
  /** Closes the path with a straight line if it does not end where it started. Every path must be closed. */
  close(): void;
  /** Tells the user something about the drawing. */
  remark(remark: Remark): void;
}
