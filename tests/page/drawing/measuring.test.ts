import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { clearMeasured, measureAt, measured, watchMeasured } from '../../../src/page/drawing/measuring.js';
import { view } from '../../../src/page/state/bench.js';
import { asked, drawing, drawn } from '../../../src/page/state/card.js';
import type { Measured } from '../../../src/page/worker/protocol.js';
import { piece, settled, waiting } from './bench.js';

vi.mock('../../../src/page/state/hands.js', () => import('./bench.js'));

const width = (w: number): Measured => ({ from: [0, 0], to: [w, 0], width: w, of: '' });
let stop = (): void => {};

beforeEach(() => {
  waiting.length = 0;
  view.value = 'piece';
  asked.value = { text: 'x', exact: true };
  drawing.value = false;
  drawn.value = piece();
  stop = watchMeasured();
});
afterEach(async () => {
  clearMeasured();
  for (const w of waiting) w.answer(null);
  await settled();
  stop();
});

describe('what is measured', () => {
  it('is shown once the worker has told it, aloud if it was asked so', async () => {
    measureAt([3, 4], true);
    expect(waiting.map((w) => w.body)).toEqual([{ ask: 'measure', at: [3, 4] }]);
    expect(measured.value).toBeNull();
    waiting[0].answer(width(2));
    await settled();
    expect(measured.value).toEqual({ got: width(2), aloud: true });
    measureAt([5, 4]);
    waiting[1].answer(null);
    await settled();
    expect(measured.value).toBeNull();
  });

  it('is the newest of what was asked meanwhile', async () => {
    for (const x of [1, 2, 3, 4]) measureAt([x, 0]);
    expect(waiting).toHaveLength(1);
    waiting[0].answer(width(1));
    await settled();
    expect(waiting.map((w) => w.body)).toEqual([
      { ask: 'measure', at: [1, 0] },
      { ask: 'measure', at: [4, 0] },
    ]);
    waiting[1].answer(width(4));
    await settled();
    expect(measured.value!.got.width).toBe(4);
    expect(waiting).toHaveLength(2);
  });

  it('does not come back once it was cleared', async () => {
    measureAt([1, 0]);
    clearMeasured();
    waiting[0].answer(width(1));
    await settled();
    expect(measured.value).toBeNull();
  });

  it('goes when something is drawn anew or looked at otherwise, and what is under way with it', async () => {
    for (const change of [() => (drawn.value = piece()), () => (view.value = 'gap')]) {
      measureAt([1, 0]);
      waiting.at(-1)!.answer(width(1));
      await settled();
      expect(measured.value).not.toBeNull();
      measureAt([2, 0]);
      change();
      expect(measured.value).toBeNull();
      waiting.at(-1)!.answer(width(2));
      await settled();
      expect(measured.value).toBeNull();
    }
  });

  it('that cannot be told is not shown, and the next is asked', async () => {
    measureAt([1, 0]);
    measureAt([2, 0]);
    waiting[0].fail(new Error('the worker stopped'));
    await settled();
    expect(measured.value).toBeNull();
    waiting[1].answer(width(2));
    await settled();
    expect(measured.value!.got.width).toBe(2);
  });

  it.each([
    ['a value is being dragged', () => (asked.value = { text: 'x', exact: false })],
    ['a drawing is under way', () => (drawing.value = true)],
    ['the drawing is coarse', () => (drawn.value = piece(160, 100, { stage: 'rounded' }))],
    ['nothing is drawn', () => (drawn.value = null)],
    ['the section is looked at', () => (view.value = 'section')],
    ['the coupon is looked at', () => (view.value = 'coupon')],
  ])('is nothing while %s', (_, set) => {
    set();
    measureAt([1, 0]);
    expect(waiting).toEqual([]);
  });
});
