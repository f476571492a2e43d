import type { Vector } from '../../geometry/bezier.js';
import { random } from '../random.js';

/** A height over the plane, and how it changes along x and along y. */
export interface Surface {
  value(x: number, y: number): number;
  gradient(x: number, y: number): Vector;
}

/** The noise repeats after this many grains, far more than a piece shows. */
const PERIOD = 64;

/**
 * Rolling ground: heights from -1 to 1 at the points of a square grid of `grain` mm, blended by cubic B-splines (C. de
 * Boor, A Practical Guide to Splines, 1978), so that value, slope and bend are all continuous.
 */
export function rolling(seed: number, grain: number): Surface {
  const chance = random(seed);
  const heights = Array.from({ length: PERIOD * PERIOD }, () => 2 * chance() - 1);
  const wrapped = (i: number): number => ((i % PERIOD) + PERIOD) % PERIOD;
  return {
    value(x, y) {
      const [u, v] = [x / grain, y / grain];
      const [i, j] = [Math.floor(u), Math.floor(v)];
      const [wx, wy] = [weights(u - i), weights(v - j)];
      let total = 0;
      for (let b = 0; b < 4; b++) {
        const row = wrapped(j + b) * PERIOD;
        let across = 0;
        for (let a = 0; a < 4; a++) across += wx[a]! * heights[row + wrapped(i + a)]!;
        total += wy[b]! * across;
      }
      return total;
    },
    gradient(x, y) {
      const [u, v] = [x / grain, y / grain];
      const [i, j] = [Math.floor(u), Math.floor(v)];
      const [wx, sx] = [weights(u - i), slopes(u - i)];
      const [wy, sy] = [weights(v - j), slopes(v - j)];
      let [gx, gy] = [0, 0];
      for (let b = 0; b < 4; b++) {
        const row = wrapped(j + b) * PERIOD;
        let [sloped, across] = [0, 0];
        for (let a = 0; a < 4; a++) {
          const h = heights[row + wrapped(i + a)]!;
          sloped += sx[a]! * h;
          across += wx[a]! * h;
        }
        gx += wy[b]! * sloped;
        gy += sy[b]! * across;
      }
      return [gx / grain, gy / grain];
    },
  };
}

/** The four cubic B-splines over a point at share t of its interval. They sum to 1. */
function weights(t: number): [number, number, number, number] {
  const s = 1 - t;
  return [
    (s * s * s) / 6,
    (3 * t * t * t - 6 * t * t + 4) / 6,
    (3 * s * s * s - 6 * s * s + 4) / 6,
    (t * t * t) / 6,
  ];
}

/** Their derivatives by t. */
function slopes(t: number): [number, number, number, number] {
  const s = 1 - t;
  return [(-s * s) / 2, (3 * t * t - 4 * t) / 2, (4 * s - 3 * s * s) / 2, (t * t) / 2];
}

/** Distance from (x0, y0), its tip rounded over `soft` mm: level lines are circles. */
export function cone(x0: number, y0: number, soft: number): Surface {
  const value = (x: number, y: number): number =>
    Math.sqrt((x - x0) * (x - x0) + (y - y0) * (y - y0) + soft * soft);
  return {
    value,
    gradient: (x, y) => [(x - x0) / value(x, y), (y - y0) / value(x, y)],
  };
}

/** Ground that rises evenly along the direction (dx, dy), of length 1: level lines are straight. */
export function slope(dx: number, dy: number): Surface {
  return { value: (x, y) => x * dx + y * dy, gradient: () => [dx, dy] };
}

/** One surface and `k` times another. */
export function plus(a: Surface, k: number, b: Surface): Surface {
  return {
    value: (x, y) => a.value(x, y) + k * b.value(x, y),
    gradient(x, y) {
      const [ax, ay] = a.gradient(x, y);
      const [bx, by] = b.gradient(x, y);
      return [ax + k * bx, ay + k * by];
    },
  };
}
