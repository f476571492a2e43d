import type { Drawing } from './drawing.js';
import { type Chords, flatten } from './field-flatten.js';
import { Field } from './field-grid.js';
import { Track } from './field-track.js';

/** A ball may press this far into the boundary, mm (design: reach). */
const PRESS = 0.0005;

/** Rounding allowed in a distance, mm. */
const TIE = 1e-9;

/** How much may be missed between two samples, mm. */
const MISS = 0.002;

/** Samples are no nearer than this, mm (radians at a corner): a bound on the work where the reach is next to nothing. */
const CLOSEST = 0.002;

/** A turn of less than this, radians, away from the ball is no corner. */
const CORNER = 1e-3;

export interface FieldReach {
  /** mm; the cap when nothing limits it below that. */
  readonly reach: number;
  /** Where the limiting ball rolls, mm, y up; null when capped. */
  readonly at: readonly [number, number] | null;
}

/**
 * The reach once more by another route, sharing nothing with `reach` but the edges: the boundary is flattened to chords,
 * a ball is rolled along every edge and about every corner, and the distance from its centre to the nearest chord must
 * stay its radius less 0.0005 mm. Where it does not, the ball is shrunk until it fits; the least ball is the reach.
 *
 * Distance changes no faster than one moves, so from a centre with room to spare the ball may go on by as much unseen.
 * Elsewhere the steps are so short that what is missed between two of them is under 0.002 mm. `fine` divides that by its square, and
 * multiplies the chords.
 */
export function fieldReach(drawing: Drawing, side: 'inside' | 'outside', cap: number, fine = 1): FieldReach {
  if (drawing.edges.count === 0) return { reach: 0, at: null };
  const chords = flatten(drawing.edges, drawing.starts, fine);
  const roll = new Roll(chords, cap, MISS / (fine * fine));
  const sides = ballSides(chords, roll.field);
  roll.go(side === 'inside' ? sides : sides.map((s) => -s));
  return { reach: roll.least, at: roll.at };
}

/** For every contour, +1 where the region (even-odd) lies on its left, -1 where on its right. */
function ballSides({ x, y, first, starts }: Chords, field: Field): Int8Array {
  const sides = new Int8Array(starts.length - 1);
  for (let k = 0; k < sides.length; k++) {
    const from = first[starts[k]!]!;
    const to = first[starts[k + 1]!]!;
    let area = 0;
    for (let v = from; v + 1 < to; v++) {
      area += (x[v]! - x[from]!) * (y[v + 1]! - y[from]!) - (x[v + 1]! - x[from]!) * (y[v]! - y[from]!);
    }
    sides[k] = area > 0 === field.odd(x[from]!, y[from]!, from, to) ? -1 : 1;
  }
  return sides;
}

class Roll {
  least: number;
  at: [number, number] | null = null;
  readonly field: Field;
  readonly #track: Track;

  constructor(
    readonly chords: Chords,
    cap: number,
    readonly miss: number,
  ) {
    this.least = cap;
    this.field = new Field(chords, cap / 2);
    this.#track = new Track(chords);
  }

  go(sides: Int8Array): void {
    const { starts, first } = this.chords;
    for (let k = 0; k < sides.length; k++) {
      const side = sides[k]!;
      for (let i = starts[k]!; i < starts[k + 1]!; i++) {
        const next = i + 1 < starts[k + 1]! ? i + 1 : starts[k]!;
        // What an arc that bends about the ball allows by itself shows from the edges and corners at its ends.
        if (this.#track.edge(i, side)) this.#along(first[i]!, first[i + 1]!);
        if (this.#track.turn(i, next, side) > CORNER) this.#along(0, 0);
      }
    }
  }

  /**
   * Samples the track from end to end; chords `from` up to `to` are left out. All up to `seen` is known to be free, and
   * the next sample is set so far on that its own room reaches back to there, as far as the last one's is a guide.
   */
  #along(from: number, to: number): void {
    const { end } = this.#track;
    let room = this.#roomAt(0, from, to);
    let seen = room;
    while (seen < end) {
      const step = this.#step() / this.#track.unit;
      let ahead = Math.max(step, room);
      for (;;) {
        const u = Math.min(end, seen + ahead);
        room = this.#roomAt(u, from, to);
        if (u - room <= seen + step || ahead <= step) {
          seen = u < end ? u + room : end;
          break;
        }
        ahead = Math.max(step, ahead / 2);
      }
    }
  }

  /** How far to either side of u, in steps of u, the ball has room. */
  #roomAt(u: number, from: number, to: number): number {
    const room = this.#sample(u, from, to);
    return room / this.#track.unit / (this.#track.corner ? this.least : this.#speed());
  }

  /** How far the centre moves for 1 mm along the boundary. */
  #speed(): number {
    return Math.max(Math.abs(1 - this.#track.bend * this.least), 0.05);
  }

  /**
   * The step between samples that can miss `miss` at most. Near the place where a ball of radius rho is held by a point
   * at distance D = 2 rho, its radius grows with the square of the way s: by s s (1 - D bend)^2 / 2D on an edge, by
   * rho s s / 2 about a corner.
   */
  #step(): number {
    const t = this.#track;
    const rho = this.least;
    if (t.corner) return Math.max(2 * Math.sqrt((2 * this.miss) / rho), CLOSEST);
    const d = 2 * rho;
    const half = Math.sqrt(2 * d * this.miss) / Math.max(1, Math.abs(1 - d * t.bend));
    return Math.max(2 * half, CLOSEST);
  }

  /** Rolls a ball of the least radius so far to u; if it does not fit, finds the least one near by. Returns how much room it has. */
  #sample(u: number, from: number, to: number): number {
    const t = this.#track;
    const rho = this.least;
    t.at(u);
    const need = rho - PRESS;
    const far = need + rho / 2;
    const free = this.field.look(t.px + rho * t.nx, t.py + rho * t.ny, far, from, to);
    if (free >= need - TIE) return free - need;
    if (this.#shrink(u)) this.#narrow(u);
    return 0;
  }

  /** Shrinks the ball at u until it fits; true when it is the least one so far. */
  #shrink(u: number): boolean {
    const t = this.#track;
    t.at(u);
    let rho = this.least;
    for (let round = 0; round < 200; round++) {
      const need = rho - PRESS - TIE;
      if (need <= 0) break;
      if (this.field.look(t.px + rho * t.nx, t.py + rho * t.ny, need, 0, 0) >= need) break;
      const dx = this.field.qx - t.px;
      const dy = this.field.qy - t.py;
      const over = dx * t.nx + dy * t.ny - PRESS;
      const fits = (dx * dx + dy * dy - PRESS * PRESS) / (2 * over);
      if (!(over > 0 && fits < rho - 1e-8)) break;
      rho = Math.max(fits, 0);
    }
    if (!(rho < this.least)) return false;
    this.least = rho;
    this.at = [t.px, t.py];
    return true;
  }

  /** Goes to the least ball about u, in steps that halve whenever they lead no farther down. */
  #narrow(u: number): void {
    const t = this.#track;
    let step = this.#step() / t.unit;
    let here = u;
    for (let tries = 0; tries < 400 && step * t.unit > 1e-5; tries++) {
      const [before, after] = [Math.max(0, here - step), Math.min(t.end, here + step)];
      if (before < here && this.#shrink(before)) here = before;
      else if (after > here && this.#shrink(after)) here = after;
      else step /= 2;
    }
  }
}
