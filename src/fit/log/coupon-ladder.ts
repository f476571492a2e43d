import { numberText } from '../../schema/units.js';
import { ladder } from '../ladder.js';
import type { LogLine } from './entry.js';

/** The steps of the coupon last drawn, as the log has it; null when it names none. mm per side. */
export function couponLadder(lines: readonly LogLine[]): readonly number[] | null {
  return lines.findLast((l) => l.kind === 'coupon')?.ladder ?? null;
}

/** The ladder that a step refers to when nobody says otherwise. */
export function assumedLadder(lines: readonly LogLine[]): {
  readonly steps: readonly number[];
  readonly assumed: boolean;
} {
  const drawn = couponLadder(lines);
  return drawn ? { steps: drawn, assumed: false } : { steps: ladder(), assumed: true };
}

/** "1 (0.04 mm), 2 (0.08 mm)". */
export function stepsText(steps: readonly number[]): string {
  return steps.map((c, k) => `${k + 1} (${numberText(c)} mm)`).join(', ');
}
