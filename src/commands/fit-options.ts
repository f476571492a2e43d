import { MOST_CLEARANCE, MOST_STEPS } from '../fit/ladder.js';
import { isDate, MOST_NOTE, RESULTS, type Result, TRIED, type Tried } from '../fit/log/entry.js';
import { suggestion } from '../recipe/nearest.js';
import { BadInput, type Fault } from '../schema/fault.js';
import { parseLength, toMillimetres, type Units } from '../schema/units.js';

/** As typed on the command line. */
export interface RecordOptions {
  readonly step?: string;
  readonly clearance?: string;
  readonly ladder?: string;
  readonly result?: string;
  readonly tried?: string;
  readonly moisture?: string;
  readonly date?: string;
  readonly note?: string;
  readonly json?: boolean;
}

export interface NextOptions {
  readonly steps?: string;
  readonly repeatability?: string;
  readonly json?: boolean;
}

/** As read: lengths in mm; exactly one of step and clearance is given. */
export interface Recorded {
  readonly step: number | null;
  readonly clearance: number | null;
  readonly ladder: readonly number[] | null;
  readonly result: Result;
  readonly tried: Tried;
  readonly moisture: number | null;
  readonly date: string | null;
  readonly note: string | null;
}

/** Reads the options of `fit record`; a bare length is in the recipe's units. Throws BadInput with every fault found. */
export function readRecord(options: RecordOptions, units: Units): Recorded {
  const faults = new Options(units);
  const { step, clearance, ladder, date, note } = options;
  if (step === undefined && clearance === undefined)
    faults.add(
      '--step',
      'is missing: name the step of the coupon (--step 3), or its clearance (--clearance 0.08mm)',
    );
  if (step !== undefined && clearance !== undefined)
    faults.add('--clearance', 'is given besides --step: keep one of the two');
  if (ladder !== undefined && step === undefined)
    faults.add('--ladder', 'says what a step is: it needs --step');
  if (date !== undefined && !isDate(date))
    faults.add('--date', `${JSON.stringify(date)} is no day: write it like 2026-03-09`);
  if (note !== undefined && note.length > MOST_NOTE)
    faults.add('--note', `has ${note.length} characters; ${MOST_NOTE} at most`);
  const read: Recorded = {
    step: step === undefined ? null : faults.whole('--step', step, 1, MOST_STEPS),
    clearance: clearance === undefined ? null : faults.length('--clearance', clearance, 0, MOST_CLEARANCE),
    ladder: ladder === undefined ? null : faults.lengths('--ladder', ladder),
    result: faults.one('--result', options.result, RESULTS),
    tried: faults.one('--tried', options.tried, TRIED),
    moisture: options.moisture === undefined ? null : faults.percent('--moisture', options.moisture),
    date: date ?? null,
    note: note ?? null,
  };
  faults.end();
  return read;
}

/** Reads the options of `fit next`; what is not given stays out. Throws BadInput. */
export function readNext(options: NextOptions, units: Units): { steps?: number; repeatability?: number } {
  const faults = new Options(units);
  const { steps, repeatability } = options;
  const read = {
    ...(steps === undefined ? {} : { steps: faults.whole('--steps', steps, 2, MOST_STEPS) }),
    ...(repeatability === undefined
      ? {}
      : { repeatability: faults.length('--repeatability', repeatability, 0.001, 0.5) }),
  };
  faults.end();
  return read;
}

/** Reads values one by one and gathers what is wrong with them. A faulty value comes out as 0 and never gets further. */
export class Options {
  private readonly faults: Fault[] = [];
  constructor(private readonly units: Units) {}

  add(where: string, message: string): void {
    this.faults.push({ where, message });
  }

  end(): void {
    if (this.faults.length > 0) throw new BadInput(this.faults);
  }

  one<T extends string>(where: string, text: string | undefined, options: readonly T[]): T {
    const all = `${options.slice(0, -1).join(', ')} or ${options.at(-1)}`;
    if (text === undefined) this.add(where, `is missing: ${all}`);
    else if (!(options as readonly string[]).includes(text))
      this.add(where, `${JSON.stringify(text)} must be ${all}; ${suggestion(text, options)}`);
    return text as T;
  }

  whole(where: string, text: string, least: number, most: number): number {
    const value = /^\d{1,9}$/.test(text) ? Number(text) : -1;
    if (value >= least && value <= most) return value;
    this.add(where, `${JSON.stringify(text)} must be a whole number, ${least} to ${most}`);
    return 0;
  }

  percent(where: string, text: string): number {
    const value = /^\d{1,3}(\.\d{1,6})?\s*%?$/.test(text) ? Number.parseFloat(text) : -1;
    if (value >= 0 && value <= 100) return value;
    this.add(where, `${JSON.stringify(text)} must be the moisture of the wood in percent, 0 to 100`);
    return 0;
  }

  length(where: string, text: string, least: number, most: number): number {
    const bare = /^-?(\d+(\.\d*)?|\.\d+)$/.test(text.trim());
    const mm = bare ? toMillimetres(Number(text), this.units) : parseLength(text);
    if (typeof mm === 'string') this.add(where, `${JSON.stringify(text)} ${mm}`);
    else if (!(mm >= least && mm <= most))
      this.add(where, `${JSON.stringify(text)} must be ${least} to ${most} mm`);
    else return Math.round(mm * 1e6) / 1e6;
    return 0;
  }

  /** "0.06, 0.08mm, 0.1". */
  lengths(where: string, text: string): number[] {
    const parts = text.split(',');
    if (parts.length > MOST_STEPS) this.add(where, `has ${parts.length} steps; ${MOST_STEPS} at most`);
    return parts.slice(0, MOST_STEPS).map((p) => this.length(where, p, 0, MOST_CLEARANCE));
  }
}
