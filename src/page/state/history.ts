/** What was on the card before and after. Steps of one drag are one step. */
export interface History {
  readonly past: readonly string[];
  readonly now: string;
  readonly future: readonly string[];
  /** What the last step changed, while it may go on; null: the next step is its own. */
  readonly open: string | null;
}

/** Enough for an evening; a card's text is a page. */
const MOST = 500;

export function begun(text: string): History {
  return { past: [], now: text, future: [], open: null };
}

/** A step to another text. Steps that give the same `of` one after the other are one. */
export function stepped(h: History, text: string, of: string | null): History {
  if (text === h.now) return h;
  if (of !== null && of === h.open) return { ...h, now: text, future: [] };
  return { past: [...h.past, h.now].slice(-MOST), now: text, future: [], open: of };
}

/** The next step is its own, whatever it changes. */
export function closed(h: History): History {
  return h.open === null ? h : { ...h, open: null };
}

export function undone(h: History): History {
  const before = h.past.at(-1);
  if (before === undefined) return h;
  return { past: h.past.slice(0, -1), now: before, future: [h.now, ...h.future], open: null };
}

export function redone(h: History): History {
  const [next, ...future] = h.future;
  if (next === undefined) return h;
  return { past: [...h.past, h.now], now: next, future, open: null };
}
