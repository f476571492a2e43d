import type { Chords } from './field-flatten.js';

/** Chords are looked up in runs of this many that follow each other along one edge. */
const RUN = 8;

/** Cells a run, at most, and a few for a drawing of few runs. */
const CELLS = 4;
const FEW = 4096;

/** The distance to the nearest chord from any point, looked up in a grid of square cells. */
export class Field {
  /** The nearest point of the last look. */
  qx = 0;
  qy = 0;
  readonly #size: number;
  readonly #left: number;
  readonly #low: number;
  readonly #columns: number;
  readonly #rows: number;
  /** Run j holds the chords #first[j] up to, not including, #end[j], within the box of four numbers at 4 j. */
  readonly #first: Int32Array;
  readonly #end: Int32Array;
  readonly #boxes: Float64Array;
  /** The runs of cell k are #runs[#from[k]] up to #from[k + 1]. */
  readonly #from: Int32Array;
  readonly #runs: Int32Array;
  /** The last look that met a run: it may stand in many cells. */
  readonly #seen: Int32Array;
  #looks = 0;

  /** `look`: how far from a point is usually asked for, mm. */
  constructor(
    readonly chords: Chords,
    look: number,
  ) {
    const { first } = chords;
    let count = 0;
    for (let i = 0; i + 1 < first.length; i++) count += Math.ceil((first[i + 1]! - first[i]! - 1) / RUN);
    this.#first = new Int32Array(count);
    this.#end = new Int32Array(count);
    this.#boxes = new Float64Array(4 * count);
    this.#seen = new Int32Array(count);
    const [x0, y0, x1, y1] = this.#fill();
    const [w, h] = [x1 - x0, y1 - y0];
    const most = CELLS * count + FEW;
    // No more cells than `most`, in long thin sheets too.
    this.#size = Math.max(look / 2, Math.sqrt((w * h) / most), Math.max(w, h) / most, 1e-6);
    this.#left = x0;
    this.#low = y0;
    this.#columns = Math.floor(w / this.#size) + 1;
    this.#rows = Math.floor(h / this.#size) + 1;
    // Counted first, then listed.
    this.#from = new Int32Array(this.#columns * this.#rows + 1);
    this.#runs = new Int32Array(0);
    for (let j = 0; j < count; j++) this.#enter(j, false);
    for (let k = 0; k + 1 < this.#from.length; k++) this.#from[k + 1]! += this.#from[k]!;
    this.#runs = new Int32Array(this.#from[this.#from.length - 1]!);
    for (let j = 0; j < count; j++) this.#enter(j, true);
    this.#from.copyWithin(1, 0);
    this.#from[0] = 0;
  }

  /** Cuts the chords into runs; returns the box of them all. */
  #fill(): [number, number, number, number] {
    const { x, y, first } = this.chords;
    const all: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
    let j = 0;
    for (let i = 0; i + 1 < first.length; i++) {
      const last = first[i + 1]! - 1;
      for (let k = first[i]!; k < last; k += RUN) {
        const end = Math.min(k + RUN, last);
        let [x0, y0, x1, y1] = [x[k]!, y[k]!, x[k]!, y[k]!];
        for (let v = k + 1; v <= end; v++) {
          if (x[v]! < x0) x0 = x[v]!;
          if (x[v]! > x1) x1 = x[v]!;
          if (y[v]! < y0) y0 = y[v]!;
          if (y[v]! > y1) y1 = y[v]!;
        }
        this.#first[j] = k;
        this.#end[j] = end;
        this.#boxes.set([x0, y0, x1, y1], 4 * j);
        if (x0 < all[0]) all[0] = x0;
        if (y0 < all[1]) all[1] = y0;
        if (x1 > all[2]) all[2] = x1;
        if (y1 > all[3]) all[3] = y1;
        j++;
      }
    }
    return all;
  }

