import { Drawing } from './drawing.js';
import { STRIDE, X0, Y0 } from './edge-index.js';
import type { Edges } from './edges.js';
import { inRegion } from './nesting.js';

/** A drawing's contours by number, each outer one with the holes right inside it, in the order the outer ones are written. */
export function partsOf(drawing: Drawing): number[][] {
  const { nesting, index, starts, contours } = drawing;
  const outers: { contour: number; alone: Drawing; size: number; of: number[] }[] = [];
  for (let k = 0; k < contours; k++) {
    if (nesting.hole[k] === 1) continue;
    outers.push({ contour: k, alone: select(drawing, [k]), size: Math.abs(nesting.area[k]!), of: [k] });
  }
  for (let k = 0; k < contours; k++) {
    if (nesting.hole[k] === 0) continue;
    const o = starts[k]! * STRIDE;
    const [x, y] = [index.pieces[o + X0]!, index.pieces[o + Y0]!];
    let home: (typeof outers)[number] | undefined;
    for (const p of outers) {
      if ((!home || p.size < home.size) && inRegion(p.alone.edges, p.alone.index, x, y)) home = p;
    }
    home?.of.push(k);
  }
  return outers.map((p) => p.of);
}

/** A drawing of some of the contours alone. */
export function select(drawing: Drawing, contours: readonly number[]): Drawing {
  const { edges: e, starts } = drawing;
  const chosen: number[] = [];
  const first: number[] = [0];
  for (const k of contours) {
    for (let i = starts[k]!; i < starts[k + 1]!; i++) chosen.push(i);
    first.push(chosen.length);
  }
  const pick = (v: Float64Array): Float64Array => Float64Array.from(chosen, (i) => v[i]!);
  const edges: Edges = {
    count: chosen.length,
    x0: pick(e.x0),
    y0: pick(e.y0),
    x1: pick(e.x1),
    y1: pick(e.y1),
    cx: pick(e.cx),
    cy: pick(e.cy),
    r: pick(e.r),
    wide: Uint8Array.from(chosen, (i) => e.wide[i]!),
  };
  return new Drawing(
    drawing.unit,
    drawing.width,
    drawing.height,
    drawing.name,
    edges,
    Int32Array.from(first),
  );
}

/** The drawing turned about (0, 0) by the angle of the unit vector (c, s), then moved by (dx, dy). */
export function placed(drawing: Drawing, c: number, s: number, dx: number, dy: number): Drawing {
  const e = drawing.edges;
  const x = (v: Float64Array, w: Float64Array) => v.map((a, i) => a * c - w[i]! * s + dx);
  const y = (v: Float64Array, w: Float64Array) => v.map((a, i) => a * s + w[i]! * c + dy);
  const edges: Edges = {
    ...e,
    x0: x(e.x0, e.y0),
    y0: y(e.x0, e.y0),
    x1: x(e.x1, e.y1),
    y1: y(e.x1, e.y1),
    cx: x(e.cx, e.cy),
    cy: y(e.cx, e.cy),
  };
  return new Drawing(drawing.unit, drawing.width, drawing.height, drawing.name, edges, drawing.starts);
}

/** minX, minY, maxX, maxY of a drawing that is not empty. */
export function boxOf(drawing: Drawing): [number, number, number, number] {
  const { minX, minY, maxX, maxY } = drawing.index.tree!;
  return [minX, minY, maxX, maxY];
}
