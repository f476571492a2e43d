import type { Vector } from '../../geometry/bezier.js';

/** Paths in a drawing's own coordinates (user units, y down), before any transform. */

/** An arc of an ellipse: centre + u cos(t) + v sin(t), for t over `by` radians from `from`. */
export interface EllipseArc {
  readonly centre: Vector;
  readonly u: Vector;
  readonly v: Vector;
  readonly from: number;
  readonly by: number;
}

export type Step =
  | { readonly kind: 'line'; readonly to: Vector }
  | { readonly kind: 'quadratic'; readonly handle: Vector; readonly to: Vector }
  | { readonly kind: 'cubic'; readonly first: Vector; readonly second: Vector; readonly to: Vector }
  | { readonly kind: 'arc'; readonly arc: EllipseArc; readonly to: Vector }
  /** A rational Bezier curve by its control points, both ends among them, and their weights, above 0. */
  | {
      readonly kind: 'rational';
      readonly points: readonly Vector[];
      readonly weights: readonly number[];
      readonly to: Vector;
    };

/** One run of a path, from a move to the next. */
export interface Subpath {
  readonly start: Vector;
  readonly steps: readonly Step[];
  /** Does it end with a close? A fill closes every run; a stroke's ends show. */
  readonly closed: boolean;
}

export function lineTo(to: Vector): Step {
  return { kind: 'line', to };
}

/** A quarter of an upright ellipse, the `quarter`-th from +x towards +y. */
export function quarterArc(centre: Vector, rx: number, ry: number, quarter: number, to: Vector): Step {
  const arc = { centre, u: [rx, 0], v: [0, ry], from: (quarter * Math.PI) / 2, by: Math.PI / 2 } as const;
  return { kind: 'arc', arc, to };
}

/** An upright ellipse; none when a radius is 0. */
export function ellipsePath([cx, cy]: Vector, rx: number, ry: number): Subpath[] {
  if (rx === 0 || ry === 0) return [];
  const poles: Vector[] = [
    [cx, cy + ry],
    [cx - rx, cy],
    [cx, cy - ry],
    [cx + rx, cy],
  ];
  const steps = poles.map((to, k) => quarterArc([cx, cy], rx, ry, k, to));
  return [{ start: [cx + rx, cy], steps, closed: true }];
}

export function rectanglePath(x: number, y: number, width: number, height: number): Subpath {
  const steps = [lineTo([x + width, y]), lineTo([x + width, y + height]), lineTo([x, y + height])];
  return { start: [x, y], steps, closed: true };
}
