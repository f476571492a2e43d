import { effect, signal } from '@preact/signals';
import { view } from '../state/bench.js';
import { asked, drawing, drawn } from '../state/card.js';
import { exactHand } from '../state/hands.js';
import type { Measured } from '../worker/protocol.js';
import type { Point } from './camera.js';
import { sheetOf } from './eye.js';

/** The dimension that is shown, and whether it is read aloud. Of what is asked while one is reckoned, the newest counts. */

export const measured = signal<{ readonly got: Measured; readonly aloud: boolean } | null>(null);

let busy = false;
let next: { readonly at: Point; readonly aloud: boolean } | null = null;
/** Counts what was cleared, so that no late answer comes back. */
let turn = 0;

/** Asks how wide wood is at a point of the piece; nothing while a value is being dragged or the drawing is not exact. */
export function measureAt(at: Point, aloud = false): void {
  if (!asked.peek().exact || drawing.peek() || drawn.peek()?.stage !== 'exact') return;
  if (sheetOf(view.peek()) !== 'face') return;
  next = { at, aloud };
  if (!busy) void run();
}

export function clearMeasured(): void {
  turn++;
  next = null;
  if (measured.peek() !== null) measured.value = null;
}

async function run(): Promise<void> {
  busy = true;
  while (next !== null) {
    const { at, aloud } = next;
    const mine = turn;
    next = null;
    try {
      const got = await exactHand.ask({ ask: 'measure', at });
      if (mine === turn) measured.value = got && { got, aloud };
    } catch {
      // A width that cannot be told is not shown; what is wrong with the drawing is said by the drawing itself.
    }
  }
  busy = false;
}

/** What is drawn anew, or seen otherwise, has no dimension yet. */
export function watchMeasured(): () => void {
  return effect(() => {
    void [drawn.value, view.value];
    clearMeasured();
  });
}
