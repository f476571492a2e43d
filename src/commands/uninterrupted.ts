import { message } from '../disk/report.js';

/** What a user or a system stops a command with, and the exit codes that shells know for it. */
const CODES = { SIGINT: 130, SIGTERM: 143 } as const;

export type Signal = keyof typeof CODES;

/** Calls back when the command is to stop, until the returned function is called. */
export function onStop(stop: (signal: Signal) => void): () => void {
  const signals = Object.keys(CODES) as Signal[];
  for (const s of signals) process.on(s, stop);
  return () => {
    for (const s of signals) process.off(s, stop);
  };
}

/** Ends the command as one that was stopped. */
export function stopped(signal: Signal, said: string): never {
  message(`stopped: ${said}`);
  process.exit(CODES[signal]);
}

/** Does work that must be whole: one who stops the command meanwhile is heard when it is done. */
export async function uninterrupted(work: () => void): Promise<void> {
  let heard: Signal | null = null;
  const off = onStop((signal) => {
    heard = signal;
  });
  try {
    work();
    // Signals that came meanwhile are told of once the next turn has looked for them, and that is after its immediates.
    for (let turn = 0; turn < 2; turn++) await new Promise((next) => setImmediate(next));
  } finally {
    off();
  }
  if (heard) stopped(heard, 'the piece at hand is whole');
}
