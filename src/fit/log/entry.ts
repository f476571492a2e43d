/** How a fit came out, from too tight to too loose; the order is that of growing clearance. */
export const RESULTS = ['cracked', 'tight', 'good', 'loose', 'gappy'] as const;
export type Result = (typeof RESULTS)[number];

/** Pushed together dry, or glued: glue wets the wood, which swells and makes the same fit tighter. */
export const TRIED = ['dry', 'glued'] as const;
export type Tried = (typeof TRIED)[number];

export const LOG_VERSION = 1;
export const MOST_NOTE = 500;

/** What a result hangs on besides the clearance. Lengths in mm. */
export interface Setup {
  readonly cutter: { readonly diameter: number; readonly cuts: number | null };
  readonly woods: { readonly field: string; readonly plug: string };
  readonly depth: number;
}

/** One fit that was tried. */
export interface Entry extends Setup {
  readonly version: typeof LOG_VERSION;
  readonly kind: 'result';
  /** mm per side. */
  readonly clearance: number;
  /** Which step of the coupon, from 1; null when the clearance was given instead. */
  readonly step: number | null;
  readonly result: Result;
  readonly tried: Tried;
  /** Moisture content of the wood, percent; null when not given. */
  readonly moisture: number | null;
  /** As the user gave it, YYYY-MM-DD; null when not given. No clock is read. */
  readonly date: string | null;
  readonly note: string | null;
}

/** A coupon that was drawn: what its steps are, so that later results can name a step. */
export interface CouponLine {
  readonly version: typeof LOG_VERSION;
  readonly kind: 'coupon';
  /** mm per side, the first step first. */
  readonly ladder: readonly number[];
}

export type LogLine = Entry | CouponLine;

/** The line of the log for an entry, without its line break: one JSON object, keys always in the same order. */
export function lineText(line: LogLine): string {
  if (line.kind === 'coupon')
    return JSON.stringify({ version: line.version, kind: line.kind, ladder: line.ladder });
  const { version, kind, clearance, step, result, tried, cutter, woods, depth, moisture, date, note } = line;
  return JSON.stringify({
    version,
    kind,
    clearance,
    step,
    result,
    tried,
    cutter: { diameter: cutter.diameter, cuts: cutter.cuts },
    woods: { field: woods.field, plug: woods.plug },
    depth,
    moisture,
    date,
    note,
  });
}

/** "2026-02-29" is no day; nor is "2026-2-3", which would not sort. */
export function isDate(text: string): boolean {
  const m = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text);
  if (!m) return false;
  const [year, month, day] = m.slice(1).map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return days !== undefined && day >= 1 && day <= days;
}
