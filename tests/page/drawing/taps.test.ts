import { describe, expect, it, vi } from 'vitest';
import * as eye from '../../../src/page/drawing/eye.js';
import { NEARER } from '../../../src/page/drawing/gestures.js';
import { measured } from '../../../src/page/drawing/measuring.js';
import { settled, waiting } from './bench.js';
import { begin, expectUnder, layPaper, measures, send, stop, tap, timesWhole } from './paper.js';

vi.mock('../../../src/page/state/hands.js', () => import('./bench.js'));

layPaper();

describe('taps', () => {
  it('two, soon and near, go nearer to where they were', () => {
    const was = eye.under([250, 350]);
    tap([250, 350], { timeStamp: 1000 });
    expect(eye.whole.value).toBe(true);
    tap([250, 350], { timeStamp: 1100 });
    expect(timesWhole()).toBeCloseTo(NEARER, 9);
    expectUnder([250, 350], was);
    // A third is the first of two others.
    tap([250, 350], { timeStamp: 1200 });
    expect(timesWhole()).toBeCloseTo(NEARER, 9);
  });

  it.each([
    ['late', [250, 350], 1320],
    ['far', [281, 350], 1100],
  ] as const)('two of which the second is too %s do not', (_, at, timeStamp) => {
    tap([250, 350], { timeStamp: 1000 });
    tap(at, { timeStamp });
    expect(eye.whole.value).toBe(true);
  });

  it('of a finger or pen ask how wide the wood is there, of a mouse not', () => {
    const at = eye.under([450, 350]);
    tap([450, 350], { pointerType: 'mouse', timeStamp: 1000 });
    expect(measures()).toEqual([]);
    tap([450, 350], { pointerType: 'touch', timeStamp: 5000 });
    expect(measures()).toEqual([at]);
  });

  it('of a finger leave what they asked for when it is lifted; a mouse takes it along', async () => {
    tap([450, 350], { pointerType: 'touch' });
    const width = { from: [0, 0], to: [1, 0], width: 1, of: '' } as const;
    waiting[0].answer(width);
    await settled();
    send('pointerleave', [450, 350], { pointerType: 'touch' });
    expect(measured.value).toEqual({ got: width, aloud: false });
    send('pointerleave', [450, 350]);
    expect(measured.value).toBeNull();
  });

  it("on a mark are the mark's", () => {
    begin(true);
    tap([450, 350], { pointerType: 'touch', timeStamp: 1000 });
    tap([450, 350], { pointerType: 'touch', timeStamp: 1100 });
    expect(measures()).toEqual([]);
    expect(eye.whole.value).toBe(true);
  });

  it('that are taken away from the hand are none', () => {
    send('pointerdown', [450, 350], { pointerType: 'touch' });
    send('pointercancel', [450, 350], { pointerType: 'touch' });
    expect(measures()).toEqual([]);
  });
});

describe('a pointer that rests', () => {
  it('asks how wide the wood is, once, and only when it rests', () => {
    const at = eye.under([320, 310]);
    send('pointermove', [300, 300]);
    vi.advanceTimersByTime(100);
    send('pointermove', [320, 310]);
    vi.advanceTimersByTime(100);
    expect(measures()).toEqual([]);
    // So small a move is none.
    send('pointermove', [322, 311]);
    vi.advanceTimersByTime(40);
    expect(measures()).toEqual([at]);
    vi.advanceTimersByTime(5000);
    expect(measures()).toHaveLength(1);
  });

  it.each([
    ['leaves', () => send('pointerleave', [300, 300])],
    ['is pressed', () => send('pointerdown', [300, 300])],
    ['turns its wheel', () => send('wheel', [300, 300], { deltaY: -100, deltaMode: 0 })],
    ['is no longer listened to', () => stop()],
  ])('asks nothing when it %s before', (_, act) => {
    send('pointermove', [300, 300]);
    act();
    vi.advanceTimersByTime(1000);
    expect(measures()).toEqual([]);
  });

  it('on a mark asks nothing', () => {
    begin(true);
    send('pointermove', [300, 300]);
    vi.advanceTimersByTime(1000);
    expect(measures()).toEqual([]);
  });
});
