import { origin } from '../state/card.js';
import { smallHand } from '../state/hands.js';
import type { Figure } from '../worker/protocol.js';

/** Pictures of what a choice would make, by the card's text with it; null: it cannot be drawn. */
const made = new Map<string, Figure | null>();
/** Enough for the choices of a card; the oldest go first. */
const MOST = 150;

interface Wanted {
  readonly text: string;
  readonly done: (figure: Figure | null) => void;
}

const wanted: Wanted[] = [];
let busy = false;

/** Asks for a picture; the returned function takes the wish back. One is made at a time. */
export function wish(text: string, done: (figure: Figure | null) => void): () => void {
  const known = made.get(text);
  if (known !== undefined) {
    done(known);
    return () => {};
  }
  const wish = { text, done };
  wanted.push(wish);
  void work();
  return () => {
    const k = wanted.indexOf(wish);
    if (k >= 0) wanted.splice(k, 1);
  };
}

async function work(): Promise<void> {
  if (busy) return;
  busy = true;
  for (let next = wanted.shift(); next; next = wanted.shift()) {
    const figure = await drawnSmall(next.text);
    made.set(next.text, figure);
    if (made.size > MOST) made.delete(made.keys().next().value!);
    next.done(figure);
  }
  busy = false;
}

async function drawnSmall(text: string): Promise<Figure | null> {
  try {
    const got = await smallHand.ask({ ask: 'thumbnail', text, origin: origin.peek() });
    return got.kind === 'thumbnail' ? got.figure : null;
  } catch {
    // A fault of the page's own is told where the drawing itself meets it.
    return null;
  }
}
