import { describe, expect, it, vi } from 'vitest';
import * as eye from '../../../src/page/drawing/eye.js';
import { expectUnder, layPaper, measures, paper, send, timesWhole } from './paper.js';

vi.mock('../../../src/page/state/hands.js', () => import('./bench.js'));

layPaper();

describe('a wheel', () => {
  it.each([
    ['a notch towards one', { deltaY: -100, deltaMode: 0 }, 1.2],
    ['a notch away', { deltaY: 100, deltaMode: 0 }, 1 / 1.2],
    ['three lines', { deltaY: -3, deltaMode: 1 }, 1.096],
    ['a page, which is no more than the most', { deltaY: -1, deltaMode: 2 }, 1.6],
    ['a pinch on a touchpad', { deltaY: -4, deltaMode: 0, ctrlKey: true }, 1.04],
    ['a wild spin', { deltaY: -9000, deltaMode: 0 }, 1.6],
  ])('that turns by %s zooms about the pointer', (_, turn, factor) => {
    const was = eye.under([300, 200]);
    const e = send('wheel', [300, 200], turn);
    expect(e.defaultPrevented).toBe(true);
    expect(timesWhole()).toBeCloseTo(factor, 9);
    expectUnder([300, 200], was);
  });
});

describe('a drag', () => {
  it('takes the paper along, and says that it is being pulled', () => {
    eye.zoom(3);
    const was = eye.under([400, 300]);
    send('pointerdown', [400, 300]);
    send('pointermove', [430, 290], { buttons: 1 });
    expect(eye.pulling.value).toBe(true);
    expect(paper.held).toEqual(new Set([1]));
    send('pointermove', [460, 250], { buttons: 1 });
    expectUnder([460, 250], was);
    send('pointerup', [460, 250]);
    expect(eye.pulling.value).toBe(false);
    send('pointermove', [500, 500]);
    expectUnder([460, 250], was);
  });

  it('that strays by 5 pixels is a tap, and moves nothing', () => {
    eye.zoom(3);
    const before = eye.camera.value;
    send('pointerdown', [400, 300]);
    send('pointermove', [403, 304], { buttons: 1 });
    send('pointerup', [403, 304]);
    expect(eye.camera.value).toEqual(before);
  });

  it("with the right button is nobody's", () => {
    eye.zoom(3);
    const before = eye.camera.value;
    send('pointerdown', [400, 300], { button: 2 });
    send('pointermove', [500, 300], { buttons: 2 });
    send('pointerup', [500, 300], { button: 2 });
    expect(eye.camera.value).toEqual(before);
  });
});

describe('two fingers', () => {
  const finger = (id: number) => ({ pointerType: 'touch', pointerId: id, buttons: 1 });

  it('keep what lies under each of them under it', () => {
    eye.zoom(2);
    const [a, b] = [eye.under([300, 300]), eye.under([500, 400])];
    send('pointerdown', [300, 300], finger(1));
    send('pointerdown', [500, 400], finger(2));
    // Along the line through both, and in small steps: a turn of the hand is no turn of the paper.
    for (let k = 1; k <= 50; k++) {
      send('pointermove', [300 - 2 * k, 300 - k], finger(1));
      send('pointermove', [500 + 2 * k, 400 + k], finger(2));
    }
    expect(timesWhole()).toBeCloseTo(4, 6);
    expectUnder([200, 250], a);
    expectUnder([600, 450], b);
  });

  it('ask for no width and no zoom when they are lifted', () => {
    send('pointerdown', [300, 300], finger(1));
    send('pointerdown', [500, 400], finger(2));
    send('pointerup', [300, 300], finger(1));
    send('pointerup', [500, 400], finger(2));
    expect(measures()).toEqual([]);
    expect(eye.whole.value).toBe(true);
  });
});
