/**
 * One cubic Bezier curve in power form, and the places where fitting must start afresh.
 * B(t) = P0 + 3 a t + 3 b t^2 + c t^3 with t in 0..1.
 */
export interface Cubic {
  readonly x: readonly [number, number, number, number];
  readonly y: readonly [number, number, number, number];
}

export type Vector = readonly [number, number];

/** Power form of the curve with these control points, mm. */
export function cubicOf(p0: Vector, p1: Vector, p2: Vector, p3: Vector): Cubic {
  const power = (a: number, b: number, c: number, d: number): [number, number, number, number] => [
    a,
    3 * (b - a),
    3 * (a - 2 * b + c),
    d - a + 3 * (b - c),
  ];
  return { x: power(p0[0], p1[0], p2[0], p3[0]), y: power(p0[1], p1[1], p2[1], p3[1]) };
}

export function cubicPoint(c: Cubic, t: number): Vector {
  return [
    c.x[0] + t * (c.x[1] + t * (c.x[2] + t * c.x[3])),
    c.y[0] + t * (c.y[1] + t * (c.y[2] + t * c.y[3])),
  ];
}

function firstDerivative(c: Cubic, t: number): Vector {
  return [c.x[1] + t * (2 * c.x[2] + t * 3 * c.x[3]), c.y[1] + t * (2 * c.y[2] + t * 3 * c.y[3])];
}

function secondDerivative(c: Cubic, t: number): Vector {
  return [2 * c.x[2] + t * 6 * c.x[3], 2 * c.y[2] + t * 6 * c.y[3]];
}

function unit(v: Vector): Vector | null {
  const l = Math.sqrt(v[0] * v[0] + v[1] * v[1]);
  return l > 0 ? [v[0] / l, v[1] / l] : null;
}

/**
 * Unit direction of travel just after t (`side` 1) or just before it (`side` -1). Where the curve all but stops, the
 * first derivative says nothing (or points into a bend smaller than `tiny` mm) and the next one gives the limit.
 */
export function cubicTangent(c: Cubic, t: number, side: 1 | -1, tiny: number): Vector {
  const d1 = firstDerivative(c, t);
  const d2 = secondDerivative(c, t);
  const speed2 = d1[0] * d1[0] + d1[1] * d1[1];
  const pull = Math.sqrt(d2[0] * d2[0] + d2[1] * d2[1]);
  if (speed2 > tiny * pull) return unit(d1)!;
  // Both vanish only when two handles sit on one end: then the far end's direction is the limit.
  if (pull > 1e-9 * (Math.abs(c.x[3]) + Math.abs(c.y[3]))) return unit([d2[0] * side, d2[1] * side])!;
  return unit([c.x[3], c.y[3]]) ?? [1, 0];
}

/**
 * Parameters, rising, between which the curve bends one way only and does not stop: 0, inflections, cusps (bends
 * smaller than `tiny` mm count as cusps), 1.
 */
export function cubicBreaks(c: Cubic, tiny: number): number[] {
  const cross = (i: number, j: number): number => c.x[i]! * c.y[j]! - c.x[j]! * c.y[i]!;
  // B' x B'' = 2 (a x b) + 6 (a x c) t + 6 (b x c) t^2 with a, b, c the power coefficients.
  const breaks = quadraticRoots(6 * cross(2, 3), 6 * cross(1, 3), 2 * cross(1, 2));
  for (const t of speedTurns(c)) {
    const d1 = firstDerivative(c, t);
    const d2 = secondDerivative(c, t);
    if (d1[0] * d1[0] + d1[1] * d1[1] <= tiny * Math.sqrt(d2[0] * d2[0] + d2[1] * d2[1])) breaks.push(t);
  }
  const inside = breaks.filter((t) => t > 1e-9 && t < 1 - 1e-9).sort((p, q) => p - q);
  const out = [0];
  for (const t of [...inside, 1]) if (t - out[out.length - 1]! > 1e-7) out.push(t);
  out[out.length - 1] = 1;
  return out;
}

/** Where B' . B'' = 0, a cubic in t: brackets between the turning points of that cubic, then bisection. */
function speedTurns(c: Cubic): number[] {
  const dot = (i: number, j: number): number => c.x[i]! * c.x[j]! + c.y[i]! * c.y[j]!;
  const k3 = 18 * dot(3, 3);
  const k2 = 18 * dot(2, 3);
  const k1 = 4 * dot(2, 2) + 6 * dot(1, 3);
  const k0 = 2 * dot(1, 2);
  const f = (t: number): number => k0 + t * (k1 + t * (k2 + t * k3));
  return bracketedRoots(f, quadraticRoots(3 * k3, 2 * k2, k1));
}

/** Where the curve turns back along direction (ux, uy), for a curve that lies on one line. */
export function turnsAlong(c: Cubic, ux: number, uy: number): number[] {
  const k = [1, 2, 3].map((i) => i * (c.x[i]! * ux + c.y[i]! * uy));
  return quadraticRoots(k[2]!, k[1]!, k[0]!)
    .filter((t) => t > 0 && t < 1)
    .sort((p, q) => p - q);
}

function bracketedRoots(f: (t: number) => number, turns: number[]): number[] {
  const stops = [0, ...turns.filter((t) => t > 0 && t < 1).sort((p, q) => p - q), 1];
  const roots: number[] = [...stops.slice(1, -1)];
  for (let i = 0; i + 1 < stops.length; i++) {
    let lo = stops[i]!;
    let hi = stops[i + 1]!;
    if (f(lo) > 0 === f(hi) > 0) continue;
    const rising = f(hi) > 0;
    for (let k = 0; k < 60; k++) {
      const mid = (lo + hi) / 2;
      if (f(mid) > 0 === rising) hi = mid;
      else lo = mid;
    }
    roots.push((lo + hi) / 2);
  }
  return roots;
}

/** Real roots of a t^2 + b t + c. */
function quadraticRoots(a: number, b: number, c: number): number[] {
  const size = Math.abs(a) + Math.abs(b) + Math.abs(c);
  if (size === 0) return [];
  if (Math.abs(a) < 1e-14 * size) return b === 0 ? [] : [-c / b];
  const d = b * b - 4 * a * c;
  if (d < 0) return [];
  // The sum that does not cancel, then the other root from the product.
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(d)) / 2;
  return q === 0 ? [0] : [q / a, c / q];
}
