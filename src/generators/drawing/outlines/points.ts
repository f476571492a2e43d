/** Points of a drawing nearer than this, mm, are one: files round to a millionth of a unit or so. */
export const ONE_POINT = 1e-6;

const CELL = 64 * ONE_POINT;

/** Numbers points, so that those within ONE_POINT of each other share a number. */
export class Points {
  readonly xs: number[] = [];
  readonly ys: number[] = [];
  readonly #cells = new Map<number, number[]>();

  at(x: number, y: number): number {
    // Cells are far larger than ONE_POINT, so that most points need a look into one alone.
    const left = Math.floor((x - ONE_POINT) / CELL);
    const right = Math.floor((x + ONE_POINT) / CELL);
    const below = Math.floor((y - ONE_POINT) / CELL);
    const above = Math.floor((y + ONE_POINT) / CELL);
    for (let ix = left; ix <= right; ix++)
      for (let iy = below; iy <= above; iy++)
        for (const n of this.#cells.get(key(ix, iy)) ?? [])
          if (Math.abs(this.xs[n]! - x) <= ONE_POINT && Math.abs(this.ys[n]! - y) <= ONE_POINT) return n;
    const n = this.xs.length;
    this.xs.push(x);
    this.ys.push(y);
    const home = key(Math.floor(x / CELL), Math.floor(y / CELL));
    const cell = this.#cells.get(home);
    if (cell) cell.push(n);
    else this.#cells.set(home, [n]);
    return n;
  }
}

/** Cells that share a key only cost a comparison more. */
function key(ix: number, iy: number): number {
  return ix * 67108859 + iy;
}
