import type { Answer, Ask } from './protocol.js';

/** Answers what the page asks. Throws what is our own fault; a recipe's faults are an answer. */
export async function answer(body: Ask): Promise<Answer<Ask['ask']>> {
  throw new Error(`nothing answers ${body.ask} yet`);
}
