import type { Vector } from '../../geometry/bezier.js';
import { cos, sin, tan } from '../../geometry/trig.js';

/** Share of the bend over which its curvature grows from nothing, and again over which it fades. */
const EASE = 0.25;

/**
 * A bend whose curvature grows evenly from 0, stays, and fades to 0, so that curves laid beside it have no kink where
 * it meets a straight side (a clothoid, a circle and a clothoid). It starts at (0, 0) along +x and turns left.
 */
export interface Bend {
  /** Whole turn, radians. */
  readonly turn: number;
  /** Length along it, mm. */
  readonly length: number;
  /** Distance from its start, and from its end, to the corner it goes round, mm. */
  readonly setback: number;
  /** Place, heading (radians) and curvature (1/mm) at a distance along it. */
  at(s: number): { readonly place: Vector; readonly heading: number; readonly curvature: number };
}

/** A bend of this turn (radians) with this least radius, mm. */
export function bend(turn: number, radius: number): Bend {
  const length = (turn * radius) / (1 - EASE);
  const ease = EASE * length;
  const eased = clothoid(ease, 1 / (2 * ease * radius));
  const [easedSin, easedCos] = [sin(eased.heading), cos(eased.heading)];
  const first = (s: number): { place: Vector; heading: number; curvature: number } => {
    if (s <= ease) {
      const { place, heading } = clothoid(s, 1 / (2 * ease * radius));
      return { place, heading, curvature: s / (ease * radius) };
    }
    const heading = eased.heading + (s - ease) / radius;
    return {
      place: [
        eased.place[0] + radius * (sin(heading) - easedSin),
        eased.place[1] - radius * (cos(heading) - easedCos),
      ],
      heading,
      curvature: 1 / radius,
    };
  };
  const [mx, my] = first(length / 2).place;
  const setback = mx + my * tan(turn / 2);
  const c = cos(turn);
  const n = sin(turn);
  return {
    turn,
    length,
    setback,
    at(s) {
      if (s <= length / 2) return first(s);
      // The second half is the first one's mirror image, walked back from the end.
      const { place, heading, curvature } = first(length - s);
      const [x, y] = place;
      return {
        place: [setback * (1 + c) - x * c - y * n, setback * n - x * n + y * c],
        heading: turn - heading,
        curvature,
      };
    },
  };
}

/** The place after s along a curve whose heading is k s^2, by the power series of the Fresnel integrals. */
export function clothoid(s: number, k: number): { place: Vector; heading: number } {
  const heading = k * s * s;
  let x = 0;
  let y = 0;
  // heading^m / m! with the signs of cosine and sine; 24 terms are below 1e-17 for headings up to 2.
  let term = s;
  for (let m = 0; m < 24; m++) {
    const part = term / (2 * m + 1);
    if (m % 2 === 0) x += m % 4 === 0 ? part : -part;
    else y += m % 4 === 1 ? part : -part;
    term = (term * heading) / (m + 1);
    // What is left is below the last digit of either sum.
    if (Math.abs(term) < 1e-18 * Math.abs(y)) break;
  }
  return { place: [x, y], heading };
}
