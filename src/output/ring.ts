import type { Contour } from '../geometry/region.js';
import { MM_PER, type Units } from './format.js';
import { merged } from './merge.js';

/** The drawing's frame: its unit and its size in whole millionths of that unit. */
export interface Frame {
  readonly units: Units;
  readonly width: number;
  readonly height: number;
}

/**
 * A point of a drawing and the edge that leaves it, in whole millionths of the unit, x right, y up, from the sheet's
 * lower left corner. `r` is the edge's signed radius: 0 straight, positive counter-clockwise.
 *
 * SVG and DXF are both written from these whole numbers, so they cannot differ by a rounding.
 */
export interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** A closed chain of vertices. */
export type Ring = readonly Vertex[];

/** A length in mm as whole millionths of the unit. */
export function inGrid(mm: number, units: Units): number {
  return Math.round((mm * 1e6) / MM_PER[units]);
}

export function frameOf(sheet: { readonly width: number; readonly height: number }, units: Units): Frame {
  return { units, width: inGrid(sheet.width, units), height: inGrid(sheet.height, units) };
}

/** A point of the sheet (mm, middle at 0, 0) in the frame's millionths. */
export function inFrame(x: number, y: number, frame: Frame): [number, number] {
  const scale = 1e6 / MM_PER[frame.units];
  return [Math.round(x * scale + frame.width / 2), Math.round(y * scale + frame.height / 2)];
}

/** A contour (mm, sheet's middle at 0, 0) as it is written. Edges too short for the grid are left out. */
export function toRing(contour: Contour, frame: Frame): Ring {
  const ring: Vertex[] = [];
  const edges = merged(contour);
  for (const e of edges) {
    const [x, y] = inFrame(e.x0, e.y0, frame);
    const [x1, y1] = inFrame(e.x1, e.y1, frame);
    if (x !== x1 || y !== y1) ring.push({ x, y, r: inGrid(e.r, frame.units) });
  }
  return ring;
}

/**
 * DXF bulge, tan(sweep / 4), of the edge from one vertex to the next: taken from the written chord and the written
 * radius, so that it is the very arc the SVG draws. Sweeps stay under 180 degrees.
 */
export function ringBulge(from: Vertex, to: Vertex): number {
  if (from.r === 0) return 0;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  // sin of half the sweep; rounding may lift a chord a hair past the diameter of a very small circle.
  const s = Math.min(1, Math.sqrt(dx * dx + dy * dy) / (2 * Math.abs(from.r)));
  const t = s / (1 + Math.sqrt(1 - s * s));
  return from.r > 0 ? t : -t;
}
