import type { Artwork } from '../../../src/geometry/artwork.js';
import { flatten } from '../../../src/geometry/region.js';

/**
 * A drawn pattern seen as polygons, and the rigid motions under which it looks the same. Knows nothing of groups,
 * cells or how the pattern was made. Millimetres, radians.
 */
export type Point = readonly [number, number];

export interface Shape {
  readonly rings: readonly (readonly Point[])[];
  readonly centre: Point;
  /** Direction from the centre to the farthest point: tells how a motif without symmetry is turned. */
  readonly heading: number;
}

/** p -> (c x - s y + dx, s x + c y + dy), or with y -> -y first when it flips. */
export interface Motion {
  readonly flips: boolean;
  readonly angle: number;
  readonly dx: number;
  readonly dy: number;
}

export function moved(m: Motion, [x, y]: Point): Point {
  const c = Math.cos(m.angle);
  const s = Math.sin(m.angle);
  const v = m.flips ? -y : y;
  return [c * x - s * v + m.dx, s * x + c * v + m.dy];
}

/** Chord error of the polygons, and how near to an edge a place is left out of comparisons, mm. */
const CHORD = 0.01;
const NEAR = 0.02;

export function shapesOf(artwork: Artwork): Shape[] {
  return artwork.pieces.map(({ region }) => shape(region.contours.map((c) => flatten(c, CHORD))));
}

export function shape(rings: readonly (readonly Point[])[]): Shape {
  let area = 0;
  let mx = 0;
  let my = 0;
  for (const ring of rings)
    ring.forEach(([x, y], i) => {
      const [u, v] = ring[(i + 1) % ring.length];
      const cross = x * v - u * y;
      area += cross / 2;
      mx += ((x + u) * cross) / 6;
      my += ((y + v) * cross) / 6;
    });
  const centre: Point = [mx / area, my / area];
  const reach = ([x, y]: Point): number => Math.hypot(x - centre[0], y - centre[1]);
  const far = rings.flat().reduce((a, b) => (reach(b) > reach(a) ? b : a));
  return { rings, centre, heading: Math.atan2(far[1] - centre[1], far[0] - centre[0]) };
}

/** Tells whether a place is inside: true, false, or null within NEAR of an edge. */
function seer(shapes: readonly Shape[]): (p: Point) => boolean | null {
  const TILE = 4;
  const key = (i: number, j: number): number => i * 100_003 + j;
  const tiles = new Map<number, [Point, Point][]>();
  for (const { rings } of shapes) {
    const all = rings.flat();
    const box = (k: 0 | 1, of: (...v: number[]) => number): number => of(...all.map((p) => p[k]));
    const sides = rings.flatMap((r) => r.map((p, i): [Point, Point] => [p, r[(i + 1) % r.length]]));
    const at = (v: number): number => Math.floor(v / TILE);
    for (let i = at(box(0, Math.min) - NEAR); i <= at(box(0, Math.max) + NEAR); i++)
      for (let j = at(box(1, Math.min) - NEAR); j <= at(box(1, Math.max) + NEAR); j++) {
        const tile = tiles.get(key(i, j));
        if (tile) tile.push(...sides);
        else tiles.set(key(i, j), [...sides]);
      }
  }
  return ([x, y]) => {
    let inside = false;
    for (const [[ax, ay], [bx, by]] of tiles.get(key(Math.floor(x / TILE), Math.floor(y / TILE))) ?? []) {
      const t = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2);
      const k = Math.min(1, Math.max(0, t));
      if (Math.hypot(ax + k * (bx - ax) - x, ay + k * (by - ay) - y) < NEAR) return null;
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    }
    return inside;
  };
}

export interface Search {
  /** The shape from which every motion is looked for is the one nearest to here. */
  readonly about: Point;
  /** Motions that take it no further than this are looked for. */
  readonly reach: number;
  /** Places compared: random ones in the box about `about` of these half sides. */
  readonly half: Point;
}

/**
 * Every rigid motion within reach that leaves the pattern as it is. A motion of the pattern takes the first shape to
 * some shape, and, since shapes are without symmetry, there are two motions that can: each is tried by comparing the
 * pattern with its image at 300 random places.
 */
export function motionsOf(shapes: readonly Shape[], { about, reach, half }: Search): Motion[] {
  const from = (p: Point, q: Point): number => Math.hypot(p[0] - q[0], p[1] - q[1]);
  const first = shapes.reduce((a, b) => (from(b.centre, about) < from(a.centre, about) ? b : a));
  const inside = seer(shapes);
  let state = 12345;
  const next = (): number => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return 2 * (state / 2147483648) - 1;
  };
  const places = Array.from(
    { length: 300 },
    (): Point => [about[0] + half[0] * next(), about[1] + half[1] * next()],
  ).map((p) => ({ p, is: inside(p) }));
  const filled = places.filter((s) => s.is).length;
  if (filled < 30 || filled > 270) throw new Error('the places compared say nothing of the pattern');
  const out: Motion[] = [];
  for (const to of shapes) {
    if (from(to.centre, first.centre) > reach) continue;
    for (const flips of [false, true]) {
      const angle = flips ? to.heading + first.heading : to.heading - first.heading;
      const [x, y] = moved({ flips, angle, dx: 0, dy: 0 }, first.centre);
      const m: Motion = { flips, angle, dx: to.centre[0] - x, dy: to.centre[1] - y };
      const same = places.every(({ p, is }) => {
        if (is === null) return true;
        const there = inside(moved(m, p));
        return there === null || there === is;
      });
      if (same) out.push(m);
    }
  }
  return out;
}
