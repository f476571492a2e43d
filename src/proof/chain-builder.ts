import type { Edges } from './edges.js';

const COLUMNS = 8;

/** Gathers closed chains edge by edge while a file is read. Coordinates in mm, y up. */
export class ChainBuilder {
  #data = new Float64Array(1024 * COLUMNS);
  #count = 0;
  readonly #starts: number[] = [0];

  /** Edges of the chain now being gathered. */
  get open(): number {
    return this.#count - this.#starts[this.#starts.length - 1]!;
  }

  get empty(): boolean {
    return this.#count === 0;
  }

  /** A straight edge; one of no length is no edge. */
  line(x0: number, y0: number, x1: number, y1: number): void {
    if (x0 === x1 && y0 === y1) return;
    this.#push(x0, y0, x1, y1, 0, 0, 0, 0);
  }

  /**
   * An arc by radius, as SVG has it. A radius too small for the chord counts as half the chord (SVG 1.1, F.6.6).
   * `left`: turns counter-clockwise (y up). `large`: the way round that sweeps over 180 degrees.
   */
  arc(x0: number, y0: number, x1: number, y1: number, radius: number, large: boolean, left: boolean): void {
    const dx = x1 - x0;
    const dy = y1 - y0;
    const chord = Math.sqrt(dx * dx + dy * dy);
    const r = Math.max(radius, chord / 2);
    const h = Math.sqrt((r - chord / 2) * (r + chord / 2)) * (left === large ? -1 : 1);
    const cx = (x0 + x1) / 2 - (dy / chord) * h;
    const cy = (y0 + y1) / 2 + (dx / chord) * h;
    this.#push(x0, y0, x1, y1, cx, cy, left ? r : -r, large && h !== 0 ? 1 : 0);
  }

  /** An arc by bulge, tan(sweep / 4), positive counter-clockwise, as DXF has it; bulge 0 is a straight edge. */
  bulged(x0: number, y0: number, x1: number, y1: number, bulge: number): void {
    if (bulge === 0) {
      this.line(x0, y0, x1, y1);
      return;
    }
    const dx = x1 - x0;
    const dy = y1 - y0;
    const b = bulge < 0 ? -bulge : bulge;
    const h = (1 - b * b) / (4 * bulge);
    const r = (Math.sqrt(dx * dx + dy * dy) * (1 + b * b)) / (4 * b);
    const cx = (x0 + x1) / 2 - dy * h;
    const cy = (y0 + y1) / 2 + dx * h;
    this.#push(x0, y0, x1, y1, cx, cy, bulge > 0 ? r : -r, b > 1 ? 1 : 0);
  }

  /** Ends the chain; the caller has seen to it that it is closed. */
  close(): void {
    this.#starts.push(this.#count);
  }

  /** The edges and the first edge of every chain (and one past the last). */
  finish(): { edges: Edges; starts: Int32Array } {
    const n = this.#count;
    const column = (k: number) => {
      const out = new Float64Array(n);
      for (let i = 0; i < n; i++) out[i] = this.#data[i * COLUMNS + k]!;
      return out;
    };
    const wide = Uint8Array.from(column(7));
    const [x0, y0, x1, y1, cx, cy, r] = [0, 1, 2, 3, 4, 5, 6].map(column) as [
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    return { edges: { count: n, x0, y0, x1, y1, cx, cy, r, wide }, starts: Int32Array.from(this.#starts) };
  }

  #push(
    x0: number,
    y0: number,
    x1: number,
    y1: number,
    cx: number,
    cy: number,
    r: number,
    wide: number,
  ): void {
    let at = this.#count * COLUMNS;
    if (at === this.#data.length) {
      const more = new Float64Array(2 * at);
      more.set(this.#data);
      this.#data = more;
    }
    const d = this.#data;
    d[at++] = x0;
    d[at++] = y0;
    d[at++] = x1;
    d[at++] = y1;
    d[at++] = cx;
    d[at++] = cy;
    d[at++] = r;
    d[at] = wide;
    this.#count++;
  }
}
