/** Lengths as people write them. Millimetres inside; an inch is 25.4 mm exactly (international inch, 1959). */

export type Units = 'mm' | 'in';

export const MM_PER_INCH = 25.4;

/** A whole number, so that a fraction of an inch is rounded once, by the division, and 1 1/16in is 26.9875 mm. */
const TENTHS_PER_INCH = 254;

/** The lengths `parseLength` reads, as a regular expression without flags: for the JSON Schema and for the reader. */
export const LENGTH_PATTERN =
  '^\\s*(-?)(?:(\\d+)\\s+)?(?:(\\d+)/(\\d+)|(\\d+(?:\\.\\d*)?|\\.\\d+))\\s*(mm|in)\\s*$';

const LENGTH = new RegExp(LENGTH_PATTERN);

export function toMillimetres(value: number, units: Units): number {
  return units === 'in' ? (value * TENTHS_PER_INCH) / 10 : value;
}

/**
 * Reads a length with its unit: "3mm", "0.125in", "1/8in", "1 1/16in". Returns mm, or what is wrong with the text as
 * a clause that can follow the text itself.
 */
export function parseLength(text: string): number | string {
  const m = LENGTH.exec(text);
  if (!m) return whyNotLength(text);
  const [, sign, whole, over, under, decimal, unit] = m;
  if (whole !== undefined && decimal !== undefined) return 'has two numbers: write "1 1/16in" or "1.0625in"';
  if (under !== undefined && Number(under) === 0) return 'divides by zero';
  const parts = Number(under ?? 1);
  const numerator = Number(whole ?? 0) * parts + Number(decimal ?? over);
  const mm = unit === 'in' ? (numerator * TENTHS_PER_INCH) / (parts * 10) : numerator / parts;
  if (!Number.isFinite(mm)) return 'is too large to be a length';
  return sign === '-' ? -mm : mm;
}

function whyNotLength(text: string): string {
  const forms = 'write "3mm", "0.125in", "1/8in" or "1 1/16in"';
  if (text.trim() === '') return `is empty: ${forms}`;
  const unit = /^[\s\d./-]*\d[\d./]*\s*([^\s\d./-].*)?$/.exec(text);
  if (unit && unit[1] === undefined) return `has no unit: ${forms}, or a bare number without quotes`;
  if (unit && !/^(mm|in)\s*$/.test(unit[1]!)) return `has a unit other than mm and in: ${forms}`;
  return `is not a length: ${forms}`;
}

/** A number with at most `decimals` places and no trailing zeros; never in exponent form below 1e21. */
export function numberText(value: number, decimals = 4): string {
  const text = value.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

/** A length in the given units with its unit, for messages: at most 4 places in inches, 3 in mm. */
export function lengthText(mm: number, units: Units): string {
  return units === 'in' ? `${numberText(mm / MM_PER_INCH, 4)} in` : `${numberText(mm, 3)} mm`;
}

/** A range of lengths for messages, rounded inwards so that both ends named would be accepted. */
export function lengthRange(min: number, max: number, units: Units): string {
  return `${lengthText(inwards(min, units, Math.ceil), units)} to ${lengthText(inwards(max, units, Math.floor), units)}`;
}

/** `mm` moved to the next place that `lengthText` can show, up or down by `round`. */
export function inwards(mm: number, units: Units, round: (x: number) => number): number {
  const step = units === 'in' ? MM_PER_INCH / 10_000 : 1 / 1000;
  const steps = mm / step;
  const nearest = Math.round(steps);
  // A value that is a shown number already must not be moved by the last digit of the division.
  return (Math.abs(steps - nearest) < 1e-6 ? nearest : round(steps)) * step;
}
