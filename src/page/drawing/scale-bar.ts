import { MM_PER_INCH, type Units } from '../../schema/units.js';

/** A bar of a round length. */
export interface Bar {
  readonly mm: number;
  readonly text: string;
}

/** Below an inch rules go by halves. */
const FRACTIONS = [64, 32, 16, 8, 4, 2];

/** No bar is shorter, in its unit: none could be seen, and what is written of it has so many places. */
const LEAST = 1e-6;

/**
 * The longest bar of a round length that is no longer than `longest` pixels, at `scale` pixels a millimetre: 1, 2 or 5
 * times a power of ten; below an inch a binary fraction, and below 1/64 in a decimal one.
 */
export function barFor(scale: number, units: Units, longest: number): Bar {
  const unit = units === 'in' ? MM_PER_INCH : 1;
  const most = longest / scale / unit;
  if (units === 'in' && most < 1) {
    const under = FRACTIONS.findLast((n) => 1 / n <= most);
    if (under !== undefined) return { mm: unit / under, text: `1/${under} in` };
  }
  const value = round(most);
  return { mm: value * unit, text: `${plain(value)} ${units}` };
}

/** The largest of 1, 2, 5 times a power of ten that is no larger; 0 where there is no room at all. */
function round(most: number): number {
  if (!(most > LEAST && Number.isFinite(most))) return 0;
  let tens = 1;
  while (tens > most) tens /= 10;
  while (tens * 10 <= most) tens *= 10;
  return tens * (5 * tens <= most ? 5 : 2 * tens <= most ? 2 : 1);
}

function plain(value: number): string {
  return value >= 1 ? `${Math.round(value)}` : value.toFixed(6).replace(/\.?0+$/, '');
}
