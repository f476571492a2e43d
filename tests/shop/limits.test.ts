import { expect, it } from 'vitest';
import { clearanceLimits, fitLimits } from '../../src/shop/limits.js';

it('gives the worked examples of allowance', () => {
  // 1. Hole 1.500 +.003/0, shaft 1.498 0/-.003: allowance .002, greatest clearance .008. A page on ANSI B4.1, published.
  const one = fitLimits({ least: 1.5, greatest: 1.503 }, { least: 1.495, greatest: 1.498 });
  expect(one.least).toBeCloseTo(0.002, 12);
  expect(one.greatest).toBeCloseTo(0.008, 12);
  expect(one.kind).toBe('clearance fit');
  // 2. Hole .250 and shaft .245: clearance .005; shaft .251: interference .001. US Army Ordnance course OD1642, published.
  const loose = fitLimits({ least: 0.25, greatest: 0.25 }, { least: 0.245, greatest: 0.245 });
  expect(loose.least).toBeCloseTo(0.005, 12);
  expect(loose.kind).toBe('clearance fit');
  const tight = fitLimits({ least: 0.25, greatest: 0.25 }, { least: 0.251, greatest: 0.251 });
  expect(tight.greatest).toBeCloseTo(-0.001, 12);
  expect(tight.kind).toBe('interference fit');
});

it('names a fit that can go either way', () => {
  // Transition fit: drawing manual, transcribed.
  expect(fitLimits({ least: 10, greatest: 10.02 }, { least: 9.99, greatest: 10.01 }).kind).toBe(
    'transition fit',
  );
});

it('takes both boundaries at their worst', () => {
  // 0.10 per side, each boundary within 0.03: 0.04 to 0.16.
  const fit = clearanceLimits(0.1, 0.03);
  expect(fit.least).toBeCloseTo(0.04, 12);
  expect(fit.greatest).toBeCloseTo(0.16, 12);
  expect(fit.kind).toBe('clearance fit');
  expect(clearanceLimits(0.1, 0.06).kind).toBe('transition fit');
  // In the extreme case the limits meet and it is a clearance fit still (ISO 286-1, from memory).
  expect(clearanceLimits(0.06, 0.03).kind).toBe('clearance fit');
  expect(clearanceLimits(-0.1, 0.03).kind).toBe('interference fit');
  expect(() => clearanceLimits(0.1, -0.01)).toThrow('accuracy: is -0.01 mm: give a value of 0 mm or more');
});
