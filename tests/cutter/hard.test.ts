import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { enforce } from '../../src/cutter/enforce.js';
import { makePair } from '../../src/fit/split.js';
import { area, parts, perimeter } from '../../src/geometry/region.js';
import { Refusal } from '../../src/schema/fault.js';
import { closedForm } from '../support/hard-closed.js';
import { isOpenedClosed } from '../support/hard-judge.js';
import { hardOutlines } from '../support/hard-outlines.js';
import type { Hard } from '../support/hard-shapes.js';
import { proofOf } from '../support/proving.js';

/**
 * What the pass is to make of an outline, and who says so: a closed form; an engine, where the outline is opened and closed
 * and no more; the rule, where pieces are parted or joined (then the proof alone judges the value that is stored).
 */
type Answer = { readonly judge: 'closed form' | 'engine' | 'rule' } & (
  | { readonly refusal: string; readonly at: readonly number[] }
  | {
      readonly pieces: number;
      readonly parts: number;
      readonly holes: number;
      readonly area: number;
      readonly length: number;
    }
);

const answers = JSON.parse(
  readFileSync(new URL('../corpus/hard/answers.json', import.meta.url), 'utf8'),
) as Record<string, Answer>;

const CLEARANCE = 0.08;
const FIT = { clearance: CLEARANCE, from: 'plug', face: 'up' } as const;

function expectNear(measured: number, stored: number, share: number): void {
  expect(Math.abs(measured - stored)).toBeLessThanOrEqual(share * Math.max(1, stored));
}

function refusalOf(hard: Hard): Refusal {
  try {
    enforce({ pieces: hard.pieces }, hard.rule);
  } catch (e) {
    if (e instanceof Refusal) return e;
    throw e;
  }
  throw new Error('not refused');
}

function answered(hard: Hard): void {
  const answer = answers[hard.name]!;
  if ('refusal' in answer) {
    const refusal = refusalOf(hard);
    expect(refusal.code).toBe(answer.refusal);
    expect(Math.hypot(refusal.at![0] - answer.at[0]!, refusal.at![1] - answer.at[1]!)).toBeLessThan(0.01);
    return;
  }
  const { region, pieces } = enforce({ pieces: hard.pieces }, hard.rule);
  const n = parts(region).length;
  expect([pieces.length, n, region.contours.length - n]).toEqual([answer.pieces, answer.parts, answer.holes]);
  const share = answer.judge === 'closed form' ? 1e-6 : 1e-4;
  expectNear(area(region), answer.area, share);
  expectNear(perimeter(region), answer.length, share);
  if (answer.judge === 'engine') expect(isOpenedClosed(region.contours, hard)).toBe(true);
  if (n === 0) return;
  const proof = proofOf(makePair({ region, pieces, changes: [] }, FIT), {
    radius: hard.rule.r,
    clearance: CLEARANCE,
  });
  expect(proof.failures).toEqual([]);
}

describe('hard outlines', () => {
  const all = hardOutlines();

  it('have an answer each, and no answer is left over', () => {
    expect(all.map((h) => h.name)).toEqual(Object.keys(answers));
    const judges = Object.values(answers).map((a) => a.judge);
    expect(judges.filter((j) => j === 'closed form').length).toBeGreaterThan(85);
    expect(judges.filter((j) => j === 'engine').length).toBeGreaterThan(35);
  });

  it('have stored answers that agree with the closed forms', () => {
    for (const hard of all) {
      const closed = closedForm(hard);
      const answer = answers[hard.name]!;
      expect(closed !== null, hard.name).toBe(answer.judge === 'closed form');
      if (!closed || 'refusal' in answer) continue;
      expectNear(closed.area, answer.area, 1e-6);
      expectNear(closed.length, answer.length, 1e-6);
    }
  });

  for (const hard of all) it(hard.name, () => answered(hard));
});
