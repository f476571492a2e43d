import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  inwards,
  lengthRange,
  lengthText,
  numberText,
  parseLength,
  toMillimetres,
} from '../../src/schema/units.js';

describe('lengths as text', () => {
  // The inch is 25.4 mm exactly: international yard and pound agreement, 1959 (NIST SP 811, appendix B.6).
  it.each([
    ['1/8in', 3.175],
    ['1 1/16in', 26.9875],
    ['0.125in', 3.175],
    ['.5in', 12.7],
    ['3mm', 3],
    ['3 mm', 3],
    [' 1/4 in ', 6.35],
    ['-2mm', -2],
    ['1/2mm', 0.5],
    ['0in', 0],
  ])('%s is %f mm', (text, mm) => {
    expect(parseLength(text)).toBe(mm);
  });

  it.each([
    ['', /is empty/],
    ['   ', /is empty/],
    ['3', /no unit/],
    ['1/8', /no unit/],
    ['3 cm', /unit other than mm and in/],
    ['3"', /unit other than mm and in/],
    ['1/0in', /divides by zero/],
    ['1 0.5in', /two numbers/],
    ['NaN', /not a length/],
    ['Infinity mm', /not a length/],
    ['1e3mm', /unit other/],
    ['3mmmm', /unit other/],
    ['1/2/3in', /not a length|has a unit/],
    ['--3mm', /not a length|has a unit/],
    ['mm', /not a length/],
    [`${'9'.repeat(400)}mm`, /too large/],
  ])('%s is refused', (text, why) => {
    expect(parseLength(text)).toMatch(why);
  });

  it('reads every sixty-fourth of an inch as the nearest number to it', () => {
    // 1/64 in is 0.396875 mm; the decimal is written out in whole numbers and read by the engine.
    for (let n = 1; n < 640; n++) expect(parseLength(`${n}/64in`)).toBe(Number(`${n * 396_875}e-6`));
  });

  it('never throws and never gives anything but a finite number or a reason', () => {
    const word = fc.string({
      unit: fc.constantFrom('1', '0', '9', '/', '.', '-', ' ', 'm', 'i', 'n', 'e', '\n', 'é'),
    });
    fc.assert(
      fc.property(fc.oneof(word, fc.string()), (text) => {
        const read = parseLength(text);
        return typeof read === 'number' ? Number.isFinite(read) : read.length > 0;
      }),
      { numRuns: 2000 },
    );
  });
});

describe('numbers in messages', () => {
  it('has no trailing zeros, no exponent and no minus zero', () => {
    expect(numberText(3)).toBe('3');
    expect(numberText(3.1750000001)).toBe('3.175');
    expect(numberText(100)).toBe('100');
    expect(numberText(-0.00001)).toBe('0');
    expect(numberText(0.00012)).toBe('0.0001');
  });

  it('names lengths in the unit of the recipe', () => {
    expect(lengthText(3.175, 'mm')).toBe('3.175 mm');
    expect(lengthText(3.175, 'in')).toBe('0.125 in');
  });

  it('names only limits that would be accepted', () => {
    expect(lengthRange(0.3, 25, 'in')).toBe('0.0119 in to 0.9842 in');
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 3000, noNaN: true }),
        fc.constantFrom('mm' as const, 'in' as const),
        (mm, units) => {
          const up = Number(lengthText(inwards(mm, units, Math.ceil), units).split(' ')[0]);
          // A shown limit may fall short by the one part in 1e6 of a step that counts as the number itself.
          return toMillimetres(up, units) >= mm - 1e-8;
        },
      ),
    );
  });
});
