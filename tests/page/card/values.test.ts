import { describe, expect, it, test } from 'vitest';
import {
  bareText,
  fits,
  heldOf,
  measureText,
  typed,
  valueText,
  writtenSize,
} from '../../../src/page/card/values.js';
import type { Parameter } from '../../../src/schema/parameter.js';

const size: Parameter = { kind: 'length', name: 'gap', meaning: 'Gap.', default: 4, min: 0.2, max: 200 };
const worded: Parameter = { ...size, words: ['fit'] };
const disc: Parameter = { ...size, min: 0, say: '… disc', zero: 'no' };
const turn: Parameter = { kind: 'angle', name: 'turn', meaning: 'Turn.', default: 0, min: -360, max: 360 };
const points: Parameter = { kind: 'count', name: 'points', meaning: 'Points.', default: 12, min: 3, max: 48 };
const share: Parameter = { kind: 'number', name: 'share', meaning: 'Share.', default: 0.5, min: 0, max: 1 };
const text: Parameter = { kind: 'text', name: 'text', meaning: 'Text.', default: 'a', maxLength: 4 };
const choice: Parameter = {
  kind: 'choice',
  name: 'sides',
  meaning: 'Sides.',
  default: '4',
  options: [
    { value: '4', meaning: '' },
    { value: 'top-left', meaning: '' },
  ],
};
const flag: Parameter = {
  kind: 'flag',
  name: 'on',
  meaning: 'On.',
  default: true,
  words: ['shown', 'hidden'],
};

describe('what a text says', () => {
  // An inch is 25.4 mm (international yard and pound agreement, 1959).
  test.each([
    [size, 4.2, 'mm', 4.2],
    [size, 0.125, 'in', 3.175],
    [size, '1/8in', 'mm', 3.175],
    [size, '1 1/16in', 'mm', 26.9875],
    [size, 'wide', 'mm', undefined],
    [size, true, 'mm', undefined],
    [worded, 'fit', 'mm', 'fit'],
    [turn, 30, 'mm', 30],
    [turn, '30', 'mm', undefined],
    [choice, 4, 'mm', '4'],
    [flag, 'yes', 'mm', undefined],
    [flag, false, 'mm', false],
    [text, 'ab', 'mm', 'ab'],
    [text, 3, 'mm', undefined],
  ] as const)('of %s, %s in %s', (p, written, units, held) => {
    expect(heldOf(p, written, units)).toBe(held);
  });

  test.each([
    [size, 0.2, true],
    [size, 0.19, false],
    [size, 200.1, false],
    [size, '8in', false],
    [size, '7.8in', true],
    [points, 3, true],
    [points, 3.5, false],
    [choice, 'top-left', true],
    [choice, 'left', false],
    [text, 'abcde', false],
    [text, '  ', false],
    [text, 'abcd', true],
    [flag, true, true],
    [worded, 'fit', true],
  ] as const)('%s takes %s: %s', (p, written, good) => {
    expect(fits(p, written, 'mm')).toBe(good);
  });
});

describe('what a sentence shows', () => {
  test.each([
    [size, 4.2, 'mm', undefined, '4.2 mm'],
    [size, 3.175, 'in', undefined, '0.125 in'],
    [size, 3.175, 'in', '1/8in', '1/8 in'],
    [size, 3.175, 'mm', '1/8in', '3.175 mm'],
    [size, 26.9875, 'in', '1 1/16in', '1 1/16 in'],
    [turn, -30, 'mm', undefined, '-30°'],
    [points, 12, 'mm', undefined, '12'],
    [share, 0.25, 'in', undefined, '0.25'],
    [disc, 0, 'mm', undefined, 'no'],
    [disc, 2, 'mm', undefined, '2 mm'],
    [choice, 'top-left', 'mm', undefined, 'top left'],
    [flag, true, 'mm', undefined, 'shown'],
    [worded, 'fit', 'mm', undefined, 'fit'],
  ] as const)('%s at %s in %s', (p, held, shownIn, written, says) => {
    expect(valueText(p, held, shownIn, written)).toBe(says);
  });

  it('is a size for a slider also where 0 has a word', () => {
    expect(measureText(disc, 0, 'mm')).toBe('0 mm');
    expect(bareText(disc, 0, 'mm')).toBe('0');
  });
});

describe('what is typed', () => {
  test.each([
    [size, '4.2', 'mm', 'mm', 4.2],
    [size, ' 4,2 ', 'mm', 'mm', 4.2],
    [size, '4.2 mm', 'mm', 'mm', 4.2],
    [size, '4.2', 'in', 'mm', '4.2in'],
    [size, '4.2', 'mm', 'in', '4.2mm'],
    [size, '1/8', 'in', 'mm', '1/8in'],
    [size, '1/8"', 'mm', 'mm', '1/8in'],
    [size, '1 1/16 in', 'mm', 'mm', '1 1/16in'],
    [size, '0.125in', 'mm', 'in', 0.125],
    [size, 'wide', 'mm', 'mm', 'wide'],
    [size, '4 cm', 'mm', 'mm', '4 cm'],
    [size, '', 'mm', 'mm', ''],
    [worded, 'fit', 'mm', 'mm', 'fit'],
    [disc, 'No', 'mm', 'mm', 0],
    [turn, '30°', 'mm', 'mm', 30],
    [turn, '-7.5', 'in', 'mm', -7.5],
    [points, '12', 'mm', 'mm', 12],
    [points, 'a dozen', 'mm', 'mm', 'a dozen'],
    [text, ' a ', 'mm', 'mm', ' a '],
  ] as const)('for %s: "%s", shown in %s, recipe in %s', (p, words, shownIn, units, written) => {
    expect(typed(p, words, shownIn, units)).toBe(written);
  });

  test.each([
    [size, 4.2, 'mm', 'mm', 4.2],
    [size, 0.1 + 0.2, 'mm', 'mm', 0.3],
    [size, 0.125, 'in', 'mm', '0.125in'],
    [size, 4, 'mm', 'in', '4mm'],
    [turn, 30, 'in', 'mm', 30],
  ] as const)('slid to: %s %s, shown in %s, recipe in %s', (p, at, shownIn, units, written) => {
    expect(writtenSize(p, at, shownIn, units)).toBe(written);
  });

  it('comes back as it was shown', () => {
    for (const [mm, shownIn, units] of [
      [4.2, 'mm', 'mm'],
      [3.175, 'in', 'mm'],
      [50.8, 'in', 'in'],
      [7, 'mm', 'in'],
    ] as const) {
      const written = typed(size, bareText(size, mm, shownIn), shownIn, units);
      expect(heldOf(size, written, units)).toBeCloseTo(mm, 9);
    }
  });
});
