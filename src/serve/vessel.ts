import { Worker } from 'node:worker_threads';
import { Denied } from './denied.js';
import type { VesselSays, VesselTask } from './vessel-thread.js';

/** Models made at once: the newest of a page, and one that it has not yet let go of. */
const MOST_AT_ONCE = 2;

let running = 0;

/**
 * The finished vessel of a recipe as binary glTF, made in a thread. `stop` hears how to end it. Throws Denied in words
 * for a recipe that makes none.
 */
export async function vesselOf(task: VesselTask, stop: (end: () => void) => void): Promise<Uint8Array> {
  if (running >= MOST_AT_ONCE) throw new Denied(429, 'other vessels are being turned: try again in a moment');
  running++;
  const thread = new Worker(new URL('./vessel-thread.js', import.meta.url), { workerData: task });
  stop(() => void thread.terminate());
  try {
    const said = await new Promise<VesselSays>((done, failed) => {
      thread.once('message', done);
      thread.once('error', failed);
      thread.once('exit', () => failed(new Denied(500, 'turning the vessel ended without a result')));
    });
    if ('lines' in said) throw new Denied(422, said.lines.join(' '));
    return said.model;
  } finally {
    running--;
    void thread.terminate();
  }
}
