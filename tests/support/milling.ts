/**
 * Milling by brute force, on a raster seen from above: which cells of wood stand, and what a cutter takes of them step by
 * step. For tests only, and it shares no code with the product: its own raster, its own distances, its own paths.
 */
import type { Ring, Rings } from './reference.js';

/** What is cut away, with the wood to be kept round it (or in it). */
export interface Job {
  /** Walls, the waste on their left; flattened, no side longer than a mm or so. */
  readonly walls: Rings;
  /** Wood that is looked at: x0, y0, x1, y1, mm. Beyond it there is none. */
  readonly window: readonly [number, number, number, number];
  /** Side of a cell, mm. */
  readonly cell: number;
}

export interface Roughing {
  readonly radius: number;
  readonly allowance: number;
}

/** A place of the finishing cutter's path. */
export interface Bite {
  readonly at: readonly [number, number];
  /** Wood newly taken on the way here, by length of path: radial engagement, mm. */
  readonly width: number;
}

const FAR = 1e9;

/** One job's raster: distance of every cell to the walls, whether it is waste, whether wood stands. */
export class Milling {
  readonly nx: number;
  readonly ny: number;
  readonly #job: Job;
  readonly #waste: Uint8Array;
  readonly #distance: Float64Array;
  /** For every cell the nearest wall: how far along all walls together, mm. */
  readonly #foot: Float64Array;
  #wood: Uint8Array;

  constructor(job: Job, far: number) {
    const [x0, y0, x1, y1] = job.window;
    this.#job = job;
    this.nx = Math.ceil((x1 - x0) / job.cell);
    this.ny = Math.ceil((y1 - y0) / job.cell);
    const n = this.nx * this.ny;
    this.#waste = new Uint8Array(n);
    this.#distance = new Float64Array(n).fill(FAR);
    this.#foot = new Float64Array(n);
    this.#fill();
    this.#measure(far);
    this.#wood = this.#waste.slice();
  }

