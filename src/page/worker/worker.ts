import { answer } from './answer.js';
import type { Reply, Request } from './protocol.js';

/** The worker's end: answers one after the other. */
let before: Promise<void> = Promise.resolve();

addEventListener('message', ({ data: { id, body } }: MessageEvent<Request>) => {
  before = before.then(async () => {
    let reply: Reply;
    try {
      reply = { id, body: await answer(body) };
    } catch (e) {
      reply = { id, fault: e instanceof Error ? e.message : String(e) };
    }
    postMessage(reply);
  });
});
