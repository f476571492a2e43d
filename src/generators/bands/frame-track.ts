import type { Vector } from '../../geometry/bezier.js';
import { type Edge, line, reversed } from '../../geometry/edge.js';
import { curveArcs } from '../../geometry/parametric.js';
import { cos, sin } from '../../geometry/trig.js';
import { type Bend, bend } from './bend.js';
import type { Spot, Track } from './track.js';

/** Straight sides of a frame, counter-clockwise: all corners turn alike; sides are of one length, or of two in turn. */
export interface FrameSide {
  readonly start: Vector;
  readonly heading: number;
  readonly length: number;
}

/** A stretch of the track: half a bend or the straight part of a side. */
interface Stretch {
  /** Distances along the true track where it starts and its length, mm. */
  readonly from: number;
  readonly length: number;
  /** Repeats up to its start, and per mm at its start and its end. */
  readonly before: number;
  readonly rate0: number;
  readonly rate1: number;
  spot(along: number): { at: Vector; heading: number; curvature: number };
}

/**
 * A track round a frame with bends for corners. It starts half way round the corner before the first side, and every
 * stretch from corner to corner holds a whole number of repeats, so that all corners look alike. The repeats' length
 * changes evenly within the bends from one side's to the next one's, so that nothing kinks.
 *
 * @param radius the least radius of the bends, mm
 * @param counts the repeats on the first side and on the second, from half way round one corner to the next
 */
export function frameTrack(
  sides: readonly FrameSide[],
  radius: number,
  counts: readonly [number, number],
): Track {
  const corner = bend((2 * Math.PI) / sides.length, radius);
  const stretches = lay(sides, corner, counts);
  const last = stretches[stretches.length - 1]!;
  const repeats = stretches.length === 0 ? 0 : sides.reduce((n, _, i) => n + counts[i % 2]!, 0);
  const whole = last.from + last.length;
  const repeat = whole / repeats;
  const find = (s: number): { stretch: Stretch; along: number; rate: number } => {
    let u = s / repeat;
    u -= repeats * Math.floor(u / repeats);
    let i = stretches.length - 1;
    while (i > 0 && stretches[i]!.before > u) i--;
    const stretch = stretches[i]!;
    const { rate0, rate1, length, before } = stretch;
    // The root of rate0 x + (rate1 - rate0) x^2 / (2 length) = u - before that does not cancel.
    const rate = Math.sqrt(rate0 * rate0 + (2 * (u - before) * (rate1 - rate0)) / length);
    return { stretch, along: (2 * (u - before)) / (rate0 + rate), rate };
  };
  const spot = (s: number, t: number): Spot => {
    const { stretch, along, rate } = find(s);
    const { at, heading, curvature } = stretch.spot(along);
    const c = cos(heading);
    const n = sin(heading);
    const stretched = (1 - t * curvature) / (rate * repeat);
    return { at: [at[0] - t * n, at[1] + t * c], along: [c * stretched, n * stretched], across: [-n, c] };
  };
  return {
    ends: 'closed',
    repeats,
    repeat,
    spot,
    along(t, s0, s1) {
      if (s1 < s0) return this.along(t, s1, s0).map(reversed).reverse();
      return parts(stretches, repeats * repeat, repeat, s0, s1).flatMap(({ from, to, straight }): Edge[] => {
        const [a, b] = [spot(from + HAIR, t).at, spot(to - HAIR, t).at];
        if (straight) return [line(a[0], a[1], b[0], b[1])];
        const curve = { point: (s: number) => spot(s, t).at, tangent: (s: number) => spot(s, t).along };
        return curveArcs(curve, from + HAIR, to - HAIR, 1);
      });
    },
  };
}

/** Stretches are entered this far, so that the spot at an end is the right one's; ends so parted are joined again. */
const HAIR = 1e-10;

/** The strip from s0 to s1 cut where stretches meet. */
function parts(
  stretches: readonly Stretch[],
  whole: number,
  repeat: number,
  s0: number,
  s1: number,
): { from: number; to: number; straight: boolean }[] {
  const out: { from: number; to: number; straight: boolean }[] = [];
  for (let round = Math.floor(s0 / whole); round * whole < s1; round++)
    stretches.forEach((stretch, i) => {
      const end = stretches[i + 1]?.before ?? whole / repeat;
      const from = Math.max(s0, round * whole + stretch.before * repeat);
      const to = Math.min(s1, round * whole + end * repeat);
      if (to - from > 4 * HAIR) out.push({ from, to, straight: i % 3 === 1 });
    });
  return out;
}

/** Half a bend, a side, half a bend, for every side. */
function lay(sides: readonly FrameSide[], corner: Bend, counts: readonly [number, number]): Stretch[] {
  const half = corner.length / 2;
  const straight = (i: number): number => sides[i % sides.length]!.length - 2 * corner.setback;
  const rates = ratesOf(straight(0), straight(1), half, counts);
  const mean = (rates[0] + rates[1]) / 2;
  const out: Stretch[] = [];
  let from = 0;
  let before = 0;
  const push = (length: number, rate0: number, rate1: number, spot: Stretch['spot']): void => {
    out.push({ from, length, before, rate0, rate1, spot });
    from += length;
    before += ((rate0 + rate1) / 2) * length;
  };
  sides.forEach((side, i) => {
    const rate = rates[i % 2]!;
    const c = cos(side.heading);
    const n = sin(side.heading);
    const ahead = (d: number): Vector => [side.start[0] + d * c, side.start[1] + d * n];
    const first = side.heading - corner.turn;
    const bent = (origin: Vector, heading: number, offset: number): Stretch['spot'] => {
      const [hc, hn] = [cos(heading), sin(heading)];
      return (along) => {
        const b = corner.at(offset + along);
        const [x, y] = b.place;
        const at: Vector = [origin[0] + x * hc - y * hn, origin[1] + x * hn + y * hc];
        return { at, heading: heading + b.heading, curvature: b.curvature };
      };
    };
    const entry: Vector = [
      side.start[0] - corner.setback * cos(first),
      side.start[1] - corner.setback * sin(first),
    ];
    push(half, mean, rate, bent(entry, first, half));
    push(straight(i), rate, rate, (along) => ({
      at: ahead(corner.setback + along),
      heading: side.heading,
      curvature: 0,
    }));
    push(half, rate, mean, bent(ahead(side.length - corner.setback), side.heading, 0));
  });
  // Whole numbers by construction; rounding must not show where one side's repeats end.
  return out.map((s, i) => (i % 3 === 0 ? { ...s, before: Math.round(s.before) } : s));
}

/** Repeats per mm along the straight parts such that each side, with half a bend at either end, holds its count. */
function ratesOf(
  a: number,
  b: number,
  half: number,
  counts: readonly [number, number],
): readonly [number, number] {
  // rate0 (a + 3/2 half) + rate1 half / 2 = counts[0], and the same the other way about.
  const [p, q, r] = [a + 1.5 * half, b + 1.5 * half, half / 2];
  const det = p * q - r * r;
  return [(counts[0] * q - counts[1] * r) / det, (counts[1] * p - counts[0] * r) / det];
}