  #x(i: number): number {
    return this.#job.window[0] + (i + 0.5) * this.#job.cell;
  }

  #y(j: number): number {
    return this.#job.window[1] + (j + 0.5) * this.#job.cell;
  }

  /** Waste by winding: the walls' turns round each cell's middle, 1 where the waste is inside them, 0 where it is outside. */
  #fill(): void {
    const { walls } = this.#job;
    const outside = signed(walls) < 0 ? 1 : 0;
    for (let j = 0; j < this.ny; j++) {
      const y = this.#y(j);
      const hits: [number, number][] = [];
      for (const ring of walls)
        sides(ring, (ax, ay, bx, by) => {
          if (ay > y === by > y) return;
          hits.push([ax + ((y - ay) * (bx - ax)) / (by - ay), by > ay ? 1 : -1]);
        });
      hits.sort((p, q) => p[0] - q[0]);
      // Going right past a wall that runs down (waste on its left, which is the right of the page) one gets into the waste.
      let turns = outside;
      let k = 0;
      for (let i = 0; i < this.nx; i++) {
        const x = this.#x(i);
        while (k < hits.length && hits[k]![0] <= x) turns -= hits[k++]![1];
        this.#waste[j * this.nx + i] = turns > 0 ? 1 : 0;
      }
    }
  }

  /** Distances up to `far`, from every side of the walls to every cell about it. */
  #measure(far: number): void {
    const { cell, walls, window } = this.#job;
    let along = 0;
    for (const ring of walls)
      sides(ring, (ax, ay, bx, by) => {
        const l = Math.hypot(bx - ax, by - ay);
        const i0 = Math.max(0, Math.floor((Math.min(ax, bx) - far - window[0]) / cell));
        const i1 = Math.min(this.nx - 1, Math.ceil((Math.max(ax, bx) + far - window[0]) / cell));
        const j0 = Math.max(0, Math.floor((Math.min(ay, by) - far - window[1]) / cell));
        const j1 = Math.min(this.ny - 1, Math.ceil((Math.max(ay, by) + far - window[1]) / cell));
        for (let j = j0; j <= j1; j++)
          for (let i = i0; i <= i1; i++) {
            const px = this.#x(i) - ax;
            const py = this.#y(j) - ay;
            const t = l === 0 ? 0 : Math.max(0, Math.min(1, (px * (bx - ax) + py * (by - ay)) / (l * l)));
            const dx = px - t * (bx - ax);
            const dy = py - t * (by - ay);
            const d2 = dx * dx + dy * dy;
            const k = j * this.nx + i;
            if (d2 < this.#distance[k]!) {
              this.#distance[k] = d2;
              this.#foot[k] = along + t * l;
            }
          }
        along += l;
      });
    for (let k = 0; k < this.#distance.length; k++) this.#distance[k] = Math.sqrt(this.#distance[k]!);
  }

  /** Fresh wood, and every disc swept that keeps radius + allowance off the walls with its middle. */
  rough({ radius, allowance }: Roughing, slack = 0): void {
    this.#wood = this.#waste.slice();
    const { nx, ny } = this;
    const off = radius + allowance - slack;
    const legal = (k: number): boolean => this.#waste[k] === 1 && this.#distance[k]! >= off;
    // Cells whose four neighbours are legal too only sweep what those, or they themselves, sweep: the rims do the work.
    const swept = discOf(radius + slack, this.#job.cell);
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++) {
        const k = j * nx + i;
        if (!legal(k)) continue;
        this.#wood[k] = 0;
        const rim =
          i === 0 ||
          j === 0 ||
          i === nx - 1 ||
          j === ny - 1 ||
          !(legal(k - 1) && legal(k + 1) && legal(k - nx) && legal(k + nx));
        if (rim) this.#sweep(i, j, swept);
      }
  }

  #sweep(i: number, j: number, disc: readonly (readonly [number, number])[]): void {
    for (const [dj, half] of disc) {
      const row = j + dj;
      if (row < 0 || row >= this.ny) continue;
      const from = Math.max(0, i - half);
      const to = Math.min(this.nx - 1, i + half);
      if (to >= from) this.#wood.fill(0, row * this.nx + from, row * this.nx + to + 1);
    }
  }

  /** Area of wood that stands further from the walls than `over`, mm2. */
  standing(over: number): number {
    let n = 0;
    for (let k = 0; k < this.#wood.length; k++) if (this.#wood[k] && this.#distance[k]! > over) n++;
    return n * this.#job.cell * this.#job.cell;
  }

  /**
   * The finishing cutter goes along every wall, touching it, in steps, and takes what it meets. `met` hears of every cell
   * taken: how far off the walls it lay, and where along all walls together its nearest wall is, mm.
   */
  finish(radius: number, step: number, met: (distance: number, along: number) => void): Bite[] {
    const bites: Bite[] = [];
    const { cell, walls } = this.#job;
    for (const ring of walls) {
      let last: readonly [number, number] | null = null;
      for (const at of pathBeside(ring, radius, step)) {
        const taken = this.#take(at[0], at[1], radius, met);
        const moved: number = last ? Math.hypot(at[0] - last[0], at[1] - last[1]) : 0;
        if (moved > 0) bites.push({ at, width: (taken * cell * cell) / moved });
        last = at;
      }
    }
    return bites;
  }

  #take(x: number, y: number, radius: number, met: (distance: number, along: number) => void): number {
    const { cell, window } = this.#job;
    let taken = 0;
    const j0 = Math.max(0, Math.ceil((y - radius - window[1]) / cell - 0.5));
    const j1 = Math.min(this.ny - 1, Math.floor((y + radius - window[1]) / cell - 0.5));
    for (let j = j0; j <= j1; j++) {
      const dy = this.#y(j) - y;
      const half = Math.sqrt(Math.max(0, radius * radius - dy * dy));
      const i0 = Math.max(0, Math.ceil((x - half - window[0]) / cell - 0.5));
      const i1 = Math.min(this.nx - 1, Math.floor((x + half - window[0]) / cell - 0.5));
      for (let i = i0, k = j * this.nx + i0; i <= i1; i++, k++) {
        if (!this.#wood[k]) continue;
        this.#wood[k] = 0;
        taken++;
        met(this.#distance[k]!, this.#foot[k]!);
      }
    }
    return taken;
  }
}

/** Rows of a disc about a cell: how many rows up, how many cells to each side. */
function discOf(radius: number, cell: number): [number, number][] {
  const rows = Math.floor(radius / cell);
  return Array.from({ length: 2 * rows + 1 }, (_, n) => {
    const dj = n - rows;
    return [dj, Math.floor(Math.sqrt(radius * radius - dj * dj * cell * cell) / cell)];
  });
}

/** Middles of a cutter that touches a wall on its left, a step apart or less. */
function pathBeside(ring: Ring, radius: number, step: number): [number, number][] {
  const out: [number, number][] = [];
  sides(ring, (ax, ay, bx, by) => {
    const l = Math.hypot(bx - ax, by - ay);
    if (l === 0) return;
    const n = Math.max(1, Math.ceil(l / step));
    for (let k = 0; k <= n; k++) {
      const t = k / n;
      out.push([
        ax + (bx - ax) * t - ((by - ay) / l) * radius,
        ay + (by - ay) * t + ((bx - ax) / l) * radius,
      ]);
    }
  });
  out.push(out[0]!);
  return out;
}

function sides(ring: Ring, each: (ax: number, ay: number, bx: number, by: number) => void): void {
  ring.forEach(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    each(ax, ay, bx, by);
  });
}

function signed(rings: Rings): number {
  let sum = 0;
  for (const ring of rings)
    sides(ring, (ax, ay, bx, by) => {
      sum += ax * by - bx * ay;
    });
  return sum;
}

/** Rings with no side longer than `most`, mm: points put between. */
export function divided(rings: Rings, most: number): Ring[] {
  return rings.map((ring) => {
    const out: Ring = [];
    sides(ring, (ax, ay, bx, by) => {
      const n = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / most));
      for (let k = 0; k < n; k++) out.push([ax + ((bx - ax) * k) / n, ay + ((by - ay) * k) / n]);
    });
    return out;
  });
}

/** The point so far along all rings together, mm. */
export function pointAlong(rings: Rings, along: number): [number, number] {
  let left = along;
  let found: [number, number] = rings[0]![0]!;
  for (const ring of rings)
    for (let i = 0; i < ring.length; i++) {
      const [ax, ay] = ring[i]!;
      const [bx, by] = ring[(i + 1) % ring.length]!;
      const l = Math.hypot(bx - ax, by - ay);
      if (left <= l) return l === 0 ? [ax, ay] : [ax + ((bx - ax) * left) / l, ay + ((by - ay) * left) / l];
      left -= l;
      found = [bx, by];
    }
  return found;
}
