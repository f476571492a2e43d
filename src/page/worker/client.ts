import type { Answer, Ask, Reply, Request } from './protocol.js';

/** A worker that answers what it is asked, in order. */
export class Hand {
  readonly #worker: Worker;
  readonly #waiting = new Map<number, { done(body: unknown): void; failed(e: Error): void }>();
  #last = 0;

  constructor() {
    this.#worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
    this.#worker.addEventListener('message', ({ data }: MessageEvent<Reply>) => {
      const waiting = this.#waiting.get(data.id);
      this.#waiting.delete(data.id);
      if (data.fault === undefined) waiting?.done(data.body);
      else waiting?.failed(new Error(data.fault));
    });
    this.#worker.addEventListener('error', (e) => {
      for (const { failed } of this.#waiting.values()) failed(new Error(e.message || 'the worker stopped'));
      this.#waiting.clear();
    });
  }

  ask<A extends Ask['ask']>(body: Extract<Ask, { ask: A }>): Promise<Answer<A>> {
    const id = ++this.#last;
    return new Promise((done, failed) => {
      this.#waiting.set(id, { done: done as (body: unknown) => void, failed });
      this.#worker.postMessage({ id, body } satisfies Request);
    });
  }
}
