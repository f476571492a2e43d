import type { Vector } from '../../geometry/bezier.js';
import { closedChain } from '../../geometry/chain.js';
import type { Edge } from '../../geometry/edge.js';
import { curveArcs } from '../../geometry/parametric.js';
import { power } from '../../geometry/power.js';
import { type Contour, polygon } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';

/** Exponents this near to 1 are straight sides: no cutter shows the difference, and no arc follows it. */
const STRAIGHT = 0.02;

/**
 * The superellipse |x / a|^n + |y / b|^n = 1 about (0, 0) (G. Lame, 1818), counter-clockwise, as arcs within CURVE_FIT
 * of it. Convex from n = 1 on; under that it has four points with hollow sides.
 */
export function superellipseContour(a: number, b: number, n: number): Contour {
  if (Math.abs(n - 1) < STRAIGHT)
    return polygon([[a, 0], [0, b], [-a, 0], [0, -b]]); // biome-ignore format: four corners
  const quarters = [0, 1, 2, 3].flatMap((q): Edge[] => {
    // By quarters, each from axis to axis, so that corners on the axes stay corners.
    const [sx, sy] = [q === 0 || q === 3 ? 1 : -1, q < 2 ? 1 : -1];
    const quarter = {
      point: (t: number): Vector => {
        const s = q % 2 === 0 ? t : 1 - t;
        const [x, y] = quarterPoint(a, b, n, s);
        return [sx * x, sy * y];
      },
      tangent: (t: number): Vector => {
        const s = q % 2 === 0 ? t : 1 - t;
        const [x, y] = quarterTangent(a, b, n, s);
        return q % 2 === 0 ? [sx * x, sy * y] : [-sx * x, -sy * y];
      },
    };
    return curveArcs(quarter, 0, 1, 4);
  });
  return closedChain(quarters);
}

/** cos and sin of a share of a right angle, exact at its ends. */
function direction(s: number): Vector {
  if (s <= 0) return [1, 0];
  if (s >= 1) return [0, 1];
  return [cos((s * Math.PI) / 2), sin((s * Math.PI) / 2)];
}

/** The point of the first quarter seen from the middle under a share s of a right angle, in shares of a and b. */
function quarterPoint(a: number, b: number, n: number, s: number): Vector {
  const [c, d] = direction(s);
  const k = power(power(c, n) + power(d, n), -1 / n);
  return [a * k * c, b * k * d];
}

/** Its direction of travel from the x axis to the y axis: across the slope (u^(n-1) / a, v^(n-1) / b). */
function quarterTangent(a: number, b: number, n: number, s: number): Vector {
  const [u, v] = direction(s);
  // Under n = 1 both would be infinite on an axis; times (u v)^(1-n) neither is.
  const [gx, gy] =
    n >= 1 ? [power(u, n - 1) / a, power(v, n - 1) / b] : [power(v, 1 - n) / a, power(u, 1 - n) / b];
  return [-gy, gx];
}
