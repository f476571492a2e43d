import { expect, test } from 'vitest';
import { readOff } from '../../../src/page/drawing/lengths.js';

test.each([
  [0, 'mm', '0 mm'],
  [0.004, 'mm', '0 mm'],
  [0.006, 'mm', '0.01 mm'],
  [0.08, 'mm', '0.08 mm'],
  [3.175, 'mm', '3.17 mm'],
  [3.2, 'mm', '3.2 mm'],
  [9.994, 'mm', '9.99 mm'],
  [10, 'mm', '10 mm'],
  [10.04, 'mm', '10 mm'],
  [10.06, 'mm', '10.1 mm'],
  [99.96, 'mm', '100 mm'],
  [320, 'mm', '320 mm'],
  [-0.001, 'mm', '0 mm'],
  // An inch is 25.4 mm exactly (international inch, 1959).
  [25.4, 'in', '1 in'],
  [3.175, 'in', '0.125 in'],
  [0.0762, 'in', '0.003 in'],
  [0.01, 'in', '0 in'],
  [101.5, 'in', '3.996 in'],
  [101.6, 'in', '4 in'],
  [102.0064, 'in', '4.02 in'],
  [304.8, 'in', '12 in'],
] as const)('%f mm is read off in %s as %s', (mm, units, text) => {
  expect(readOff(mm, units)).toBe(text);
});
