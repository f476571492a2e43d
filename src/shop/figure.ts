/**
 * How far a figure can be trusted.
 * - `published`: read in a copy of the publisher's own page
 * - `transcribed`: read in somebody's transcription or quotation of the named publication
 * - `memory`: recalled, not seen
 * - `given`: the recipe gives it
 * - `computed`: worked out here from other figures, which the source names
 */
export type Status = 'published' | 'transcribed' | 'memory' | 'given' | 'computed';

/** One figure with where it comes from. Its unit is said where it stands. */
export interface Figure {
  readonly value: number;
  readonly status: Status;
  readonly source: string;
}

export function figure(value: number, status: Status, source: string): Figure {
  return { value, status, source };
}
