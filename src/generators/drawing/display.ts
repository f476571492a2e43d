import type { Matrix } from './matrix.js';
import type { Subpath } from './outline-path.js';
import type { SvgElement } from './xml.js';

/** A drawing as a list of what it paints, first to last, every reference followed and every style worked out. */
export interface Display {
  readonly painted: readonly Painted[];
  /** The page, CSS pixels; null when the file gives no size. */
  readonly page: { readonly width: number; readonly height: number } | null;
}

export interface Painted {
  readonly element: SvgElement;
  readonly path: readonly Subpath[];
  /** From the path's coordinates to the page's: CSS pixels, y down. */
  readonly matrix: Matrix;
  /** Does it add to the figure, or take away what lies under it? */
  readonly white: boolean;
  readonly stroke: Stroke | null;
  /** For a fill. */
  readonly rule: FillRule;
  /** Only what lies in every one of these is seen. */
  readonly clips: readonly Clip[];
}

export type FillRule = 'nonzero' | 'evenodd';

export function fillRule(text: string): FillRule {
  return text === 'evenodd' ? 'evenodd' : 'nonzero';
}

export interface Stroke {
  /** In the path's coordinates; in pixels of the page when `fixed`. */
  readonly width: number;
  readonly fixed: boolean;
  readonly join: 'miter' | 'round' | 'bevel';
  readonly cap: 'butt' | 'round' | 'square';
  readonly miterLimit: number;
}

/** The union of some filled paths. */
export type Clip = readonly ClipShape[];

export interface ClipShape {
  readonly path: readonly Subpath[];
  readonly matrix: Matrix;
  readonly rule: FillRule;
}
