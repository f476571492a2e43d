import { MOST_CLEARANCE, MOST_STEPS } from '../ladder.js';
import { type CouponLine, type Entry, isDate, LOG_VERSION, type LogLine, RESULTS, TRIED } from './entry.js';

/** What a line of the log turned out to be. `reason` is a clause that follows "line 7 is damaged: ". */
export type Reading =
  | { readonly kind: 'good'; readonly line: LogLine }
  | { readonly kind: 'blank' }
  | { readonly kind: 'other-version'; readonly version: number }
  | { readonly kind: 'damaged'; readonly reason: string };

/** How every line that `lineText` writes begins. A quote in a note is escaped, so no text in a line can hold it. */
export const LINE_START = '{"version":';

/** Reads one line of the log, without its line break. */
export function readLine(text: string): Reading {
  if (text.trim() === '') return { kind: 'blank' };
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { kind: 'damaged', reason: 'it is not a JSON object' };
  }
  if (!isObject(value)) return { kind: 'damaged', reason: 'it is not a JSON object' };
  const { version } = value;
  if (typeof version !== 'number' || !Number.isFinite(version))
    return { kind: 'damaged', reason: 'version is missing' };
  if (version !== LOG_VERSION) return { kind: 'other-version', version };
  const faults: string[] = [];
  const line = value.kind === 'coupon' ? couponOf(value, faults) : entryOf(value, faults);
  return faults.length > 0 ? { kind: 'damaged', reason: faults.join(', ') } : { kind: 'good', line };
}

type Fields = Readonly<Record<string, unknown>>;

function couponOf({ ladder }: Fields, faults: string[]): CouponLine {
  const sound =
    Array.isArray(ladder) &&
    ladder.length >= 1 &&
    ladder.length <= MOST_STEPS &&
    ladder.every((c) => between(c, 0, MOST_CLEARANCE));
  if (!sound)
    faults.push(`ladder must be a list of 1 to ${MOST_STEPS} clearances, 0 to ${MOST_CLEARANCE} mm`);
  return { version: LOG_VERSION, kind: 'coupon', ladder: ladder as number[] };
}

/** The entry, sound only when no fault was added. Keys that are not known are let pass: they stay in the file. */
function entryOf(v: Fields, faults: string[]): Entry {
  const need = (sound: boolean, message: string): unknown => sound || faults.push(message);
  const cutter = isObject(v.cutter) ? v.cutter : {};
  const woods = isObject(v.woods) ? v.woods : {};
  need(v.kind === 'result', 'kind must be "result" or "coupon"');
  need(between(v.clearance, 0, MOST_CLEARANCE), `clearance must be 0 to ${MOST_CLEARANCE} mm`);
  need(
    none(v.step) || (Number.isInteger(v.step) && (v.step as number) >= 1),
    'step must be a whole number from 1',
  );
  need(one(v.result, RESULTS), `result must be ${RESULTS.join(', ')}`);
  need(one(v.tried, TRIED), `tried must be ${TRIED.join(' or ')}`);
  need(between(cutter.diameter, 0.01, 100), 'cutter.diameter must be a length in mm');
  need(none(cutter.cuts) || between(cutter.cuts, 0.01, 100), 'cutter.cuts must be a length in mm or null');
  need(named(woods.field), 'woods.field must be a name');
  need(named(woods.plug), 'woods.plug must be a name');
  need(between(v.depth, 0.01, 1000), 'depth must be a length in mm');
  need(none(v.moisture) || between(v.moisture, 0, 100), 'moisture must be 0 to 100 percent');
  need(none(v.date) || (typeof v.date === 'string' && isDate(v.date)), 'date must be a day, YYYY-MM-DD');
  need(none(v.note) || typeof v.note === 'string', 'note must be a text');
  return {
    version: LOG_VERSION,
    kind: 'result',
    clearance: v.clearance as number,
    step: (v.step ?? null) as number | null,
    result: v.result as Entry['result'],
    tried: v.tried as Entry['tried'],
    cutter: { diameter: cutter.diameter as number, cuts: (cutter.cuts ?? null) as number | null },
    woods: { field: woods.field as string, plug: woods.plug as string },
    depth: v.depth as number,
    moisture: (v.moisture ?? null) as number | null,
    date: (v.date ?? null) as string | null,
    note: (v.note ?? null) as string | null,
  };
}

function isObject(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function between(value: unknown, least: number, most: number): boolean {
  return typeof value === 'number' && value >= least && value <= most;
}

function none(value: unknown): boolean {
  return value === undefined || value === null;
}

function one(value: unknown, options: readonly string[]): boolean {
  return typeof value === 'string' && options.includes(value);
}

function named(value: unknown): boolean {
  return typeof value === 'string' && value.trim() !== '';
}
