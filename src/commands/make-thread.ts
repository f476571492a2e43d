import type { MessagePort } from 'node:worker_threads';
import { loadRenderer } from '../disk/load.js';
import { makeOne } from './make-one.js';
import { countsOf } from './make-state.js';
import type { Outcome, Task } from './outcome.js';

/** What a thread of `make` is sent. */
export interface ThreadTask {
  readonly task: Omit<Task, 'recipe' | 'given'>;
  /** Hears of each step. */
  readonly port: MessagePort;
  readonly shared: SharedArrayBuffer;
  /** The picture renderer: compiled once for all threads, and made faster by all as they run it. */
  readonly renderer: WebAssembly.Module;
}

/** Makes one piece; its messages come back together with how it went. */
export default async function onThread({ task, port, shared, renderer }: ThreadTask): Promise<Outcome> {
  await loadRenderer(renderer);
  const told: string[] = [];
  const outcome = await makeOne(task, {
    tell: (line) => told.push(line),
    step: (step) => port.postMessage(step),
    write: (work) => {
      if (!countsOf(shared).write(work)) throw new Error('stopped');
    },
  });
  return { ...outcome, told };
}
