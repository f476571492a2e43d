/** How often a command that is to stop looks whether files are still being written, ms. */
const PAUSE = 5;

const STOPPED = 0;
const WRITING = 1;

/** What the threads of a `make` and the command that started them know of each other at any moment. */
export interface Counts {
  readonly shared: SharedArrayBuffer;
  /** From now on no thread begins to write. */
  stop(): void;
  /** How many threads are writing. */
  writing(): number;
  /** Writes, unless the command is to stop; false then. */
  write(work: () => void): boolean;
}

export function countsOf(shared: SharedArrayBuffer): Counts {
  const counts = new Int32Array(shared);
  return {
    shared,
    stop: () => {
      Atomics.store(counts, STOPPED, 1);
    },
    writing: () => Atomics.load(counts, WRITING),
    write: (work) => {
      // Told before it is asked whether to stop: one who stops sees either this, or that nothing is begun.
      Atomics.add(counts, WRITING, 1);
      try {
        if (Atomics.load(counts, STOPPED) === 1) return false;
        work();
        return true;
      } finally {
        Atomics.sub(counts, WRITING, 1);
      }
    },
  };
}

/** Lets no thread begin to write, and waits for those that do. */
export async function noMoreWriting(counts: Counts): Promise<void> {
  counts.stop();
  while (counts.writing() > 0) await new Promise((next) => setTimeout(next, PAUSE));
}
