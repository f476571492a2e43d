import { MM_PER_INCH, type Units } from '../../schema/units.js';
import { type Measurable, usualRange } from '../../schema/usual.js';

/** A rule to slide a value along, in the unit shown. */
export interface Rule {
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

/** As many places a slider is to have at most: more than its pixels would be no use. */
const PLACES = 400;

/** The least of 1, 2 and 5, or ten or a hundred times that and so on, that is no less than `size`. */
export function roundStep(size: number): number {
  let power = 1;
  while (power > size) power /= 10;
  while (10 * power <= size) power *= 10;
  const factor = [1, 2, 5, 10].find((f) => f * power >= size * (1 - 1e-9))!;
  return Number((factor * power).toPrecision(1));
}

/** The rule of a parameter; it reaches as far as the value lies. `held` in mm or degrees. */
export function ruleOf(p: Measurable, held: number, shownIn: Units): Rule {
  const [low, high] = usualRange(p);
  const inch = p.kind === 'length' && shownIn === 'in' ? MM_PER_INCH : 1;
  const [least, most] = [Math.min(low, held) / inch, Math.max(high, held) / inch];
  const step = p.kind === 'count' ? 1 : roundStep((most - least) / PLACES);
  // The ends lie on steps, and within what is allowed.
  const from = Math.ceil(least / step - 1e-9) * step;
  const to = Math.floor(most / step + 1e-9) * step;
  return { from: clean(from), to: clean(to), step };
}

/** The place on the rule `steps` steps from a size, on a step, within what is allowed (mm or degrees: `p`). */
export function stepped(p: Measurable, rule: Rule, size: number, steps: number, shownIn: Units): number {
  const inch = p.kind === 'length' && shownIn === 'in' ? MM_PER_INCH : 1;
  const at = size / rule.step;
  const to = (steps > 0 ? Math.floor(at + 1e-6) : Math.ceil(at - 1e-6)) + steps;
  return clean(Math.min(p.max / inch, Math.max(p.min / inch, to * rule.step)));
}

export interface Tick {
  readonly at: number;
  /** Shares of the rule's length. */
  readonly share: number;
  readonly size: 'long' | 'middle' | 'short';
}

/** Marks of a steel rule: long ones carry numbers, five or ten shorter ones between them. */
export function ticksOf({ from, to, step }: Rule): Tick[] {
  const span = to - from;
  if (!(span > 0)) return [];
  const long = Math.max(step, roundStep(span / 8));
  const parts = Math.min(10, Math.max(1, Math.round(long / step)));
  const per = parts >= 10 ? 10 : parts >= 5 ? 5 : 1;
  const short = long / per;
  const out: Tick[] = [];
  for (let k = Math.ceil(from / short - 1e-6); k <= Math.floor(to / short + 1e-6); k++) {
    const size = k % per === 0 ? 'long' : per === 10 && k % 5 === 0 ? 'middle' : 'short';
    out.push({ at: clean(k * short), share: (k * short - from) / span, size });
  }
  return out;
}

/** 0.30000000000000004 is no place on a rule. */
function clean(value: number): number {
  return Number(value.toFixed(6)) + 0;
}
