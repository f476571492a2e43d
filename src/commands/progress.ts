/** Moves to the start of the line and empties it. */
const EMPTY = '\r\u001b[K';

/** One line on a terminal that tells how far a command is, and is gone when it is done. No terminal, no line. */
export class Progress {
  readonly #now = new Map<number, string>();
  #done = 0;

  constructor(
    readonly all: number,
    readonly stream: NodeJS.WriteStream = process.stderr,
  ) {}

  /** Piece k is at a step. */
  at(k: number, step: string): void {
    this.#now.set(k, step);
    this.#draw();
  }

  done(k: number): void {
    this.#now.delete(k);
    this.#done++;
    this.#draw();
  }

  /** Empties the line, for others to write on. */
  clear(): void {
    if (this.stream.isTTY) this.stream.write(EMPTY);
  }

  #draw(): void {
    if (!this.stream.isTTY) return;
    const text = [`${this.#done} of ${this.all} done`, ...this.#now.values()].join(', ');
    // A line that wraps could not be taken back.
    this.stream.write(EMPTY + text.slice(0, Math.max(0, (this.stream.columns ?? 80) - 1)));
  }
}
