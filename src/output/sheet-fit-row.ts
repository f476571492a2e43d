/** One row of the sheet's block about the fit, plain text: what it is, what it comes to, formula and source. */
export interface FitRow {
  readonly name: string;
  readonly says: readonly string[];
  readonly how: string;
}

/** Where a table has no figure. */
export const UNKNOWN = 'unknown for this wood';
