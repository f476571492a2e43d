import { Answerer } from './answer.js';
import type { Reply, Request } from './protocol.js';
import { serverSources } from './sources.js';

const answerer = new Answerer(serverSources(), () => performance.now());

/** The worker's end: answers one after the other. */
let before: Promise<void> = Promise.resolve();

addEventListener('message', ({ data: { id, body } }: MessageEvent<Request>) => {
  before = before.then(async () => {
    let reply: Reply;
    try {
      reply = { id, body: await answerer.answer(body) };
    } catch (e) {
      reply = { id, fault: e instanceof Error ? e.message : String(e) };
    }
    postMessage(reply);
  });
});
