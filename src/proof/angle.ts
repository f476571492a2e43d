/** Angles from + - * / and sqrt only: the same bits on every engine. */

export const PI = Math.PI;
export const DEGREES = 180 / PI;

/** Arc tangent of any finite x, radians, within 1e-15. Halves the angle twice (Euler), then Gregory's series. */
function atan(x: number): number {
  if (x < 0) return -atan(-x);
  if (x > 1) return PI / 2 - atan(1 / x);
  const half = x / (1 + Math.sqrt(1 + x * x));
  const y = half / (1 + Math.sqrt(1 + half * half));
  const q = y * y;
  let term = 0;
  for (let k = 25; k >= 1; k -= 2) term = 1 / k - q * term;
  return 4 * y * term;
}

/** Angle of the vector (x, y) from the x axis, radians in (-pi, pi]; 0 for the null vector. */
export function angleOf(y: number, x: number): number {
  if (x === 0 && y === 0) return 0;
  if (x >= (y < 0 ? -y : y)) return atan(y / x);
  if (-x >= (y < 0 ? -y : y)) return y < 0 ? atan(y / x) - PI : atan(y / x) + PI;
  return y > 0 ? PI / 2 - atan(x / y) : -PI / 2 - atan(x / y);
}
