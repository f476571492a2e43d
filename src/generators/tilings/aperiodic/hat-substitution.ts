import type { Point } from '../tile.js';

/**
 * The substitution of the hat by four kinds of cluster, H, T, P and F (Smith, Myers, Kaplan and Goodman-Strauss, "An
 * aperiodic monotile", 2023). Everything lies on one lattice: [x, y] stands for the point (x + y / 2, y sqrt 3 / 2),
 * in lengths of the hat's shorter sides, so all of it is exact in whole numbers. A turn is a number of sixths of a
 * full turn, counter-clockwise. A cluster's frame is that of a hat in it.
 */
export type Lattice = readonly [number, number];
export type Cluster = 'H' | 'T' | 'P' | 'F';

/** A hat where it lies: mirrored about the x axis first, if so, then turned, then moved. */
export interface PlacedHat {
  readonly mirrored: boolean;
  readonly turn: number;
  readonly at: Lattice;
}

/** The thirteen corners, counter-clockwise. */
const OUTLINE: readonly Lattice[] = [
  [0, 0],
  [-1, -1],
  [0, -2],
  [2, -2],
  [2, -1],
  [4, -2],
  [5, -1],
  [4, 0],
  [3, 0],
  [2, 2],
  [0, 3],
  [0, 2],
  [-1, 2],
];

function hat(turn: number, x: number, y: number, mirrored = false): PlacedHat {
  return { mirrored, turn, at: [x, y] };
}

/** The hats of a smallest cluster. */
const HATS: Readonly<Record<Cluster, readonly PlacedHat[]>> = {
  H: [hat(0, 0, 0), hat(0, -6, 6), hat(4, -4, 2), hat(4, -2, 4, true)],
  T: [hat(0, 0, 0)],
  P: [hat(0, 0, 0), hat(5, -4, 2)],
  F: [hat(0, 0, 0), hat(5, -4, 2)],
};

/** A cluster within the next larger one, and where it lies at the first three sizes of the larger one. */
interface Child {
  readonly kind: Cluster;
  readonly turn: number;
  readonly at: readonly [Lattice, Lattice, Lattice];
}

function child(kind: Cluster, turn: number, ...at: [Lattice, Lattice, Lattice]): Child {
  return { kind, turn, at };
}

const CHILDREN: Readonly<Record<Cluster, readonly Child[]>> = {
  H: [
    child('H', 0, [0, 0], [0, 0], [0, 0]),
    child('H', 0, [-8, 10], [-18, 24], [-46, 62]),
    child('H', 4, [-14, 4], [-38, 10], [-100, 26]),
    child('T', 5, [-10, 8], [-22, 14], [-56, 34]),
    child('P', 0, [-8, -2], [-30, -6], [-90, -6]),
    child('F', 0, [2, -4], [-6, -12], [-28, -22]),
    child('P', 2, [0, 6], [8, 8], [22, 10]),
    child('F', 2, [-8, 16], [-10, 32], [-24, 72]),
    child('P', 1, [-16, 14], [-40, 26], [-114, 66]),
    child('F', 4, [-18, 6], [-50, 28], [-122, 76]),
  ],
  T: [child('H', 0, [0, 0], [0, 0], [0, 0])],
  P: [
    child('F', 5, [0, 0], [0, 0], [0, 0]),
    child('H', 5, [2, 2], [18, -6], [50, -28]),
    child('P', 1, [8, 2], [34, -14], [82, -50]),
    child('H', 0, [16, -2], [56, -16], [150, -54]),
    child('F', 2, [16, 4], [64, -8], [172, -44]),
  ],
  F: [
    child('F', 5, [0, 0], [0, 0], [0, 0]),
    child('H', 5, [2, 2], [18, -6], [50, -28]),
    child('P', 1, [8, 2], [34, -14], [82, -50]),
    child('H', 0, [16, -2], [56, -16], [150, -54]),
    child('F', 0, [18, -6], [50, -28], [122, -76]),
    child('F', 2, [16, 4], [64, -8], [172, -44]),
  ],
};

/** Where the middle of an H is: in its T, whose only cluster is an H, and so on. */
const MIDDLE = 3;

/** One cluster kind at one size: its parts, and how far from the frame its hats reach. */
interface Size {
  readonly parts: readonly { readonly kind: Cluster; readonly turn: number; readonly at: Lattice }[];
  readonly reach: number;
}

