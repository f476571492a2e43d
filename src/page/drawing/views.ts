import { computed, effect, signal } from '@preact/signals';
import type { Units } from '../../schema/units.js';
import { round, view } from '../state/bench.js';
import { drawing, drawn, shownIn, trouble } from '../state/card.js';
import { exactHand } from '../state/hands.js';
import type { Drawn, View, ViewName } from '../worker/protocol.js';

/*
 * Views as the worker draws them, of the newest exact drawing: the one looked at first, then those the strip shows, when
 * nothing else is to be done. The coupon is a piece of its own to build: only when it is looked at.
 */

interface Answered {
  readonly view: View;
  /** What it is a view of, and in whose units it speaks. */
  readonly of: Drawn;
  readonly units: Units;
}

export const answers = signal<ReadonlyMap<ViewName, Answered>>(new Map());
/** Views the worker could not draw, in its words. */
export const failed = signal<ReadonlyMap<ViewName, string>>(new Map());

/** The card is of a vessel, and the vessel is looked at. */
export const isVessel = computed(() => drawn.value?.recipe.bowl !== undefined);
export const showsVessel = computed(() => round.value && isVessel.value);

const IN_THE_STRIP: readonly ViewName[] = ['gap', 'reach', 'walls', 'section'];

/** The newest answer for a view, of whatever drawing. */
export function answerOf(name: ViewName): View | null {
  return answers.value.get(name)?.view ?? null;
}

/** Is the newest answer one of what is drawn now? */
export function isFresh(name: ViewName): boolean {
  const got = answers.value.get(name);
  return got !== undefined && got.of === drawn.value && got.units === shownIn.value;
}

/** Asks for views as they are wanted, one at a time, until stopped. */
export function startViews(): () => void {
  let busy = false;
  let over = false;
  const run = async (): Promise<void> => {
    if (busy || over) return;
    const name = wanted();
    if (name === undefined) return;
    busy = true;
    if (name !== view.peek()) await idle();
    // Something else may be wanted by now.
    if (wanted() === name) await ask(name);
    busy = false;
    void run();
  };
  const stop = effect(() => {
    if (drawn.value === null) answers.value = new Map();
    failed.value = new Map();
    void [drawing.value, trouble.value, shownIn.value, view.value];
    void run();
  });
  return () => {
    over = true;
    stop();
  };
}

/** The view to ask for next, if any. Subscribes to nothing. */
function wanted(): ViewName | undefined {
  const now = drawn.peek();
  if (drawing.peek() || trouble.peek() || now?.stage !== 'exact') return undefined;
  return [view.peek(), ...IN_THE_STRIP].find((name) => {
    const got = answers.peek().get(name);
    if (name === 'piece' || failed.peek().has(name)) return false;
    return !got || got.of !== now || got.units !== shownIn.peek();
  });
}

async function ask(name: ViewName): Promise<void> {
  const of = drawn.peek()!;
  const units = shownIn.peek();
  try {
    const got = await exactHand.ask({ ask: 'view', view: name, units });
    // A drawing that came meanwhile may be what the answer shows: it is asked for again.
    if ('kind' in got) tell(name, got.faults[0]?.message ?? 'it cannot be drawn');
    else if (drawn.peek() === of) answers.value = new Map(answers.peek()).set(name, { view: got, of, units });
  } catch (e) {
    tell(name, e instanceof Error ? e.message : String(e));
  }
}

function tell(name: ViewName, why: string): void {
  failed.value = new Map(failed.peek()).set(name, why);
}

/** Waits until the page has nothing better to do, but no longer than `most` ms. */
export function idle(most = 400): Promise<void> {
  return new Promise((done) => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(() => done(), { timeout: most });
    else setTimeout(done, 60);
  });
}
