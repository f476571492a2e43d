import { MOST_SIZE } from '../coupon.js';
import { DEFAULT_LADDER, ladder, MOST_CLEARANCE } from '../fit/ladder.js';
import { numberText, type Units } from '../schema/units.js';
import { Options } from './fit-options.js';

/** As typed on the command line. */
export interface CouponOptions {
  readonly out: string;
  readonly set: readonly string[];
  readonly size?: string;
  readonly from?: string;
  readonly to?: string;
  readonly steps?: string;
  readonly ladder?: string;
  readonly json?: boolean;
}

/** As read, mm. */
export interface CouponAsked {
  readonly ladder: readonly number[];
  readonly size: number | null;
}

/** More dots than this are miscounted at a glance. */
const MOST_STEPS = 9;

const LEAST_SIZE = 5;

/**
 * Reads the options of `coupon`; a bare length is in the recipe's units, and no two steps are nearer than what the machine
 * repeats (mm). Throws BadInput with every fault found.
 */
export function readCoupon(options: CouponOptions, units: Units, repeatability: number): CouponAsked {
  const faults = new Options(units);
  const { size, from, to, steps, ladder: given } = options;
  const length = (where: string, text: string | undefined): number | null =>
    text === undefined ? null : faults.length(where, text, 0, MOST_CLEARANCE);
  const asked = {
    size: size === undefined ? null : faults.length('--size', size, LEAST_SIZE, MOST_SIZE),
    from: length('--from', from),
    to: length('--to', to),
    steps: steps === undefined ? null : faults.whole('--steps', steps, 1, MOST_STEPS),
    given: given === undefined ? null : faults.lengths('--ladder', given),
  };
  if (given !== undefined)
    for (const [name, text] of Object.entries({ '--from': from, '--to': to, '--steps': steps }))
      if (text !== undefined)
        faults.add(name, 'is given besides --ladder, which says all steps: keep one of the two');
  if (steps === '1' && to !== undefined)
    faults.add('--to', 'is given for one step, whose clearance is --from: leave one of both out');
  if (asked.given) checkGiven(asked.given, repeatability, faults);
  faults.end();
  if (asked.given) return { size: asked.size, ladder: asked.given };
  if (asked.steps === 1) return { size: asked.size, ladder: [asked.from ?? DEFAULT_LADDER.from] };
  const range = {
    from: asked.from ?? DEFAULT_LADDER.from,
    to: asked.to ?? DEFAULT_LADDER.to,
    steps: asked.steps ?? DEFAULT_LADDER.steps,
  };
  return { size: asked.size, ladder: ladder({ ...range, repeatability }) };
}

function checkGiven(steps: readonly number[], repeatability: number, faults: Options): void {
  if (steps.length > MOST_STEPS) faults.add('--ladder', `has ${steps.length} steps; ${MOST_STEPS} at most`);
  const mm = (x: number): string => `${numberText(x)} mm`;
  steps.slice(1).forEach((c, k) => {
    const before = steps[k]!;
    // Half of the last digit of a ladder, so that 0.06 after 0.04 is not refused for a rounding error.
    if (c - before >= repeatability - 0.00005) return;
    faults.add(
      '--ladder',
      c > before
        ? `${mm(before)} and ${mm(c)} are nearer than the ${mm(repeatability)} the machine repeats (machine.repeatability): leave one of both out`
        : `${mm(c)} does not come after ${mm(before)}: give the steps from the tightest to the loosest, each once`,
    );
  });
}
