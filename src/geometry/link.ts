import type { Edge } from './edge.js';

/**
 * Pairs the end of every edge with the start of another, nearest pairs first, none further apart than `within` mm.
 * Gives for each edge the position of its successor, or null when some end finds no partner.
 */
export function link(edges: readonly Edge[], within: number): Int32Array | null {
  const n = edges.length;
  const next = new Int32Array(n).fill(-1);
  const taken = new Uint8Array(n);
  const grid = new Grid(edges, within);
  const waiting: { gap: number; end: number; start: number }[] = [];
  for (let i = 0; i < n; i++) {
    const { x1, y1 } = edges[i]!;
    const near = grid.near(x1, y1);
    let exact = -1;
    let found = 0;
    for (let k = 0; k < near.length; k++) {
      const j = near[k]!;
      const gap = gapTo(edges[j]!, x1, y1, within);
      if (gap > within) continue;
      found++;
      if (gap < 1e-9 && taken[j] === 0 && exact < 0) exact = j;
    }
    if (exact >= 0 && found === 1) {
      next[i] = exact;
      taken[exact] = 1;
      continue;
    }
    for (const j of near) {
      const gap = gapTo(edges[j]!, x1, y1, within);
      if (gap <= within) waiting.push({ gap, end: i, start: j });
    }
  }
  waiting.sort((a, b) => a.gap - b.gap || a.end - b.end || a.start - b.start);
  for (const { end, start } of waiting) {
    if (next[end] === -1 && taken[start] === 0) {
      next[end] = start;
      taken[start] = 1;
    }
  }
  return next.includes(-1) ? null : next;
}

/** From a point to the start of an edge; infinite where it is surely beyond what matters. */
function gapTo(e: Edge, x: number, y: number, within: number): number {
  const dx = e.x0 - x;
  const dy = e.y0 - y;
  if (dx > within || dx < -within || dy > within || dy < -within) return Number.POSITIVE_INFINITY;
  return Math.sqrt(dx * dx + dy * dy);
}

/** Start points by square cells; small lists are simply walked. */
class Grid {
  readonly #cells = new Map<number, number[]>();
  readonly #all: number[] | null;
  readonly #size: number;

  constructor(edges: readonly Edge[], within: number) {
    this.#size = within * 4;
    this.#all = edges.length < 40 ? edges.map((_, i) => i) : null;
    if (this.#all) return;
    edges.forEach((e, i) => {
      const key = this.#key(Math.floor(e.x0 / this.#size), Math.floor(e.y0 / this.#size));
      const cell = this.#cells.get(key);
      if (cell) cell.push(i);
      else this.#cells.set(key, [i]);
    });
  }

  /** Positions of starts in the cells round a point, each once. */
  near(x: number, y: number): readonly number[] {
    if (this.#all) return this.#all;
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
