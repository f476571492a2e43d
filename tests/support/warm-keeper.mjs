/** Keeps one warm command and passes messages on, so that a test may wait for an answer without letting go of its thread. */
import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { workerData } from 'node:worker_threads';

const { port, answered } = workerData;
const PROGRAM = fileURLToPath(new URL('warm-command.mjs', import.meta.url));

function answer(ran) {
  port.postMessage(ran);
  Atomics.store(answered, 0, 1);
  Atomics.notify(answered, 0);
}

let busy = false;
let warm = null;

function started() {
  const child = fork(PROGRAM, { stdio: ['ignore', 'ignore', 'inherit', 'ipc'] });
  const ready = new Promise((done) => child.once('message', done));
  child.on('exit', (code) => {
    warm = null;
    if (busy) answer({ status: null, stdout: '', stderr: `the command ended with ${code}` });
    busy = false;
  });
  return { child, ready };
}

port.on('message', async (asked) => {
  busy = true;
  warm ??= started();
  const { child, ready } = warm;
  await ready;
  child.once('message', (ran) => {
    busy = false;
    answer(ran);
  });
  child.send(asked);
});
