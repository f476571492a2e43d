import { TOLERANCES, type Tolerances } from './repair.js';

/** How a drawing is to be read. */
export interface ReadAs {
  /** What the lines of an SVG are: bands of their width, or the outlines of shapes. A DXF's are always outlines. */
  readonly lines: 'strokes' | 'outlines';
  readonly tolerances: Tolerances;
  /** Of a DXF, the layers to be read, with commas between; all when it is empty. */
  readonly layer: string;
}

export const AS_DRAWN: ReadAs = { lines: 'strokes', tolerances: TOLERANCES, layer: '' };

/** Tolerances for a drawing drawn `by` times as large as it is going to be made. */
export function scaledBy(t: Tolerances, by: number): Tolerances {
  return by === 1 ? t : { join: t.join * by, speck: t.speck * by, refit: t.refit * by };
}

/** The function with its last result kept: a drawing is drawn, then asked what was mended. */
export function remembered<T>(make: (scale: number, at: number) => T): (scale: number, at: number) => T {
  let last: { scale: number; at: number; made: T } | null = null;
  return (scale, at) => {
    if (last?.scale !== scale || last.at !== at) last = { scale, at, made: make(scale, at) };
    return last.made;
  };
}
