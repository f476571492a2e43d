import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from 'node:worker_threads';

/** How a command went, as a process of its own would tell. */
export interface Ran {
  /** Null when it ended without a code. */
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

interface Keeper {
  readonly port: MessagePort;
  readonly answered: Int32Array;
  readonly thread: Worker;
}

/** One that was not waited for is left, or its late answer would be taken for that of the next command. */
let keeper: Keeper | undefined;

/** A command may take this long, ms. */
const PATIENCE = 120_000;

/**
 * Runs the built command in a folder, in a process that has run others before: what is the same as in one of its own, and
 * takes a fifth of the time. What a start of its own is needed for (signals, pipes, limits of the system) is tested in
 * commands/cli.test.ts and commands/faults.test.ts.
 */
export function ran(args: readonly string[], cwd: string, patience = PATIENCE): Ran {
  keeper ??= kept();
  Atomics.store(keeper.answered, 0, 0);
  keeper.port.postMessage({ args, cwd });
  if (Atomics.wait(keeper.answered, 0, 0, patience) === 'timed-out') {
    void keeper.thread.terminate();
    keeper = undefined;
    throw new Error(`inlaywright ${args.join(' ')} has not ended after ${patience / 1000} s`);
  }
  return receiveMessageOnPort(keeper.port)!.message;
}

function kept(): Keeper {
  const { port1, port2 } = new MessageChannel();
  const answered = new Int32Array(new SharedArrayBuffer(4));
  const thread = new Worker(new URL('warm-keeper.mjs', import.meta.url), {
    workerData: { port: port2, answered },
    transferList: [port2],
  });
  thread.unref();
  port1.unref();
  return { port: port1, answered, thread };
}
