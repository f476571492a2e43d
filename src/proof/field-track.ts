import type { Chords } from './field-flatten.js';

/**
 * Where a ball touches as it rolls: along one edge, from vertex to vertex, or about the corner where two edges meet.
 * `at(u)` puts the touching point in px, py and the unit normal towards the ball in nx, ny; u runs from 0 to `end`.
 */
export class Track {
  px = 0;
  py = 0;
  nx = 0;
  ny = 0;
  end = 0;
  /** Length of a step of 1 in u, mm along the boundary; of a corner radians. */
  unit = 0;
  /** Curvature towards the ball, 1/mm: positive where the boundary bends about it. 0 at a corner. */
  bend = 0;
  corner = false;
  #at = 0;
  /** +1: the ball is on the left of an edge as travelled; -1: on the right. */
  #side = 1;
  readonly #ends = new Float64Array(6);

  constructor(readonly chords: Chords) {}

  /** Takes edge i up. False when it is too short to have a direction. */
  edge(i: number, side: number): boolean {
    const { x, y, first } = this.chords;
    this.#at = first[i]!;
    this.#side = side;
    this.corner = false;
    this.end = first[i + 1]! - first[i]! - 1;
    const k = this.#at;
    const ux = x[k + 1]! - x[k]!;
    const uy = y[k + 1]! - y[k]!;
    this.unit = Math.sqrt(ux * ux + uy * uy);
    if (!(this.unit > 0)) return false;
    this.bend = 0;
    if (this.end > 1) {
      const vx = x[k + 2]! - x[k + 1]!;
      const vy = y[k + 2]! - y[k + 1]!;
      const v = Math.sqrt(vx * vx + vy * vy);
      this.bend = (side * (ux * vy - uy * vx)) / (this.unit * this.unit * (v > 0 ? v : this.unit));
    }
    return true;
  }

  /**
   * Takes the corner up from edge i into edge j; returns how far it turns away from the ball, about radians for small
   * turns, and 2 at the most. 0 or less: there is no such corner.
   */
  turn(i: number, j: number, side: number): number {
    const out = this.#ends;
    if (!this.edge(i, side)) return 0;
    this.at(this.end);
    out[0] = this.nx;
    out[1] = this.ny;
    if (!this.edge(j, side)) return 0;
    this.at(0);
    out[4] = this.nx;
    out[5] = this.ny;
    const away = -side * (out[0] * out[5] - out[1] * out[4]);
    const along = out[0] * out[4] + out[1] * out[5];
    if (away <= 0) return 0;
    // Half way the ball stands on the bisector; where the edges nearly fold back, straight ahead of the tip.
    let [mx, my] =
      along > 0 ? [out[0] + out[4], out[1] + out[5]] : [side * (out[1] - out[5]), side * (out[4] - out[0])];
    const m = Math.sqrt(mx * mx + my * my);
    mx /= m;
    my /= m;
    out[2] = mx;
    out[3] = my;
    this.corner = true;
    this.end = 1;
    this.bend = 0;
    const [dx, dy] = [out[4] - out[0], out[5] - out[1]];
    const chord = Math.sqrt(dx * dx + dy * dy);
    // Half the chord of the turn is the sine of half of it: radians to within a third, which steps can bear.
    this.unit = chord * 1.5;
    return chord;
  }

  at(u: number): void {
    if (this.corner) this.#atCorner(u);
    else this.#atEdge(u);
  }

  #atCorner(u: number): void {
    const o = u < 0.5 ? 0 : 2;
    const f = u < 0.5 ? 2 * u : 2 * u - 1;
    const e = this.#ends;
    this.#normal(e[o]! + f * (e[o + 2]! - e[o]!), e[o + 1]! + f * (e[o + 3]! - e[o + 1]!));
  }

  #atEdge(u: number): void {
    const { x, y } = this.chords;
    const whole = Math.min(Math.floor(u), this.end - 1);
    const f = u - whole;
    const k = this.#at + whole;
    const ux = x[k + 1]! - x[k]!;
    const uy = y[k + 1]! - y[k]!;
    this.px = x[k]! + f * ux;
    this.py = y[k]! + f * uy;
    if (this.end === 1) {
      this.#normal(-uy * this.#side, ux * this.#side);
      return;
    }
    // Chords of an arc are equally long, so its direction at a vertex is that from the one before to the one after.
    let [ax, ay] = [ux, uy];
    let [bx, by] = [ux, uy];
    if (whole > 0) {
      ax = x[k + 1]! - x[k - 1]!;
      ay = y[k + 1]! - y[k - 1]!;
    }
    if (whole + 1 < this.end) {
      bx = x[k + 2]! - x[k]!;
      by = y[k + 2]! - y[k]!;
    }
    // At the arc's own ends, the direction at the chord's other end mirrored in the chord.
    const c = (2 * (ux * (whole > 0 ? ax : bx) + uy * (whole > 0 ? ay : by))) / (ux * ux + uy * uy);
    if (whole === 0) [ax, ay] = [c * ux - bx, c * uy - by];
    else if (whole + 1 === this.end) [bx, by] = [c * ux - ax, c * uy - ay];
    const a = Math.sqrt(ax * ax + ay * ay);
    const b = Math.sqrt(bx * bx + by * by);
    const dx = (ax / a) * (1 - f) + (bx / b) * f;
    const dy = (ay / a) * (1 - f) + (by / b) * f;
    this.#normal(-dy * this.#side, dx * this.#side);
  }

  #normal(x: number, y: number): void {
    const l = Math.sqrt(x * x + y * y);
    this.nx = x / l;
    this.ny = y / l;
  }
}
