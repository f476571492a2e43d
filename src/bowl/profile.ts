import { Refusal } from '../schema/fault.js';

/** The outline of a turned wall: radius over height, mm; z = 0 is where the vessel stands. */
export interface Profile {
  readonly from: number;
  readonly to: number;
  radius(z: number): number;
  /** dr/dz. */
  lean(z: number): number;
  /** Radius of curvature, mm; signed: above 0 where the wall is hollow as seen from the axis. */
  hollow(z: number): number;
}

/** A cone. Radii at its ends, mm. */
export function straight(from: number, to: number, bottom: number, top: number): Profile {
  const lean = (top - bottom) / (to - from);
  return {
    from,
    to,
    radius: (z) => bottom + (z - from) * lean,
    lean: () => lean,
    hollow: () => Number.POSITIVE_INFINITY,
  };
}

/**
 * A circular arc that stands off the straight line between its ends by `belly` mm, outwards where it is above 0. Throws
 * Refusal where it would turn back on itself: a wall has one radius at each height.
 */
export function arc(from: number, to: number, bottom: number, top: number, belly: number): Profile {
  if (belly === 0) return straight(from, to, bottom, top);
  const [dz, dr] = [to - from, top - bottom];
  const chord = Math.sqrt(dz * dz + dr * dr);
  const sag = Math.abs(belly);
  // Its end tangents make 2 atan(2 sag / chord) with the chord, and may not lie level.
  const most = (chord * dz) / (2 * (chord + Math.abs(dr)));
  if (sag >= most)
    throw new Refusal(
      'bowl.profile',
      `an arc from ${2 * bottom} to ${2 * top} mm across that bellies ${sag} mm turns back on itself: give it less than ${decimal(most)} mm of belly, or points`,
    );
  const R = (chord * chord) / (8 * sag) + sag / 2;
  // The centre lies across the chord's middle, on the side away from the belly.
  const out = belly > 0 ? 1 : -1;
  const off = out * (R - sag);
  const cz = (from + to) / 2 + (off * dr) / chord;
  const cr = (bottom + top) / 2 - (off * dz) / chord;
  const high = (z: number): number => Math.sqrt(R * R - (z - cz) * (z - cz));
  return {
    from,
    to,
    radius: (z) => cr + out * high(z),
    lean: (z) => (-out * (z - cz)) / high(z),
    hollow: () => out * R,
  };
}

/** Down to a tenth, so that the number named would work. */
function decimal(mm: number): string {
  return (Math.floor(mm * 10) / 10).toFixed(1);
}

/**
 * A smooth curve through points (height, radius), heights rising: cubics between them whose slopes are chosen so that
 * nothing bulges beyond the points (Fritsch and Butland 1984, in SIAM J. Sci. Stat. Comput. 5:2: weighted harmonic
 * means of the neighbouring slopes, 0 at a turning point).
 */
export function curve(points: readonly (readonly [z: number, r: number])[]): Profile {
  const n = points.length - 1;
  const h = (k: number): number => points[k + 1]![0] - points[k]![0];
  const slope = (k: number): number => (points[k + 1]![1] - points[k]![1]) / h(k);
  const at = points.map((_, k) => {
    if (n === 1) return slope(0);
    if (k === 0) return end(h(0), h(1), slope(0), slope(1));
    if (k === n) return end(h(n - 1), h(n - 2), slope(n - 1), slope(n - 2));
    const [a, b] = [slope(k - 1), slope(k)];
    if (a * b <= 0) return 0;
    const [u, v] = [2 * h(k) + h(k - 1), h(k) + 2 * h(k - 1)];
    return (u + v) / (u / a + v / b);
  });
  /** The cubic in which z lies: its index, and how far along it is. */
  const piece = (z: number): [k: number, t: number] => {
    let k = 0;
    while (k < n - 1 && z > points[k + 1]![0]) k++;
    return [k, (z - points[k]![0]) / h(k)];
  };
  const lean = (z: number): number => {
    const [k, t] = piece(z);
    const s = slope(k);
    const [a, b] = [at[k]!, at[k + 1]!];
    return a + t * (2 * (3 * s - 2 * a - b) + 3 * t * (a + b - 2 * s));
  };
  return {
    from: points[0]![0],
    to: points[n]![0],
    radius: (z) => {
      const [k, t] = piece(z);
      const s = slope(k);
      const [a, b] = [at[k]!, at[k + 1]!];
      return points[k]![1] + h(k) * t * (a + t * (3 * s - 2 * a - b + t * (a + b - 2 * s)));
    },
    lean,
    hollow: (z) => {
      const [k, t] = piece(z);
      const s = slope(k);
      const [a, b] = [at[k]!, at[k + 1]!];
      const bend = (2 * (3 * s - 2 * a - b) + 6 * t * (a + b - 2 * s)) / h(k);
      const steep = 1 + lean(z) * lean(z);
      return bend === 0 ? Number.POSITIVE_INFINITY : -(steep * Math.sqrt(steep)) / bend;
    },
  };
}

/** The slope at an end: by three points, but no steeper than what keeps the shape. */
function end(h0: number, h1: number, s0: number, s1: number): number {
  const by3 = ((2 * h0 + h1) * s0 - h0 * s1) / (h0 + h1);
  if (by3 * s0 <= 0) return 0;
  return s0 * s1 <= 0 && Math.abs(by3) > 3 * Math.abs(s0) ? 3 * s0 : by3;
}
