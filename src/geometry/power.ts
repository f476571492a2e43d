/**
 * Powers of positive numbers, built from + - * / alone for the reason given in trig.ts: the engines' own differ in the
 * last digit for one argument in ten. Right to about 1e-14 of the result.
 */

const LN2_HIGH = 0.6931471803691238; // ln 2 with the low bits cleared, so n * HIGH is exact for small n
const LN2_LOW = 1.9082149292705877e-10; // the rest of ln 2

/** Natural logarithm of a positive, finite number. */
export function ln(x: number): number {
  let m = x;
  let n = 0;
  for (; m > Math.SQRT2; n++) m /= 2;
  for (; m < Math.SQRT1_2; n--) m *= 2;
  // 2 artanh(s) with |s| <= 0.172: the first dropped term is below 1e-18.
  const s = (m - 1) / (m + 1);
  const z = s * s;
  let sum = 0;
  for (let k = 21; k >= 1; k -= 2) sum = 1 / k + z * sum;
  return n * LN2_HIGH + (2 * s * sum + n * LN2_LOW);
}

/** e to the x; 0 when that is too small to be a number. */
export function exp(x: number): number {
  const n = Math.round(x / (LN2_HIGH + LN2_LOW));
  if (n < -1080) return 0;
  const r = x - n * LN2_HIGH - n * LN2_LOW;
  // Taylor series on |r| <= 0.347: the first dropped term is below 1e-18.
  let sum = 1;
  for (let k = 14; k >= 1; k--) sum = 1 + (r / k) * sum;
  for (let k = 0; k < n; k++) sum *= 2;
  for (let k = 0; k > n; k--) sum /= 2;
  return sum;
}

/** `base` to the `exponent`, for a base that is not negative; 0 to a positive exponent is 0, to 0 it is 1. */
export function power(base: number, exponent: number): number {
  if (exponent === 0) return 1;
  if (base === 0) return exponent > 0 ? 0 : Number.POSITIVE_INFINITY;
  return exp(exponent * ln(base));
}

/** `base` times itself, `times` times over: exact where the result is a whole number under 2^53. */
export function wholePower(base: number, times: number): number {
  let product = 1;
  for (let k = 0; k < times; k++) product *= base;
  return product;
}
