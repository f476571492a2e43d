import type { Vector } from '../../geometry/bezier.js';
import { contains, distanceToBoundary, type Region } from '../../geometry/region.js';
import { along, halfWidth, type Limb } from './limb.js';

/** A disc of a limb. */
interface Disc {
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly of: Limb;
}

/** Discs that stand for a limb: one about every 2 mm, and no fewer than these. */
const STEP = 2;
const FEWEST = 8;

/** The limbs placed so far, and the question whether one more has room among them. */
export class Room {
  readonly #field: Region;
  readonly #gap: number;
  readonly #cells = new Map<string, Disc[]>();
  #widest = 0;

  /** @param gap least distance between limbs that do not grow from each other, mm */
  constructor(field: Region, gap: number) {
    this.#field = field;
    this.#gap = gap;
  }

  /**
   * Whether the limb lies in the field and keeps the gap from every other: but not from the one that it grows from,
   * and from others that grow from that one only where it is further than `joint` mm from its start.
   */
  has(limb: Limb, joint: number): boolean {
    return discs(limb).every((d) => {
      if (!contains(this.#field, d.x, d.y) || distanceToBoundary(this.#field, d.x, d.y) < d.r) return false;
      const joined = distance([limb.x, limb.y], [d.x, d.y]) <= joint;
      return !this.#crowded(d, (other) => other === limb.parent || (joined && other.parent === limb.parent));
    });
  }

  place(limb: Limb): void {
    for (const d of discs(limb)) {
      const key = cellKey(Math.floor(d.x / CELL), Math.floor(d.y / CELL));
      const there = this.#cells.get(key);
      if (there) there.push(d);
      else this.#cells.set(key, [d]);
      this.#widest = Math.max(this.#widest, d.r);
    }
  }

  #crowded({ x, y, r }: Disc, excused: (other: Limb) => boolean): boolean {
    const reach = r + this.#gap + this.#widest;
    for (let i = Math.floor((x - reach) / CELL); i <= Math.floor((x + reach) / CELL); i++)
      for (let j = Math.floor((y - reach) / CELL); j <= Math.floor((y + reach) / CELL); j++)
        for (const d of this.#cells.get(cellKey(i, j)) ?? [])
          if (distance([x, y], [d.x, d.y]) < r + d.r + this.#gap && !excused(d.of)) return true;
    return false;
  }
}

/** Do two limbs keep the gap, but for `joint` mm round their start where they have that in common? */
export function apart(a: Limb, b: Limb, gap: number, joint: number): boolean {
  const others = discs(b);
  const near = startTogether(a, b) ? joint : 0;
  return discs(a).every(
    (d) =>
      distance([a.x, a.y], [d.x, d.y]) <= near ||
      others.every((o) => distance([d.x, d.y], [o.x, o.y]) >= d.r + o.r + gap),
  );
}

function startTogether(a: Limb, b: Limb): boolean {
  return Math.abs(a.x - b.x) + Math.abs(a.y - b.y) < 1e-6;
}

/** Side of the squares in which discs are looked up, mm. */
const CELL = 10;

function cellKey(i: number, j: number): string {
  return `${i},${j}`;
}

function discs(limb: Limb): Disc[] {
  const n = Math.max(FEWEST, Math.ceil(limb.length / STEP));
  return Array.from({ length: n + 1 }, (_, k) => {
    const [x, y] = along(limb, k / n);
    return { x, y, r: halfWidth(limb, k / n), of: limb };
  });
}

function distance(p: Vector, q: Vector): number {
  return Math.sqrt((q[0] - p[0]) * (q[0] - p[0]) + (q[1] - p[1]) * (q[1] - p[1]));
}
