import type { Recipe } from '../recipe/recipe.js';

export type Units = Recipe['units'];

/** Millimetres in one unit; the inch is exactly 25.4 mm (international yard and pound agreement, 1959). */
export const MM_PER: Readonly<Record<Units, number>> = { mm: 1, in: 25.4 };

/** What `$INSUNITS`-style code words call the units in running text. */
export const UNIT_WORD: Readonly<Record<Units, string>> = { mm: 'millimetres', in: 'inches' };

/** A number with at most `places` decimals: no trailing zeros, no exponent, never "-0". Needs |x| < 1e21. */
export function decimal(x: number, places: number): string {
  const text = x.toFixed(places);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
}

/** Whole millionths as a decimal number: 1500000 is "1.5". Exact up to 2^53 millionths. */
export function millionths(n: number): string {
  const whole = Math.floor(Math.abs(n) / 1e6);
  const rest = String(Math.abs(n) - whole * 1e6)
    .padStart(6, '0')
    .replace(/0+$/, '');
  return `${n < 0 ? '-' : ''}${whole}${rest ? `.${rest}` : ''}`;
}

/** A length for reading: mm to a micron, inches to a tenth of a thousandth, with the unit. */
export function lengthText(mm: number, units: Units): string {
  return `${bareLength(mm, units)} ${units}`;
}

/** The same without the unit. */
export function bareLength(mm: number, units: Units): string {
  return units === 'mm' ? decimal(mm, 3) : decimal(mm / 25.4, 4);
}

/** An area for reading: square centimetres or square inches, two decimals. */
export function areaText(mm2: number, units: Units): string {
  return units === 'mm' ? `${decimal(mm2 / 100, 2)} cm\u00b2` : `${decimal(mm2 / (25.4 * 25.4), 3)} in\u00b2`;
}

/** Text made safe inside XML and HTML, in elements and in quoted attributes. Control characters XML forbids are dropped. */
export function escapeText(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are exactly the characters XML 1.0 forbids
  const allowed = text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '');
  return allowed
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}
