/** The edges of a drawing, one column a property. Millimetres, y up. */
export interface Edges {
  readonly count: number;
  readonly x0: Float64Array;
  readonly y0: Float64Array;
  readonly x1: Float64Array;
  readonly y1: Float64Array;
  /** Centre; unused for a straight edge. */
  readonly cx: Float64Array;
  readonly cy: Float64Array;
  /** 0: straight; positive: an arc turning left (counter-clockwise); negative: turning right. */
  readonly r: Float64Array;
  /** 1 where an arc sweeps more than 180 degrees. */
  readonly wide: Uint8Array;
}
