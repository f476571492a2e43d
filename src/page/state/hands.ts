import { effect } from '@preact/signals';
import { Hand } from '../worker/client.js';
import type { Answer } from '../worker/protocol.js';
import { notice } from './bench.js';
import { asked, book, drawing, drawn, origin, trouble } from './card.js';

/*
 * Two workers draw: a drag never waits for the exact drawing of where it began. A third makes little pictures. Of what
 * is asked while a worker is busy only the newest is drawn.
 */

export const exactHand = new Hand();
const coarseHand = new Hand();
export const smallHand = new Hand();

/** Draws whatever is asked from now on. */
export function startDrawing(): void {
  void exactHand.ask({ ask: 'book' }).then((b) => {
    book.value = b;
  }, told);
  const coarse = newest(coarseHand, false);
  const exact = newest(exactHand, true);
  warmed();
  effect(() => {
    const { text, exact: fine } = asked.value;
    if (text === '') return;
    drawing.value = true;
    (fine ? exact : coarse)(text);
  });
}

/** How often the coarse worker draws a new kind of card for nobody, so that the first drag finds it quick. */
const WARMING = 3;

/** Has the coarse worker draw every new kind of card before it is dragged: engines are slow at what they do first. */
function warmed(): void {
  let kind = '';
  effect(() => {
    const now = drawn.value;
    if (now?.stage !== 'exact') return;
    const next = [now.recipe.pattern].flat().map((l) => l.generator);
    if (next.join() === kind) return;
    kind = next.join();
    const { text } = asked.peek();
    for (let k = 0; k < WARMING; k++)
      void coarseHand.ask({ ask: 'draw', text, exact: false, origin: origin.peek() }).catch(() => {});
  });
}

function newest(hand: Hand, exact: boolean): (text: string) => void {
  let busy = false;
  let next: string | null = null;
  const run = async (text: string): Promise<void> => {
    busy = true;
    try {
      take(text, exact, await hand.ask({ ask: 'draw', text, exact, origin: origin.peek() }));
    } catch (e) {
      told(e);
    }
    busy = false;
    if (next === null) return;
    const text1 = next;
    next = null;
    void run(text1);
  };
  return (text) => {
    if (busy) next = text;
    else void run(text);
  };
}

/** Shows an answer, unless the card has moved on to what is drawn otherwise. */
function take(text: string, exact: boolean, answer: Answer<'draw'>): void {
  const wanted = asked.peek();
  if (exact && wanted.text !== text) return;
  if (!exact && wanted.exact) return;
  if (wanted.text === text) drawing.value = false;
  if (answer.kind === 'drawn') {
    drawn.value = answer;
    trouble.value = null;
  } else trouble.value = answer;
}

function told(e: unknown): void {
  drawing.value = false;
  notice.value = `Something went wrong in the page itself: ${e instanceof Error ? e.message : String(e)}`;
}
