/** What the cutter pass is asked to do. */
export interface Rule {
  /** Corner radius, mm. */
  readonly r: number;
  /** What becomes of limbs under 2r. */
  readonly thin: 'widen' | 'drop' | 'refuse';
  /** What becomes of gaps under 2r between pieces. */
  readonly touch: 'part' | 'join';
}
