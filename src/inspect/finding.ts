/** One thing the user must know. */
export interface Finding {
  readonly code: string;
  /** stop: cannot be made as asked; warn: made, but read this; note: good to know. */
  readonly severity: 'stop' | 'warn' | 'note';
  /** Place on the piece (sheet middle is 0, 0), mm, or null when it is about the whole job. */
  readonly where: readonly [number, number] | null;
  readonly numbers: Readonly<Record<string, number>>;
  /** What it is and what to do, one or two plain sentences. */
  readonly do: string;
}
