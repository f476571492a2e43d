import { edgeLength, midpoint } from '../../../geometry/edge.js';
import { EdgesIndex } from '../../../geometry/edges-index.js';
import { bounds, contourArea, distanceToEdge } from '../../../geometry/region.js';
import type { Chain } from './chain.js';
import { sameLine } from './overlaps.js';
import type { Repairs } from './repair.js';

interface Shape {
  readonly chain: Chain;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly length: number;
  readonly area: number;
}

/** Closed chains less those drawn a second time, in whichever sense and from whichever point. */
export function withoutTwins(closed: readonly Chain[], join: number, repairs: Repairs): Chain[] {
  const same = sameLine(join);
  if (same === 0) return [...closed];
  const cell = 8 * same;
  const cells = new Map<string, Shape[]>();
  const at = (v: number, step: number): number => Math.floor(v / cell) + step;
  return closed.filter((chain) => {
    const shape = shapeOf(chain);
    for (const dx of STEPS)
      for (const dy of STEPS)
        for (const dw of STEPS)
          for (const other of cells.get(`${at(shape.x, dx)} ${at(shape.y, dy)} ${at(shape.width, dw)}`) ?? [])
            if (isTwin(shape, other, same)) {
              repairs.add('duplicate', [shape.x, shape.y], shape.length);
              return false;
            }
    const key = `${at(shape.x, 0)} ${at(shape.y, 0)} ${at(shape.width, 0)}`;
    const list = cells.get(key);
    if (list) list.push(shape);
    else cells.set(key, [shape]);
    return true;
  });
}

const STEPS = [-1, 0, 1];

function shapeOf(chain: Chain): Shape {
  const contour = chain.stretches.map((s) => s.edge);
  const { minX, minY, maxX, maxY } = bounds([contour]);
  return {
    chain,
    x: (minX + maxX) / 2,
    y: (minY + maxY) / 2,
    width: maxX - minX,
    height: maxY - minY,
    length: contour.reduce((sum, e) => sum + edgeLength(e), 0),
    area: Math.abs(contourArea(contour)),
  };
}

function isTwin(a: Shape, b: Shape, same: number): boolean {
  if (Math.abs(a.x - b.x) > same || Math.abs(a.y - b.y) > same) return false;
  if (Math.abs(a.width - b.width) > 2 * same || Math.abs(a.height - b.height) > 2 * same) return false;
  if (Math.abs(a.area - b.area) > same * (a.length + b.length)) return false;
  return liesAlong(a.chain, b.chain, same) && liesAlong(b.chain, a.chain, same);
}

/** Do the corners and the middles of one's edges all lie on the other? */
function liesAlong(a: Chain, b: Chain, same: number): boolean {
  const edges = b.stretches.map((s) => s.edge);
  const index = new EdgesIndex(edges);
  return a.stretches.every(({ edge }) =>
    [[edge.x0, edge.y0] as const, midpoint(edge)].every(([x, y]) =>
      index
        .near({ minX: x, minY: y, maxX: x, maxY: y }, same)
        .some((i) => distanceToEdge(edges[i]!, x, y) <= same),
    ),
  );
}
