import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { roundStep, ruleOf, stepped, ticksOf } from '../../../src/page/card/rule.js';
import type { Measurable } from '../../../src/schema/usual.js';
import { described } from '../../schema/described.js';

const measurable = described.flatMap(([where, p]) =>
  'min' in p ? [[where, p] as const satisfies readonly [string, Measurable]] : [],
);
const gap: Measurable = { kind: 'length', name: 'gap', meaning: 'Gap.', default: 4.2, min: 0.2, max: 1000 };

describe('a rule', () => {
  test.each([
    [1, 1],
    [1.1, 2],
    [0.02, 0.02],
    [0.021, 0.05],
    [0.06, 0.1],
    [700, 1000],
    [200, 200],
  ])('has round steps: %s is %s', (size, step) => {
    expect(roundStep(size)).toBe(step);
  });

  it('reaches from a quarter of the usual to three times it, on whole steps', () => {
    expect(ruleOf(gap, 4.2, 'mm')).toEqual({ from: 1.05, to: 12.6, step: 0.05 });
  });

  it('reaches as far as the value lies', () => {
    expect(ruleOf(gap, 90, 'mm').to).toBeCloseTo(90, 6);
    expect(ruleOf(gap, 0.3, 'mm').from).toBeCloseTo(0.3, 1);
  });

  it('is as long in inches', () => {
    const { from, to, step } = ruleOf(gap, 4.2, 'in');
    expect(from).toBeCloseTo(1.05 / 25.4, 2);
    expect(to).toBeCloseTo(12.6 / 25.4, 2);
    expect(step).toBe(0.002);
  });

  it('holds the usual value of everything there is, within what is allowed', () => {
    for (const [, p] of measurable)
      for (const unit of ['mm', 'in'] as const) {
        const inch = p.kind === 'length' && unit === 'in' ? 25.4 : 1;
        const { from, to, step } = ruleOf(p, p.default, unit);
        expect(to).toBeGreaterThan(from);
        expect((to - from) / step).toBeLessThanOrEqual(p.kind === 'count' ? 1e4 : 401);
        expect(from * inch).toBeGreaterThanOrEqual(p.min - 1e-6);
        expect(to * inch).toBeLessThanOrEqual(p.max + 1e-6);
      }
  });
});

describe('a step along it', () => {
  const rule = { from: 1, to: 12.6, step: 0.05 };
  test.each([
    [4.2, 1, 4.25],
    [4.2, -1, 4.15],
    [4.21, 1, 4.25],
    [4.21, -1, 4.2],
    [4.2, 10, 4.7],
    [0.2, -1, 0.2],
    [1000, 1, 1000],
  ])('from %s, %s steps: %s', (size, steps, to) => {
    expect(stepped(gap, rule, size, steps, 'mm')).toBe(to);
  });

  it('stops in inches where millimetres are allowed no further', () => {
    expect(stepped(gap, { from: 0, to: 1, step: 0.002 }, 0.01, -3, 'in') * 25.4).toBeCloseTo(0.2, 3);
  });
});

describe('its marks', () => {
  it('carry numbers at every long one, with shorter ones between', () => {
    const ticks = ticksOf({ from: 1.05, to: 12.6, step: 0.05 });
    expect(ticks.filter((t) => t.size === 'long').map((t) => t.at)).toEqual([2, 4, 6, 8, 10, 12]);
    expect(ticks.find((t) => t.at === 2)!.share).toBeCloseTo(0.95 / 11.55, 9);
    expect(ticks.find((t) => t.at === 3)!.size).toBe('middle');
  });

  it('stand at whole numbers for a count', () => {
    expect(ticksOf({ from: 1, to: 7, step: 1 }).map((t) => t.at)).toEqual([1, 2, 3, 4, 5, 6, 7]);
  });

  it('are none where there is no length, and else a handful of numbers on any rule', () => {
    expect(ticksOf({ from: 1, to: 1, step: 1 })).toEqual([]);
    fc.assert(
      fc.property(
        fc.double({ min: -1000, max: 1000, noNaN: true }),
        fc.double({ min: 0.01, max: 5000, noNaN: true }),
        (from, span) => {
          const ticks = ticksOf({ from, to: from + span, step: roundStep(span / 400) });
          const long = ticks.filter((t) => t.size === 'long').length;
          expect(long).toBeGreaterThanOrEqual(2);
          expect(long).toBeLessThanOrEqual(9);
          expect(ticks.length).toBeLessThanOrEqual(91);
          expect(ticks.every((t) => t.share >= -1e-6 && t.share <= 1 + 1e-6)).toBe(true);
        },
      ),
    );
  });
});
