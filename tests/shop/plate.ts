/**
 * Moments of an elastic plate 1 long and h high under unit pressure, clamped at its foot and both ends, free at its top:
 * Ritz's method with polynomials (x(1-x))^2 (2x-1)^2i and (y/h)^(2+j), integrals by Simpson's rule.
 */
export function plateMoments(h: number, poisson: number, n = 5): { ends: number; root: number } {
  const X = (i: number, x: number, d: number): number =>
    derivative((s) => (s * (1 - s)) ** 2 * (2 * s - 1) ** (2 * i), x, d);
  const Y = (j: number, y: number, d: number): number => {
    const k = 2 + j;
    const factor = d === 0 ? 1 : d === 1 ? k : k * (k - 1);
    return (factor * (y / h) ** (k - d)) / h ** d;
  };
  const size = n * n;
  const integral = (f: (t: number) => number, length: number): number => simpson(f, length);
  const table = (fn: typeof X, length: number, a: number, b: number): number[][] =>
    range(n).map((i) => range(n).map((j) => integral((t) => fn(i, t, a) * fn(j, t, b), length)));
  const x = { 22: table(X, 1, 2, 2), '00': table(X, 1, 0, 0), 20: table(X, 1, 2, 0), 11: table(X, 1, 1, 1) };
  const y = { 22: table(Y, h, 2, 2), '00': table(Y, h, 0, 0), 20: table(Y, h, 2, 0), 11: table(Y, h, 1, 1) };
  const rows = range(size).map((p) => {
    const [i, j] = [Math.floor(p / n), p % n];
    const row = range(size).map((q) => {
      const [k, l] = [Math.floor(q / n), q % n];
      return (
        x[22][i]![k]! * y['00'][j]![l]! +
        x['00'][i]![k]! * y[22][j]![l]! +
        poisson * (x[20][i]![k]! * y[20][l]![j]! + x[20][k]![i]! * y[20][j]![l]!) +
        2 * (1 - poisson) * x[11][i]![k]! * y[11][j]![l]!
      );
    });
    row.push(integral((t) => X(i, t, 0), 1) * integral((t) => Y(j, t, 0), h));
    return row;
  });
  const c = solve(rows);
  const sum = (dx: number, dy: number, px: number, py: number): number =>
    range(size).reduce((s, p) => s + c[p]! * X(Math.floor(p / n), px, dx) * Y(p % n, py, dy), 0);
  const ends = Math.max(...range(41).map((k) => sum(2, 0, 0, (k / 40) * h)));
  return { ends, root: sum(0, 2, 0.5, 0) };
}

function range(n: number): number[] {
  return Array.from({ length: n }, (_, k) => k);
}

/** Derivative of order 0, 1 or 2 by differences of five points. */
function derivative(f: (x: number) => number, x: number, order: number): number {
  if (order === 0) return f(x);
  const e = 1e-3;
  const [a, b, m, d, g] = [f(x - 2 * e), f(x - e), f(x), f(x + e), f(x + 2 * e)];
  return order === 1
    ? (a - 8 * b + 8 * d - g) / (12 * e)
    : (-a + 16 * b - 30 * m + 16 * d - g) / (12 * e * e);
}

function simpson(f: (t: number) => number, length: number): number {
  const n = 100;
  let sum = f(0) + f(length);
  for (let k = 1; k < n; k++) sum += (k % 2 === 1 ? 4 : 2) * f((k / n) * length);
  return (sum * length) / n / 3;
}

/** Solves linear equations given as rows with their right side last, by elimination with pivots. */
function solve(rows: number[][]): number[] {
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[best]![k]!)) best = i;
    [rows[k], rows[best]] = [rows[best]!, rows[k]!];
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const f = rows[i]![k]! / rows[k]![k]!;
      for (let j = k; j <= n; j++) rows[i]![j]! -= f * rows[k]![j]!;
    }
  }
  return rows.map((row, k) => row[n]! / row[k]!);
}
