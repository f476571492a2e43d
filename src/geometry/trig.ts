/**
 * Sine, cosine, tangent and arctangent built from + - * / and square root alone. The engines' own differ in the
 * last digit for some arguments, and a last digit is enough to make two machines write different files. The
 * polynomials are Taylor series on a small interval (|x| <= pi/4 for sin and cos, |x| <= tan(pi/16) for atan),
 * long enough that the first dropped term is below 1e-17. Radians throughout.
 */

const HALF_PI_HIGH = 1.5707963267341256; // pi/2 with the low 21 bits cleared, so n * HIGH is exact for small n
const HALF_PI_LOW = 6.077100506506192e-11; // the rest of pi/2

function sinSeries(x: number): number {
  const z = x * x;
  return (
    x *
    (1 +
      z *
        (-1 / 6 +
          z *
            (1 / 120 +
              z *
                (-1 / 5040 +
                  z * (1 / 362880 + z * (-1 / 39916800 + z * (1 / 6227020800 + z * (-1 / 1307674368000))))))))
  );
}

function cosSeries(x: number): number {
  const z = x * x;
  return (
    1 +
    z *
      (-1 / 2 +
        z *
          (1 / 24 +
            z *
              (-1 / 720 +
                z *
                  (1 / 40320 +
                    z *
                      (-1 / 3628800 +
                        z * (1 / 479001600 + z * (-1 / 87178291200 + z * (1 / 20922789888000))))))))
  );
}

/** Reduces to |x| <= pi/4 and the quarter turn it came from. Good for |x| up to about 1e5. */
function reduce(x: number): [number, number] {
  const n = Math.round(x / (HALF_PI_HIGH + HALF_PI_LOW));
  return [x - n * HALF_PI_HIGH - n * HALF_PI_LOW, ((n % 4) + 4) % 4];
}

export function sin(x: number): number {
  const [y, q] = reduce(x);
  if (q === 0) return sinSeries(y);
  if (q === 1) return cosSeries(y);
  return q === 2 ? -sinSeries(y) : -cosSeries(y);
}

export function cos(x: number): number {
  const [y, q] = reduce(x);
  if (q === 0) return cosSeries(y);
  if (q === 1) return -sinSeries(y);
  return q === 2 ? -cosSeries(y) : sinSeries(y);
}

export function tan(x: number): number {
  return sin(x) / cos(x);
}

/** Arctangent, radians in -pi/2..pi/2. */
export function atan(x: number): number {
  if (x === Number.POSITIVE_INFINITY) return Math.PI / 2;
  if (x === Number.NEGATIVE_INFINITY) return -Math.PI / 2;
  if (x < 0) return -atan(-x);
  if (x > 1) return Math.PI / 2 - atan(1 / x);
  // Two halvings bring x under tan(pi/16) = 0.199, where 12 terms are below 1e-17.
  const h = x / (1 + Math.sqrt(1 + x * x));
  const q = h / (1 + Math.sqrt(1 + h * h));
  const z = q * q;
  let sum = 0;
  for (let k = 23; k >= 1; k -= 2) sum = 1 / k - z * sum;
  return 4 * q * sum;
}

/** Angle of the direction (x, y), radians in -pi..pi; 0 for the zero vector. */
export function atan2(y: number, x: number): number {
  if (x > 0) return atan(y / x);
  if (x < 0) return y >= 0 ? atan(y / x) + Math.PI : atan(y / x) - Math.PI;
  if (y === 0) return 0;
  return y > 0 ? Math.PI / 2 : -Math.PI / 2;
}

export function radians(degrees: number): number {
  return (degrees / 180) * Math.PI;
}

export function degrees(radiansValue: number): number {
  return (radiansValue / Math.PI) * 180;
}
