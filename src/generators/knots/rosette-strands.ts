import { curveArcs, type Parametric } from '../../geometry/parametric.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Node, Point, Strand } from './strand.js';

/** A closed plait round a point: r = mean + swing cos t at the angle (strands / lobes) (t - k sin t), mm. */
export interface RosetteKnot {
  /** Times that the curve goes round before it closes, and strands abreast. */
  readonly strands: number;
  readonly lobes: number;
  readonly mean: number;
  readonly swing: number;
  readonly middle: Point;
  /** Direction of a lobe's tip, radians. */
  readonly turn: number;
}

/**
 * The knot's strands: as many as the greatest common divisor of strands and lobes. Crossings lie on strands - 1 rings,
 * one for every lobe on each. Along a strand the phase u = t - k sin t, from one lobe's tip at 0 to the next at 2 pi,
 * meets ring e at e pi / strands on the way in and at 2 pi less that on the way out. On odd rings the strand that goes inwards
 * lies over, on even ones the strand that goes outwards: over and under by turns.
 */
export function rosetteStrands(knot: RosetteKnot): Strand[] {
  const count = gcd(knot.strands, knot.lobes);
  return Array.from({ length: count }, (_, c) => strand(knot, c, (2 * knot.strands * knot.lobes) / count));
}

/** Strand c, of so many steps of pi / strands in phase. */
function strand(knot: RosetteKnot, c: number, steps: number): Strand {
  const { strands: p, lobes: q } = knot;
  const places: { step: number; node: Node }[] = [];
  for (let step = 0; step < steps; step++) {
    const phase = step % (2 * p);
    if (phase % p === 0) continue;
    const inwards = phase < p;
    const ring = inwards ? phase : 2 * p - phase;
    const spoke = (step + 2 * c) % (2 * q);
    places.push({ step, node: { crossing: `${ring},${spoke}`, over: inwards === (ring % 2 === 1) } });
  }
  const curve = curveOf(knot, c);
  const at = (step: number): number => eccentric((step * Math.PI) / p, widening(knot));
  const stretches = places.map(({ step }, k) => {
    const last = k + 1 === places.length;
    const to = places[last ? 0 : k + 1]!.step + (last ? steps : 0);
    return curveArcs(curve, at(step), at(to), 4 * (to - step));
  });
  return { nodes: places.map(({ node }) => node), stretches };
}

function curveOf(knot: RosetteKnot, c: number): Parametric {
  const { strands, lobes, mean, swing, middle, turn } = knot;
  const rate = strands / lobes;
  const first = turn + (2 * Math.PI * c) / lobes;
  const k = widening(knot);
  const place = (t: number): { r: number; x: number; y: number } => {
    const a = first + rate * (t - k * sin(t));
    return { r: mean + swing * cos(t), x: cos(a), y: sin(a) };
  };
  return {
    point(t) {
      const { r, x, y } = place(t);
      return [middle[0] + r * x, middle[1] + r * y];
    },
    tangent(t) {
      const { r, x, y } = place(t);
      const out = -swing * sin(t);
      const round = r * rate * (1 - k * cos(t));
      return [out * x - round * y, out * y + round * x];
    },
  };
}

/**
 * The k that makes inner lobes wider and outer ones narrower. At swing / mean the curve would run as fast round both
 * and outer lobes would be too pointed.
 */
function widening({ mean, swing }: RosetteKnot): number {
  return (0.35 * swing) / mean;
}

/** Radius of the curve at the tip of an inner lobe, mm, where it turns most. */
export function innerBend(knot: RosetteKnot): number {
  const least = knot.mean - knot.swing;
  const rate = (knot.strands / knot.lobes) * (1 + widening(knot));
  const speed = least * rate;
  return (speed * speed) / Math.abs(knot.swing - least * rate * rate);
}

/** The t with t - k sin t = u, by bisection: Kepler's equation. */
function eccentric(u: number, k: number): number {
  let lo = u - k;
  let hi = u + k;
  for (let i = 0; i < 60; i++) {
    const mid = (lo + hi) / 2;
    if (mid - k * sin(mid) < u) lo = mid;
    else hi = mid;
  }
  return (lo + hi) / 2;
}

export function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}
