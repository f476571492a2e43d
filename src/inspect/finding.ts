import type { Edge } from '../geometry/edge.js';
import type { Region } from '../geometry/region.js';

/** Where a finding lies, to be drawn on the piece: as the pocket's drawing has it, a mirrored plug turned back. */
export interface Zone {
  /** Places with an extent. */
  readonly areas?: Region;
  /** Open stretches of outline. */
  readonly lines?: readonly (readonly Edge[])[];
}

/** One thing the user must know. */
export interface Finding {
  readonly code: string;
  /** stop: cannot be made as asked; warn: made, but read this; note: good to know. */
  readonly severity: 'stop' | 'warn' | 'note';
  /** Place on the piece (sheet middle is 0, 0), mm, or null when it is about the whole job. */
  readonly where: readonly [number, number] | null;
  readonly numbers: Readonly<Record<string, number>>;
  /** Left out where it has none; in pictures only. */
  readonly zone?: Zone;
  /** What it is and what to do, one or two plain sentences. */
  readonly do: string;
}
