/** A block's width and height, mm. */
export type Size = readonly [width: number, height: number];

/** Where the blocks of an arrangement lie: their lower left corners, mm. */
export interface Arrangement {
  readonly width: number;
  readonly height: number;
  readonly blocks: readonly {
    readonly block: number;
    readonly x: number;
    readonly y: number;
  }[];
}

/**
 * Every arrangement of all blocks worth having, none wider than another and higher too: blocks are put beside or above
 * each other, and such groups again, with `gap` between (slicing arrangements; Stockmeyer 1983, from memory). Blocks are
 * never turned, since grain has a direction. For a handful of blocks only: the work grows as 3 to their number.
 *
 * @param most widest and highest, mm
 */
export function arrangements(blocks: readonly Size[], gap: number, most: number): Arrangement[] {
  const all = (1 << blocks.length) - 1;
  const best: Arrangement[][] = Array.from({ length: all + 1 }, () => []);
  for (let set = 1; set <= all; set++) {
    const ways: Arrangement[] = [];
    const only = blocks.findIndex((_, k) => set === 1 << k);
    if (only >= 0) {
      const [width, height] = blocks[only]!;
      ways.push({ width, height, blocks: [{ block: only, x: 0, y: 0 }] });
    }
    for (let part = (set - 1) & set; part > 0; part = (part - 1) & set)
      for (const a of best[part]!)
        for (const b of best[set & ~part]!) ways.push(together(a, b, gap, true), together(a, b, gap, false));
    best[set] = undominated(ways.filter((w) => w.width <= most + 1e-9 && w.height <= most + 1e-9));
  }
  return best[all]!;
}

function together(a: Arrangement, b: Arrangement, gap: number, beside: boolean): Arrangement {
  const dx = beside ? a.width + gap : 0;
  const dy = beside ? 0 : a.height + gap;
  return {
    width: beside ? dx + b.width : Math.max(a.width, b.width),
    height: beside ? Math.max(a.height, b.height) : dy + b.height,
    blocks: [...a.blocks, ...b.blocks.map((p) => ({ ...p, x: p.x + dx, y: p.y + dy }))],
  };
}

function undominated(ways: Arrangement[]): Arrangement[] {
  const out: Arrangement[] = [];
  for (const w of ways.sort((a, b) => a.width - b.width || a.height - b.height))
    if (out.length === 0 || w.height < out.at(-1)!.height - 1e-9) out.push(w);
  return out;
}
