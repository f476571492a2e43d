import { type Contour, polygon } from '../../src/geometry/region.js';
import type { Point } from './hard-shapes.js';

export function koch(order: number, side: number): Contour {
  const height = (side * Math.sqrt(3)) / 2;
  let points: Point[] = [
    [0, 0],
    [side, 0],
    [side / 2, height],
  ];
  for (let k = 0; k < order; k++)
    points = points.flatMap(([x, y], i): Point[] => {
      const [u, v] = points[(i + 1) % points.length]!;
      const [dx, dy] = [(u - x) / 3, (v - y) / 3];
      // The tip points to the right of the way: outwards.
      const tip: Point = [x + 1.5 * dx + (Math.sqrt(3) / 2) * dy, y + 1.5 * dy - (Math.sqrt(3) / 2) * dx];
      return [[x, y], [x + dx, y + dy], tip, [x + 2 * dx, y + 2 * dy]];
    });
  return polygon(points);
}

/** The outlines of a set of square cells, inside on the left; cells that meet in a corner alone stay apart there. */
export function cells(inside: (i: number, j: number) => boolean, count: number, side: number): Contour[] {
  const leaving = new Map<string, [number, number][]>();
  const add = (i: number, j: number, di: number, dj: number): void => {
    const key = `${i},${j}`;
    leaving.set(key, [...(leaving.get(key) ?? []), [di, dj]]);
  };
  for (let i = -count; i < count; i++)
    for (let j = -count; j < count; j++) {
      if (!inside(i, j)) continue;
      if (!inside(i, j - 1)) add(i, j, 1, 0);
      if (!inside(i + 1, j)) add(i + 1, j, 0, 1);
      if (!inside(i, j + 1)) add(i + 1, j + 1, -1, 0);
      if (!inside(i - 1, j)) add(i, j + 1, 0, -1);
    }
  const out: Contour[] = [];
  for (const [key, ways] of leaving)
    while (ways.length > 0) {
      const points: Point[] = [];
      let [i, j] = key.split(',').map(Number) as Point;
      let [di, dj] = ways[0]!;
      for (;;) {
        const here = leaving.get(`${i},${j}`)!;
        // Turned left first: round the own cell.
        const at = [
          [-dj, di],
          [di, dj],
          [dj, -di],
        ]
          .map(([a, b]) => here.findIndex(([p, q]) => p === a && q === b))
          .find((k) => k >= 0);
        if (at === undefined) break;
        [di, dj] = here.splice(at, 1)[0]!;
        points.push([i * side, j * side]);
        i += di;
        j += dj;
      }
      out.push(polygon(points));
    }
  return out;
}

/** Whether a cell belongs to Sierpinski's carpet of an order: no digit pair of i and j in base three is (1, 1). */
export function carpet(order: number): (i: number, j: number) => boolean {
  return (i, j) => kept(i, j, order, (a, b) => a !== 1 || b !== 1);
}

/** A plus made of five pluses: cells whose every digit pair in base three has a 1 in it. */
export function plus(order: number): (i: number, j: number) => boolean {
  return (i, j) => kept(i, j, order, (a, b) => a === 1 || b === 1);
}

function kept(i: number, j: number, order: number, keeps: (a: number, b: number) => boolean): boolean {
  if (i < 0 || j < 0 || i >= 3 ** order || j >= 3 ** order) return false;
  for (let k = 0, [p, q] = [i, j]; k < order; k++, p = Math.floor(p / 3), q = Math.floor(q / 3))
    if (!keeps(p % 3, q % 3)) return false;
  return true;
}

/** The twin dragon: all sums of different powers of 1 + i below an order, a cell each. */
export function dragon(order: number): (i: number, j: number) => boolean {
  let all: Point[] = [[0, 0]];
  let [u, v] = [1, 0];
  for (let k = 0; k < order; k++) {
    all = all.flatMap(([x, y]): Point[] => [
      [x, y],
      [x + u, y + v],
    ]);
    [u, v] = [u - v, u + v];
  }
  const set = new Set(all.map(([x, y]) => `${x},${y}`));
  return (i, j) => set.has(`${i},${j}`);
}