  /** Counts run j, or lists it, in the cells it may pass through; a long chord piece by piece. */
  #enter(j: number, list: boolean): void {
    const [k, end, b] = [this.#first[j]!, this.#end[j]!, 4 * j];
    const box = this.#boxes;
    const w = box[b + 2]! - box[b]!;
    const h = box[b + 3]! - box[b + 1]!;
    if (end - k > 1 || Math.min(w, h) < this.#size) {
      this.#cells(j, box[b]!, box[b + 1]!, box[b + 2]!, box[b + 3]!, list);
      return;
    }
    const { x, y } = this.chords;
    const pieces = Math.floor(Math.max(w, h) / this.#size) + 1;
    const [dx, dy] = [(x[k + 1]! - x[k]!) / pieces, (y[k + 1]! - y[k]!) / pieces];
    for (let m = 0; m < pieces; m++) {
      const [ax, ay] = [x[k]! + dx * m, y[k]! + dy * m];
      const [bx, by] = [ax + dx, ay + dy];
      this.#cells(j, Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by), list);
    }
  }

  #cells(j: number, x0: number, y0: number, x1: number, y1: number, list: boolean): void {
    const [c0, c1, r1] = [this.#column(x0), this.#column(x1), this.#row(y1)];
    for (let r = this.#row(y0); r <= r1; r++) {
      for (let c = c0; c <= c1; c++) {
        const cell = r * this.#columns + c;
        if (list) this.#runs[this.#from[cell]!++] = j;
        else this.#from[cell + 1]!++;
      }
    }
  }

  #column(x: number): number {
    return Math.max(0, Math.min(this.#columns - 1, Math.floor((x - this.#left) / this.#size)));
  }

  #row(y: number): number {
    return Math.max(0, Math.min(this.#rows - 1, Math.floor((y - this.#low) / this.#size)));
  }

  /** Distance from (x, y) to the nearest chord, as far as it is under `range`, else `range`; chords `from` up to `to` are left out. */
  look(x: number, y: number, range: number, from: number, to: number): number {
    const box = this.#boxes;
    const look = ++this.#looks;
    let best = range * range;
    const c0 = this.#column(x - range);
    const c1 = this.#column(x + range);
    const r1 = this.#row(y + range);
    for (let r = this.#row(y - range); r <= r1; r++) {
      for (let cell = r * this.#columns + c0; cell <= r * this.#columns + c1; cell++) {
        for (let m = this.#from[cell]!; m < this.#from[cell + 1]!; m++) {
          const j = this.#runs[m]!;
          if (this.#seen[j] === look) continue;
          this.#seen[j] = look;
          const k = this.#first[j]!;
          if (k >= from && k < to) continue;
          const dx = Math.max(box[4 * j]! - x, x - box[4 * j + 2]!, 0);
          const dy = Math.max(box[4 * j + 1]! - y, y - box[4 * j + 3]!, 0);
          if (dx * dx + dy * dy < best) best = this.#nearest(x, y, k, this.#end[j]!, best);
        }
      }
    }
    return Math.sqrt(best);
  }

  /** The squared distance to the nearest of the chords k up to `end`, if it is under `best`, else `best`. */
  #nearest(x: number, y: number, k: number, end: number, before: number): number {
    const { x: vx, y: vy } = this.chords;
    let best = before;
    let ux = vx[k]!;
    let uy = vy[k]!;
    for (let v = k + 1; v <= end; v++) {
      const ax = x - ux;
      const ay = y - uy;
      const dx = vx[v]! - ux;
      const dy = vy[v]! - uy;
      const along = ax * dx + ay * dy;
      const length2 = dx * dx + dy * dy;
      const f = along <= 0 ? 0 : along >= length2 ? 1 : along / length2;
      const ex = ax - f * dx;
      const ey = ay - f * dy;
      const d2 = ex * ex + ey * ey;
      if (d2 < best) {
        best = d2;
        this.qx = x - ex;
        this.qy = y - ey;
      }
      ux += dx;
      uy += dy;
    }
    return best;
  }

  /** Is the point inside an odd number of contours, leaving out the chords `from` up to `to`? Looks along a row of cells. */
  odd(x: number, y: number, from: number, to: number): boolean {
    const { x: vx, y: vy } = this.chords;
    const look = ++this.#looks;
    const row = this.#row(y);
    let odd = false;
    for (let cell = row * this.#columns + this.#column(x); cell < (row + 1) * this.#columns; cell++) {
      for (let m = this.#from[cell]!; m < this.#from[cell + 1]!; m++) {
        const j = this.#runs[m]!;
        if (this.#seen[j] === look) continue;
        this.#seen[j] = look;
        for (let k = this.#first[j]!; k < this.#end[j]!; k++) {
          if ((k >= from && k < to) || vy[k]! > y === vy[k + 1]! > y) continue;
          const at = vx[k]! + ((y - vy[k]!) * (vx[k + 1]! - vx[k]!)) / (vy[k + 1]! - vy[k]!);
          if (at > x) odd = !odd;
        }
      }
    }
    return odd;
  }
}
