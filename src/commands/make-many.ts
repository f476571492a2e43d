import { MessageChannel } from 'node:worker_threads';
import { Tinypool } from 'tinypool';
import { compileRenderer } from '../disk/load.js';
import { countsOf, noMoreWriting } from './make-state.js';
import type { ThreadTask } from './make-thread.js';
import { failed, type Outcome, type Task } from './outcome.js';
import { Progress } from './progress.js';
import { onStop, stopped } from './uninterrupted.js';

/** Room for what lives briefly, MB a thread: collecting it stops a thread and takes cores from the others. */
const YOUNG = 192;

/**
 * Makes pieces on several threads. `say` hears of each when it and all before it are done, so that what is printed keeps
 * the order asked. One who stops the command waits only for the files that are being written.
 */
export async function makeMany(
  tasks: readonly (Task | Outcome)[],
  threads: number,
  say: (outcome: Outcome) => void,
): Promise<void> {
  const counts = countsOf(new SharedArrayBuffer(8));
  const pool = new Tinypool({
    filename: new URL('./make-thread.js', import.meta.url).href,
    minThreads: threads,
    maxThreads: threads,
    // A thread of a pool starts as this command did, but it is no command.
    argv: [],
    resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
  });
  const progress = new Progress(tasks.length);
  const done: (Outcome | undefined)[] = tasks.map(() => undefined);
  let next = 0;
  let stopping = false;
  const off = onStop(async (signal) => {
    stopping = true;
    await noMoreWriting(counts);
    progress.clear();
    stopped(signal, `${done.filter((d) => d?.code === 0).length} of ${tasks.length} made, each whole`);
  });
  const finish = (k: number, outcome: Outcome): void => {
    // A piece that was not to be written any more is no failure.
    if (stopping && outcome.code !== 0) return;
    done[k] = outcome;
    progress.clear();
    for (; next < done.length && done[next]; next++) say(done[next]!);
    progress.done(k);
  };
  try {
    // What has failed already waits for nothing.
    tasks.forEach((task, k) => {
      if (!('text' in task)) finish(k, task);
    });
    const left = tasks.flatMap((task, k) => ('text' in task ? [{ task, k }] : []));
    if (left.length === 0) return;
    const renderer = await compileRenderer();
    await Promise.all(
      left.map(async ({ task, k }) => {
        const step = (said: string): void => progress.at(k, `${task.name} ${said}`);
        finish(k, await onThread(pool, { task, renderer, shared: counts.shared }, step));
      }),
    );
  } finally {
    progress.clear();
    off();
    await pool.destroy();
  }
}

async function onThread(
  pool: Tinypool,
  { task: { recipe: _, given: __, ...task }, ...rest }: Omit<ThreadTask, 'port'> & { task: Task },
  step: (step: string) => void,
): Promise<Outcome> {
  const { port1, port2 } = new MessageChannel();
  port1.on('message', step);
  const sent: ThreadTask = { ...rest, task, port: port2 };
  try {
    return await pool.run(sent, { transferList: [port2] });
  } catch (e) {
    return failed(task.path, e);
  } finally {
    port1.close();
  }
}
