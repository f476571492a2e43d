export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

type Place = readonly [number, number];

/**
 * The circle nearest to some points by least squares of the circle's equation (Kasa 1976): the solution of a linear
 * system, taken about the points' middle. Null when they lie on a line.
 */
export function circleThrough(points: readonly Place[]): Circle | null {
  const n = points.length;
  if (n < 3) return null;
  let [mx, my] = [0, 0];
  for (const [x, y] of points) {
    mx += x / n;
    my += y / n;
  }
  let [xx, xy, yy, xz, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const [px, py] of points) {
    const x = px - mx;
    const y = py - my;
    const z = x * x + y * y;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
    zz += z;
  }
  const det = xx * yy - xy * xy;
  if (!(Math.abs(det) > 1e-12 * zz * zz)) return null;
  const a = (xz * yy - yz * xy) / (2 * det);
  const b = (yz * xx - xz * xy) / (2 * det);
  return { x: mx + a, y: my + b, r: Math.sqrt(a * a + b * b + zz / n) };
}

/**
 * The circle through two points that is nearest to others between them: one number, where its centre lies on the line
 * between the two, by least squares. `bulge` is of the arc from p to q. Null when the best is a straight line.
 */
export function arcBetweenEnds(p: Place, q: Place, points: readonly Place[]): { bulge: number } | null {
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const l = Math.sqrt(dx * dx + dy * dy);
  if (l === 0) return null;
  // About the chord's middle, u along it and v to its left: u^2 + v^2 - 2 c v - (l/2)^2 = 0 with the centre at v = c.
  let [num, den] = [0, 0];
  let left = 0;
  for (const [x, y] of points) {
    const ex = x - (p[0] + q[0]) / 2;
    const ey = y - (p[1] + q[1]) / 2;
    const u = (ex * dx + ey * dy) / l;
    const v = (ey * dx - ex * dy) / l;
    num += v * (u * u + v * v - (l * l) / 4);
    den += 2 * v * v;
    left += v;
  }
  if (den === 0 || left === 0) return null;
  const c = num / den;
  const r = Math.sqrt(c * c + (l * l) / 4);
  // The sagitta on the points' side; bulge = sagitta / half the chord, positive where the arc lies to the right.
  const sagitta = left > 0 ? r + c : r - c;
  return { bulge: ((left > 0 ? -1 : 1) * sagitta) / (l / 2) };
}