/** The clusters of every size up to `level`; level 0 holds hats. */
export class HatClusters {
  readonly #sizes: Readonly<Record<Cluster, Size>>[] = [];
  readonly #level: number;

  constructor(level: number) {
    this.#level = level;
    const displacements = sequences(level);
    for (let n = 1; n <= level; n++) {
      const size = (kind: Cluster): Size => {
        const parts = CHILDREN[kind].map((c, i) => ({
          kind: c.kind,
          turn: c.turn,
          at: displacements[kind][i]![n - 1]!,
        }));
        const reach = Math.max(...parts.map((p) => length(p.at) + this.#reach(p.kind, n - 1)));
        return { parts, reach };
      };
      this.#sizes.push({ H: size('H'), T: size('T'), P: size('P'), F: size('F') });
    }
  }

  /** Every hat of an H of the full size, in its frame, that comes within `radius` of a place (cartesian). */
  hats([x, y]: Point, radius: number): PlacedHat[] {
    const out: PlacedHat[] = [];
    const near = (at: Lattice, reach: number): boolean => {
      const p = cartesian(at);
      const d = radius + reach;
      return (p[0] - x) * (p[0] - x) + (p[1] - y) * (p[1] - y) <= d * d;
    };
    const visit = (kind: Cluster, level: number, turn: number, at: Lattice): void => {
      if (!near(at, this.#reach(kind, level))) return;
      if (level === 0) {
        for (const h of HATS[kind])
          out.push({ ...h, turn: (turn + h.turn) % 6, at: sum(at, turned(h.at, turn)) });
        return;
      }
      for (const p of this.#sizes[level - 1]![kind].parts)
        visit(p.kind, level - 1, (turn + p.turn) % 6, sum(at, turned(p.at, turn)));
    };
    visit('H', this.#level, 0, [0, 0]);
    return out;
  }

  /** The middle of the H of the full size, cartesian. */
  middle(): Point {
    let at: Lattice = [0, 0];
    let turn = 0;
    for (let level = this.#level; level > 0; level -= 2) {
      const inner = this.#sizes[level - 1]!.H.parts[MIDDLE]!;
      at = sum(at, turned(inner.at, turn));
      turn = (turn + inner.turn) % 6;
    }
    return cartesian(at);
  }

  #reach(kind: Cluster, level: number): number {
    // No hat of a smallest cluster has a corner farther than 14 from its frame.
    return level === 0 ? 14 : this.#sizes[level - 1]![kind].reach;
  }
}

/** Corners of a hat, cartesian, counter-clockwise. */
export function hatCorners({ mirrored, turn, at }: PlacedHat): Point[] {
  const corners = OUTLINE.map(([x, y]) => {
    const own: Lattice = mirrored ? [x + y, -y] : [x, y];
    return cartesian(sum(at, turned(own, turn)));
  });
  return mirrored ? corners.reverse() : corners;
}

/**
 * Where every part lies at each size from 1 to `level`. A displacement is the sum of one part that grows by the square
 * of the golden ratio, one that shrinks by it and one that turns by a sixth clockwise, so each follows from the three
 * before by the polynomial (z^2 - 3z + 1)(z - w), w being that turn.
 */
function sequences(level: number): Record<Cluster, Lattice[][]> {
  const follow = (c: Child): Lattice[] => {
    const v: Lattice[] = [...c.at];
    while (v.length < level) {
      const [p, q, r] = v.slice(-3) as [Lattice, Lattice, Lattice];
      const w = turned([r[0] - 3 * q[0] + p[0], r[1] - 3 * q[1] + p[1]], 5);
      v.push([3 * r[0] - q[0] + w[0], 3 * r[1] - q[1] + w[1]]);
    }
    return v;
  };
  const of = (kind: Cluster): Lattice[][] => CHILDREN[kind].map(follow);
  return { H: of('H'), T: of('T'), P: of('P'), F: of('F') };
}

function turned([x, y]: Lattice, sixths: number): Lattice {
  let p: Lattice = [x, y];
  for (let i = 0; i < sixths; i++) p = [-p[1], p[0] + p[1]];
  return p;
}

function sum(p: Lattice, q: Lattice): Lattice {
  return [p[0] + q[0], p[1] + q[1]];
}

const HALF_ROOT3 = Math.sqrt(3) / 2;

function cartesian([x, y]: Lattice): Point {
  return [x + y / 2, y * HALF_ROOT3];
}

function length(at: Lattice): number {
  const [x, y] = cartesian(at);
  return Math.sqrt(x * x + y * y);
}
