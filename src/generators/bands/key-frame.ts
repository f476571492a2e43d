import { type Edge, line } from '../../geometry/edge.js';
import { bounds } from '../../geometry/region.js';
import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import { num } from '../values.js';
import { keyColumns, keyCorners } from './key.js';
import { noRoom } from './room.js';
import { frameDepth } from './sharp-frame.js';

/** More keys along one side than this are not tried. */
const MOST_KEYS = 2000;

/**
 * The middle line of a key frame in a rectangle, one closed chain, with its strap's width and the band's height, mm. The line runs round the
 * corner along the outer edge and turns in at once for the next side's first key: the corner takes as much room as
 * one key, so a side of n keys is n + 1 keys long, and all four corners are alike. Strap and gap grow together until
 * the keys fill the sides; on the side that fills less well the columns move apart a little more.
 */
export function keyFrame(values: Values, outline: Outline): { path: Edge[]; strap: number; height: number } {
  const turns = num(values, 'turns');
  const strap = num(values, 'strap');
  const pitch = strap + num(values, 'gap');
  const columns = keyColumns(turns);
  const { minX, minY, maxX, maxY } = bounds(outline.inner.contours);
  const depth = frameDepth(values, outline);
  const width = maxX - minX - 2 * depth;
  const height = maxY - minY - 2 * depth;
  const best = counts(width, height, columns * pitch, strap);
  if (!best) throw noRoom(2 * (2 * columns * pitch + strap), Math.min(width, height));
  const grown = best.scale;
  const p = pitch * grown;
  const half = (strap * grown) / 2;
  // Each side's frame: its corner on the strap's middle line, its direction, its length between corners, its keys.
  const x = minX + depth + half;
  const y = minY + depth + half;
  const w = width - 2 * half;
  const h = height - 2 * half;
  const sides = [
    { at: [x, y], along: [1, 0], length: w, keys: best.x },
    { at: [x + w, y], along: [0, 1], length: h, keys: best.y },
    { at: [x + w, y + h], along: [-1, 0], length: w, keys: best.x },
    { at: [x, y + h], along: [0, -1], length: h, keys: best.y },
  ] as const;
  const points = sides.flatMap(({ at, along, length, keys }) => {
    const last = keys * columns - 1;
    const column = (length - (columns + 1) * p) / last;
    const place = (s: number, t: number): [number, number] => [
      at[0] + s * along[0] - t * along[1],
      at[1] + s * along[1] + t * along[0],
    ];
    const run: [number, number][] = [place(0, 0)];
    for (let k = 0; k < keys; k++)
      for (const [c, r] of keyCorners(turns)) run.push(place(p + (k * columns + c) * column, r * p));
    return run;
  });
  const path = points.map((a, i) => {
    const b = points[(i + 1) % points.length]!;
    return line(a[0], a[1], b[0], b[1]);
  });
  return { path, strap: 2 * half, height: 2 * (turns * p + half) };
}

/** The keys along either side such that both sides want straps and gaps grown by nearly the same, and by little. */
function counts(
  width: number,
  height: number,
  key: number,
  strap: number,
): { x: number; y: number; scale: number } | null {
  const most = (side: number): number => Math.min(MOST_KEYS, Math.floor((side - strap) / key + 1e-9) - 1);
  const scale = (side: number, keys: number): number => side / ((keys + 1) * key + strap);
  let best: { x: number; y: number; scale: number; cost: number } | null = null;
  for (let i = 0; i < TRIED; i++)
    for (let j = 0; j < TRIED; j++) {
      const [x, y] = [most(width) - i, most(height) - j];
      if (x < 1 || y < 1) continue;
      const [a, b] = [scale(width, x), scale(height, y)];
      const cost = UNEVEN * (Math.max(a, b) / Math.min(a, b) - 1) + Math.min(a, b) - 1;
      if (!best || cost < best.cost) best = { x, y, scale: Math.min(a, b), cost };
    }
  return best;
}

/** Fewer keys than the most, on either side, that are tried. */
const TRIED = 4;

/** An uneven frame is so much worse than one with wider straps. */
const UNEVEN = 3;
