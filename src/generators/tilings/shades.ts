import { distance } from './inset.js';
import type { CellTile, Periodic } from './lay.js';
import { middleOf, type Point, type TileKind } from './tile.js';

/** The choices of a tiling whose tiles are dark or light by turns. */
export const SHADES: readonly TileKind[] = [
  { value: 'dark', meaning: 'every other tile, so that no two share an edge' },
  { value: 'light', meaning: 'the tiles between those' },
];

/**
 * The tiling with its tiles called dark and light so that none shares an edge with one of its own shade; null when
 * that cannot be done. The first tile is dark. For edge-to-edge tilings.
 */
export function shaded(tiling: Periodic): Periodic | null {
  const { steps, cell } = tiling;
  const [[ax, ay], [bx, by]] = steps;
  const moved = (x: number, y: number): CellTile[] =>
    cell.map((t) => ({ ...t, points: t.points.map(([u, v]): Point => [u + x, v + y]) }));
  // Shades that repeat with every cell, or turn into each other with a step this way, that way or both.
  const ways: Periodic[] = [
    tiling,
    { steps: [[2 * ax, 2 * ay], steps[1]], cell: [...cell, ...moved(ax, ay)] },
    { steps: [steps[0], [2 * bx, 2 * by]], cell: [...cell, ...moved(bx, by)] },
    {
      steps: [
        [ax + bx, ay + by],
        [bx - ax, by - ay],
      ],
      cell: [...cell, ...moved(ax, ay)],
    },
  ];
  for (const way of ways) {
    const found = alternated(way);
    if (found) return found;
  }
  return null;
}

/** The same with the cell repeated as it is. */
function alternated({ steps, cell }: Periodic): Periodic | null {
  const shades: (0 | 1 | undefined)[] = [0];
  const edges = cell.map(({ points }) =>
    points.map((p, i) => [p, points[(i + 1) % points.length]!] as const),
  );
  const neighbours = edges.map((mine) =>
    edges.flatMap((theirs, k) => (mine.some((e) => theirs.some((f) => shares(steps, e, f))) ? [k] : [])),
  );
  const queue = [0];
  for (let i = queue.shift(); i !== undefined; i = queue.shift())
    for (const k of neighbours[i]!) {
      if (shades[k] === shades[i]) return null;
      if (shades[k] !== undefined) continue;
      shades[k] = shades[i] === 0 ? 1 : 0;
      queue.push(k);
    }
  return { steps, cell: cell.map((t, i): CellTile => ({ ...t, kind: SHADES[shades[i] ?? 0]!.value })) };
}

/** Whether two edges are one edge seen from both sides, up to a repeat of the cell. */
function shares(
  [[ax, ay], [bx, by]]: Periodic['steps'],
  e: readonly [Point, Point],
  f: readonly [Point, Point],
): boolean {
  const [x, y] = middleOf(e);
  const [u, v] = middleOf(f);
  const area = ax * by - ay * bx;
  const i = Math.round(((u - x) * by - (v - y) * bx) / area);
  const j = Math.round(((v - y) * ax - (u - x) * ay) / area);
  const back = (p: Point): Point => [p[0] - i * ax - j * bx, p[1] - i * ay - j * by];
  return distance(back(f[0]), e[1]) < 1e-6 && distance(back(f[1]), e[0]) < 1e-6;
}
