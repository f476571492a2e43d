import fc from 'fast-check';
import { expect, it } from 'vitest';
import { areaText, decimal, escapeText, lengthText, millionths } from '../../src/output/format.js';

it('writes decimals without trailing noughts, exponents or negative nought', () => {
  expect([decimal(-1e-9, 6), decimal(1e-7, 6), decimal(1.5, 6), decimal(100, 0), decimal(-20, 3)]).toEqual([
    '0',
    '0',
    '1.5',
    '100',
    '-20',
  ]);
});

it('writes whole millionths exactly', () => {
  expect([millionths(0), millionths(-0), millionths(1), millionths(-1500000), millionths(120000000)]).toEqual(
    ['0', '0', '0.000001', '-1.5', '120'],
  );
  fc.assert(
    fc.property(fc.maxSafeInteger(), (n) => {
      expect(millionths(n)).toMatch(/^-?\d+(\.\d{1,6})?$/);
      expect(BigInt(millionths(n).replace(/^(-?\d+)\.?(\d*)$/, (_a, w, f) => w + f.padEnd(6, '0')))).toBe(
        BigInt(n),
      );
    }),
    { seed: 1 },
  );
});

it('reads lengths and areas in the unit asked for', () => {
  // 1 in is exactly 25.4 mm (international inch, 1959).
  expect([
    lengthText(3.175, 'mm'),
    lengthText(3.175, 'in'),
    areaText(645.16, 'in'),
    areaText(645.16, 'mm'),
  ]).toEqual(['3.175 mm', '0.125 in', '1 in²', '6.45 cm²']);
});

it('escapes what XML minds and drops what it forbids', () => {
  expect(escapeText(`<a b="c">&'\u0000\u000b\ttext`)).toBe('&lt;a b=&quot;c&quot;&gt;&amp;&#39;\ttext');
});
