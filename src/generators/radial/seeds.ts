import { cos, sin } from '../../geometry/trig.js';
import { Refusal } from '../../schema/fault.js';

/** The golden angle, 360 / phi^2 = 137.508 degrees, radians. */
export const GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

/** Where seeds may lie, mm: from radius `eye` to `outer`, `gap` apart, half as long as `size0` at the middle. */
export interface SeedRoom {
  readonly eye: number;
  readonly outer: number;
  readonly gap: number;
  readonly size0: number;
  /** Half the length at the outer edge. */
  readonly size1: number;
}

/** A seed about a point in polar coordinates; `size` is the radius of the circle that it fills. */
export interface Seed {
  readonly radius: number;
  /** Not reduced to one turn: seed k lies at k golden angles. */
  readonly angle: number;
  readonly size: number;
}

/** The most seeds a pattern may have. */
const MOST = 2000;

/**
 * Seeds whose area grows with their place's: each step outwards adds room for one seed of its size and its walls.
 * The spacing is the least at which no two come nearer than the gap, found by bisection.
 */
export function placedSeeds(room: SeedRoom): Seed[] {
  const pitch = 2 * Math.min(room.size0, room.size1) + room.gap;
  // A seed takes no less than the area of a circle as wide as its pitch.
  const count = (room.outer * room.outer) / ((pitch * pitch) / 4);
  if (count > MOST)
    throw new Refusal(
      'too-large',
      `pattern.inner: some ${Math.round(count)} seeds are more than ${MOST}; make seeds and gap ${Math.ceil(Math.sqrt(count / MOST) * 100) / 100} times as large`,
    );
  let lo = LEAST;
  let hi = 2 * LEAST;
  while (!apart(laid(room, hi), room.gap)) hi *= 1.5;
  for (let k = 0; k < 40; k++) {
    const spacing = (lo + hi) / 2;
    if (apart(laid(room, spacing), room.gap)) hi = spacing;
    else lo = spacing;
  }
  return laid(room, hi).filter((s) => s.radius - s.size >= room.eye - 1e-9);
}

/** Added to the radius squared at each seed, in pitches squared: less than any arrangement can do with. */
const LEAST = 0.25;

/**
 * Where the first seed stands, in shares of area from the middle: far enough that the first few are no nearer to each
 * other than the rest (with 1/2 the first and fourth would hold all others apart).
 */
const FIRST = 1.2;

function laid({ outer, gap, size0, size1 }: SeedRoom, spacing: number): Seed[] {
  const out: Seed[] = [];
  let square = 0;
  for (let k = 0; k < 2 * MOST; k++) {
    const at = Math.sqrt(square);
    const sizeAt = (r: number): number => size0 + ((size1 - size0) * r) / outer;
    const pitch = 2 * sizeAt(at) + gap;
    const radius = Math.sqrt(square + FIRST * spacing * pitch * pitch);
    const size = sizeAt(radius);
    if (radius + size > outer) break;
    out.push({ radius, angle: k * GOLDEN_ANGLE, size });
    square += spacing * pitch * pitch;
  }
  return out;
}

/** Neighbours in such a spiral are a Fibonacci number of seeds apart; further ones never come nearer. */
const FIBONACCI = [1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144, 233];

function apart(seeds: readonly Seed[], gap: number): boolean {
  const points = seeds.map((s) => [s.radius * cos(s.angle), s.radius * sin(s.angle)] as const);
  return FIBONACCI.every((step) =>
    seeds.every((a, i) => {
      const b = seeds[i + step];
      if (!b) return true;
      const [p, q] = [points[i]!, points[i + step]!];
      const least = a.size + b.size + gap;
      return (p[0] - q[0]) * (p[0] - q[0]) + (p[1] - q[1]) * (p[1] - q[1]) >= least * least;
    }),
  );
}
