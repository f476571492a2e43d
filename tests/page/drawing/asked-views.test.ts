import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { answerOf, answers, failed, isFresh, startViews } from '../../../src/page/drawing/views.js';
import { view } from '../../../src/page/state/bench.js';
import { drawing, drawn, shownIn, trouble } from '../../../src/page/state/card.js';
import type { ViewName } from '../../../src/page/worker/protocol.js';
import { piece, settled, viewCalled, waiting } from './bench.js';

vi.mock('../../../src/page/state/hands.js', () => import('./bench.js'));

let stop = (): void => {};

beforeEach(() => {
  vi.useFakeTimers();
  waiting.length = 0;
  view.value = 'piece';
  shownIn.value = 'mm';
  trouble.value = null;
  drawing.value = false;
  drawn.value = null;
  stop = startViews();
});
afterEach(() => {
  stop();
  vi.useRealTimers();
});

const names = (): string[] => waiting.map(({ body }) => (body.ask === 'view' ? body.view : body.ask));

/** Answers whatever is asked until nothing more is; gives the names in the order asked. */
async function answerAll(says = ''): Promise<string[]> {
  const all: string[] = [];
  for (let k = 0; k < 20; k++) {
    await settled();
    const next = waiting.shift();
    if (!next) break;
    const name = (next.body as { view: ViewName }).view;
    all.push(name);
    next.answer(viewCalled(name, 160, says));
  }
  return all;
}

describe('views', () => {
  it('of the strip are asked for one at a time once the drawing is exact; pieces and coupons are not', async () => {
    await settled();
    expect(names()).toEqual([]);
    drawn.value = piece(160, 100, { stage: 'rounded' });
    await settled();
    expect(names()).toEqual([]);
    drawn.value = piece();
    await settled();
    expect(names()).toEqual(['gap']);
    expect(await answerAll()).toEqual(['gap', 'reach', 'walls', 'section']);
    for (const name of ['gap', 'reach', 'walls', 'section'] as const) expect(isFresh(name)).toBe(true);
    expect(answerOf('coupon')).toBeNull();
  });

  it('that are looked at come first, and the coupon only then', async () => {
    view.value = 'coupon';
    drawn.value = piece();
    expect(await answerAll()).toEqual(['coupon', 'gap', 'reach', 'walls', 'section']);
    view.value = 'pocket';
    expect(await answerAll()).toEqual(['pocket']);
  });

  it('are asked for anew when something is drawn anew, or in other units; the old stay meanwhile', async () => {
    drawn.value = piece();
    await answerAll('first');
    drawn.value = piece();
    expect(isFresh('gap')).toBe(false);
    expect(answerOf('gap')!.says).toBe('first');
    expect(await answerAll('second')).toHaveLength(4);
    expect(answerOf('gap')!.says).toBe('second');
    shownIn.value = 'in';
    expect(isFresh('gap')).toBe(false);
    expect(await answerAll('third')).toHaveLength(4);
    expect(isFresh('gap')).toBe(true);
  });

  it('wait while a drawing is under way or the text is in trouble', async () => {
    drawing.value = true;
    drawn.value = piece();
    expect(await answerAll()).toEqual([]);
    trouble.value = { kind: 'trouble', recipe: null, faults: [] };
    drawing.value = false;
    expect(await answerAll()).toEqual([]);
    trouble.value = null;
    expect(await answerAll()).toHaveLength(4);
  });

  it('that answer for a drawing that is gone are not kept, and asked for again', async () => {
    drawn.value = piece();
    await settled();
    expect(names()).toEqual(['gap']);
    const late = waiting.shift()!;
    drawn.value = piece();
    late.answer(viewCalled('gap', 160, 'of the old one'));
    await settled();
    expect(answerOf('gap')).toBeNull();
    expect((await answerAll('of the new one'))[0]).toBe('gap');
    expect(answerOf('gap')!.says).toBe('of the new one');
  });

  it('that cannot be drawn say why, hold up no other, and are tried again with the next drawing', async () => {
    drawn.value = piece();
    await settled();
    const fault = { where: '', message: 'no room for the steps', at: null };
    waiting.shift()!.answer({ kind: 'trouble', recipe: null, faults: [fault] });
    await settled();
    waiting.shift()!.fail(new Error('the worker stopped'));
    expect(await answerAll()).toEqual(['walls', 'section']);
    expect([...failed.value]).toEqual([
      ['gap', 'no room for the steps'],
      ['reach', 'the worker stopped'],
    ]);
    drawn.value = piece();
    expect(failed.value.size).toBe(0);
    expect(await answerAll()).toHaveLength(4);
  });

  it('go with the card', async () => {
    drawn.value = piece();
    await answerAll();
    drawn.value = null;
    expect(answers.value.size).toBe(0);
  });

  it('are asked for no longer once they are stopped', async () => {
    drawn.value = piece();
    await settled();
    expect(names()).toEqual(['gap']);
    stop();
    drawn.value = piece();
    expect(await answerAll()).toEqual(['gap']);
  });
});
