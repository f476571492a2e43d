import { BadInput, type Fault } from '../schema/fault.js';
import { numberText } from '../schema/units.js';

/** A coupon's clearances, from the tightest to the loosest in even steps. Lengths in mm per side. */
export interface LadderRange {
  readonly from: number;
  readonly to: number;
  readonly steps: number;
  /** How well the machine comes back to a place: no step is finer. */
  readonly repeatability: number;
}

/** What a first coupon tries, and what small routers commonly hold (common practice, no source). */
export const DEFAULT_LADDER: LadderRange = { from: 0.04, to: 0.2, steps: 5, repeatability: 0.02 };

export const MOST_STEPS = 12;
export const MOST_CLEARANCE = 2;
/** Both far outside what a router does; they keep a slip of the decimal point out. */
const REPEATABILITY = [0.001, 0.5] as const;
/** Sums of hundredths miss by some 1e-17; no machine knows a ten-thousandth of a millimetre. */
const GRAIN = 10_000;

/**
 * The clearances of a coupon, mm per side, tightest first, written to 0.0001 mm. What is left out is the default.
 * Throws BadInput (`ladder.from` and so on) for a range that cannot be a ladder or whose steps the machine cannot hold.
 */
export function ladder(range: Partial<LadderRange> = {}): number[] {
  const { from, to, steps, repeatability } = { ...DEFAULT_LADDER, ...range };
  const faults: Fault[] = [];
  const fault = (key: string, message: string): number => faults.push({ where: `ladder.${key}`, message });
  const length = (
    key: string,
    value: number,
    [least, most]: readonly [number, number],
    also: string,
  ): void => {
    if (!(value >= least && value <= most))
      fault(key, `must be ${numberText(least)} to ${numberText(most)} mm${also}, not ${shown(value, ' mm')}`);
  };
  length('from', from, [0, MOST_CLEARANCE], ' per side');
  length('to', to, [0, MOST_CLEARANCE], ' per side');
  length('repeatability', repeatability, REPEATABILITY, '');
  if (!Number.isInteger(steps) || steps < 2 || steps > MOST_STEPS)
    fault('steps', `must be a whole number, 2 to ${MOST_STEPS}, not ${shown(steps)}`);
  if (faults.length === 0) {
    const step = (to - from) / (steps - 1);
    if (to <= from)
      fault('to', `must be more than ladder.from (${numberText(from)} mm), not ${numberText(to)} mm`);
    // Half of the last digit that is written, so that 0.04 to 0.12 in five is not refused for a rounding error.
    else if (step < repeatability - 0.5 / GRAIN)
      fault('steps', tooFine({ from, to, steps, repeatability }, step));
  }
  if (faults.length > 0) throw new BadInput(faults);
  const rung = (k: number): number => from + ((to - from) * k) / (steps - 1);
  return Array.from({ length: steps }, (_, k) => Math.round(rung(k) * GRAIN) / GRAIN);
}

function tooFine({ from, to, steps, repeatability }: LadderRange, step: number): string {
  const fits = Math.floor((to - from) / repeatability + 1e-6) + 1;
  const fewer = fits >= 2 ? `ask for ${fits} steps at most, or ` : '';
  return (
    `${steps} from ${numberText(from)} to ${numberText(to)} mm are ${numberText(step)} mm apart, finer than the ` +
    `${numberText(repeatability)} mm the machine repeats: ${fewer}widen the range`
  );
}

function shown(value: number, unit = ''): string {
  return Number.isFinite(value) ? `${numberText(value)}${unit}` : 'that';
}
