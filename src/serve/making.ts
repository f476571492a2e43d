import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { writeFolder } from '../disk/folder.js';
import { describeError } from '../disk/report.js';
import type { Make, Making } from '../wire.js';
import { Denied } from './denied.js';
import type { Task, ThreadSays } from './piece-thread.js';

/** Pieces made at once: each takes a core. */
const MOST_AT_ONCE = 2;

/** Makes pieces as the command line does, each in a thread of its own so that it can be stopped. */
export class Maker {
  readonly #root: string;
  readonly #out: string;
  readonly #running = new Map<string, Worker>();

  constructor(root: string, out: string) {
    this.#root = root;
    this.#out = out;
  }

  /**
   * Makes a piece; `tell` hears its steps and, last, what came of it. Returns what stops it: the thread only reckons, the
   * folder is written here at once, so stopping leaves the old piece or the new one, whole. Throws Denied when it is
   * being made already.
   */
  make({ file, text }: Make, tell: (making: Making) => void): () => void {
    if (this.#running.has(file)) throw new Denied(409, `${file} is being made already`);
    if (this.#running.size >= MOST_AT_ONCE)
      throw new Denied(429, `${MOST_AT_ONCE} pieces are being made: wait for one, or stop it`);
    const task: Task = { root: this.#root, out: this.#out, file, text };
    const thread = new Worker(new URL('./piece-thread.js', import.meta.url), { workerData: task });
    this.#running.set(file, thread);
    let over = false;
    const end = (last: Making | null): void => {
      if (over) return;
      over = true;
      this.#running.delete(file);
      void thread.terminate();
      if (last) tell(last);
    };
    thread.on('message', (said: ThreadSays) => {
      if (over) return;
      if ('files' in said) {
        tell({ step: 'writing' });
        end(this.#written(said));
      } else if ('wrong' in said) end(said);
      else tell(said);
    });
    thread.on('error', (e) => end({ wrong: { lines: describeError(e, file).lines } }));
    thread.on('exit', () => end({ wrong: { lines: [`${file}: making it ended without a result`] } }));
    return () => end(null);
  }

  #written({ name, files, proof }: Extract<ThreadSays, { name: string }>): Making {
    try {
      writeFolder(this.#out, name, files);
      return { made: { name, files: [...files.keys()].sort(), folder: join(this.#out, name), proof } };
    } catch (e) {
      return { wrong: { lines: describeError(e).lines } };
    }
  }

  stopAll(): void {
    for (const thread of this.#running.values()) void thread.terminate();
  }
}
