/** Widths asked beyond what the cutter needs, mm; left out, or under 2r: what the cutter needs. */
export interface Widths {
  /** Least gap of the pattern, inside a piece and between pieces. */
  readonly gap?: number;
  /** Least limb of the pattern. */
  readonly limb?: number;
}

/** What the cutter pass is asked to do. */
export interface Rule extends Widths {
  /** Corner radius, mm. */
  readonly r: number;
  /** What becomes of limbs under 2r. */
  readonly thin: 'widen' | 'drop' | 'refuse';
  /** What becomes of gaps under 2r between pieces. */
  readonly touch: 'part' | 'join';
}
