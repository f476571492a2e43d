import type { Edge } from './edge.js';

/** Below this many edges a plain walk over their starts beats sorting them into cells. */
const FEW = 40;

/**
 * Pairs the end of every edge with the start of another, nearest pairs first, none further apart than `within` mm.
 * Gives for each edge the position of its successor, or null when some end finds no partner.
 */
export function link(edges: readonly Edge[], within: number): number[] | null {
  const n = edges.length;
  // Plain arrays: small typed ones cost more to make than to use.
  const next = new Array<number>(n).fill(-1);
  const taken = new Array<boolean>(n).fill(false);
  const all = n < FEW ? edges.map((_, i) => i) : null;
  const grid = all ? null : new Grid(edges, within);
  const waiting: { gap: number; end: number; start: number }[] = [];
  const starts = startsOf(edges);
  for (let i = 0; i < n; i++) {
    const { x1, y1 } = edges[i]!;
    const near = all ?? grid!.near(x1, y1);
    let exact = -1;
    let found = 0;
    for (let k = 0; k < near.length; k++) {
      const j = near[k]!;
      // Walked for every end, so without looking at the edge itself.
      const dx = starts[2 * j]! - x1;
      const dy = starts[2 * j + 1]! - y1;
      if (dx > within || dx < -within || dy > within || dy < -within) continue;
      const gap = Math.sqrt(dx * dx + dy * dy);
      if (gap > within) continue;
      found++;
      if (gap < 1e-9 && !taken[j] && exact < 0) exact = j;
    }
    if (exact >= 0 && found === 1) {
      next[i] = exact;
      taken[exact] = true;
      continue;
    }
    for (const j of near) {
      const dx = starts[2 * j]! - x1;
      const dy = starts[2 * j + 1]! - y1;
      const gap = Math.sqrt(dx * dx + dy * dy);
      if (gap <= within) waiting.push({ gap, end: i, start: j });
    }
  }
  waiting.sort((a, b) => a.gap - b.gap || a.end - b.end || a.start - b.start);
  for (const { end, start } of waiting) {
    if (next[end] === -1 && !taken[start]) {
      next[end] = start;
      taken[start] = true;
    }
  }
  return next.includes(-1) ? null : next;
}

/** Starts of few edges, x and y in turn; the kernel is synchronous, and nothing keeps a reference. */
const few = new Float64Array(2 * FEW);

function startsOf(edges: readonly Edge[]): Float64Array {
  const out = edges.length < FEW ? few : new Float64Array(2 * edges.length);
  for (let i = 0; i < edges.length; i++) {
    out[2 * i] = edges[i]!.x0;
    out[2 * i + 1] = edges[i]!.y0;
  }
  return out;
}

/** Start points by square cells. */
class Grid {
  readonly #cells = new Map<number, number[]>();
  readonly #size: number;

  constructor(edges: readonly Edge[], within: number) {
    this.#size = within * 4;
    edges.forEach((e, i) => {
      const key = this.#key(Math.floor(e.x0 / this.#size), Math.floor(e.y0 / this.#size));
      const cell = this.#cells.get(key);
      if (cell) cell.push(i);
      else this.#cells.set(key, [i]);
    });
  }

  /** Positions of starts in the cells round a point, each once. */
  near(x: number, y: number): readonly number[] {
    const cx = x / this.#size;
    const cy = y / this.#size;
    const ix = Math.floor(cx);
    const iy = Math.floor(cy);
    // Within a quarter of a cell: only the nearer neighbour on each axis can matter.
    const jx = cx - ix < 0.5 ? ix - 1 : ix + 1;
    const jy = cy - iy < 0.5 ? iy - 1 : iy + 1;
    const out: number[] = [];
    for (const key of new Set([this.#key(ix, iy), this.#key(jx, iy), this.#key(ix, jy), this.#key(jx, jy)])) {
      const cell = this.#cells.get(key);
      if (cell) out.push(...cell);
    }
    return out;
  }

  #key(ix: number, iy: number): number {
    return ix * 67108859 + iy;
  }
}
