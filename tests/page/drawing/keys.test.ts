import { describe, expect, it, vi } from 'vitest';
import * as eye from '../../../src/page/drawing/eye.js';
import { NEARER } from '../../../src/page/drawing/gestures.js';
import { keyed } from '../../../src/page/drawing/keys.js';
import { expectUnder, layPaper, measures, timesWhole } from './paper.js';

vi.mock('../../../src/page/state/hands.js', () => import('./bench.js'));

layPaper();

describe('keys', () => {
  const key = (name: string, more: object = {}): boolean =>
    keyed({
      key: name,
      ctrlKey: false,
      metaKey: false,
      altKey: false,
      shiftKey: false,
      ...more,
    } as KeyboardEvent);

  it('bring the paper nearer and farther about its middle, and show it whole', () => {
    for (const [name, factor] of [
      ['+', NEARER],
      ['=', NEARER ** 2],
      ['-', NEARER],
      ['_', 1],
    ] as const) {
      expect(key(name)).toBe(true);
      expect(timesWhole()).toBeCloseTo(factor, 9);
    }
    key('+');
    expect(key('0')).toBe(true);
    expect(eye.whole.value).toBe(true);
  });

  it.each([
    ['ArrowLeft', 1, 0],
    ['ArrowRight', -1, 0],
    ['ArrowUp', 0, 1],
    ['ArrowDown', 0, -1],
  ])('push it: %s', (name, x, y) => {
    eye.zoom(4);
    for (const [shiftKey, step] of [
      [false, 48],
      [true, 240],
    ] as const) {
      const was = eye.under([450, 350]);
      expect(key(name, { shiftKey })).toBe(true);
      expectUnder([450 + step * x, 350 + step * y], was);
      eye.push(-step * x, -step * y);
    }
  });

  it('m measures in the middle of the room', () => {
    const at = eye.under([450, 350]);
    expect(key('m')).toBe(true);
    expect(measures()).toEqual([at]);
  });

  it('that mean nothing here, or are held with others, are left to others', () => {
    for (const name of ['a', 'Tab', 'Enter', ' ', 'M']) expect(key(name)).toBe(false);
    for (const held of ['ctrlKey', 'metaKey', 'altKey']) expect(key('+', { [held]: true })).toBe(false);
    expect(eye.whole.value).toBe(true);
    expect(key('Escape')).toBe(true);
  });
});
