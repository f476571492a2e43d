import { findGenerator } from '../../../src/generators/index.js';
import { recorder } from '../../../src/generators/recorder.js';
import type { Piece } from '../../../src/geometry/artwork.js';
import type { Edge } from '../../../src/geometry/edge.js';
import { contains, type Region } from '../../../src/geometry/region.js';
import { makeOutline, outlineShapes } from '../../../src/outline/index.js';
import type { Outline } from '../../../src/outline/outline.js';
import type { Values } from '../../../src/schema/parameter.js';
import { CUT } from '../../support/artwork.js';

export const NAMES = ['meander', 'wave', 'rope', 'guilloche', 'chain', 'dentil', 'ribbon', 'scroll'] as const;

export const LID = outline('rectangle', { width: 100, height: 100 });
export const BOX = outline('rectangle', { width: 140, height: 90 });
export const DISC = outline('circle', { diameter: 160 });
/** A stave that widens upwards, one that narrows, one with parallel sides. */
export const STAVE = outline('stave', { bottom: 70, top: 100, height: 150 });
export const VASE = outline('stave', { bottom: 110, top: 60, height: 140 });
export const STRAIGHT = outline('stave', { bottom: 80, top: 80, height: 120 });

export function outline(shape: string, values: Values): Outline {
  const known = outlineShapes.find((s) => s.name === shape)!;
  return makeOutline(shape, {
    ...Object.fromEntries(known.parameters.map((p) => [p.name, p.default])),
    ...values,
  });
}

/** The pieces that a band draws, its other parameters at their defaults. */
export function pieces(name: string, on: Outline, values: Values = {}): readonly Piece[] {
  const generator = findGenerator(name)!;
  const defaults = Object.fromEntries(generator.parameters.map((p) => [p.name, p.default]));
  const pen = recorder();
  generator.draw({ ...defaults, ...values }, on, pen, { fonts: new Map(), drawings: new Map() }, CUT);
  return pen.artwork().pieces;
}

/** All that a band draws. Its pieces do not overlap, so their contours together are a region. */
export function drawn(name: string, on: Outline, values: Values = {}): Region {
  return { contours: pieces(name, on, values).flatMap((p) => p.region.contours) };
}

/** Where a boundary crosses a ray: how far out, mm, and the direction of the boundary there against the ray's, radians 0..pi. */
export interface Hit {
  readonly out: number;
  readonly angle: number;
}

/**
 * Crossings of the boundary with the ray from a point along a unit vector, nearest first. Schoolbook intersections;
 * where two edges meet on the ray they count once.
 */
export function hits(
  region: Region,
  [px, py]: readonly [number, number],
  [dx, dy]: readonly [number, number],
): Hit[] {
  const found: Hit[] = [];
  const note = (out: number, tx: number, ty: number): void => {
    if (out <= 0) return;
    const angle = Math.atan2(dx * ty - dy * tx, dx * tx + dy * ty);
    found.push({ out, angle: ((angle % Math.PI) + Math.PI) % Math.PI });
  };
  for (const e of region.contours.flat()) {
    if (e.r === 0) {
      const [ex, ey] = [e.x1 - e.x0, e.y1 - e.y0];
      const det = ex * dy - ey * dx;
      const long = Math.hypot(ex, ey);
      if (Math.abs(det) < 1e-9 * long) continue;
      const along = ((px - e.x0) * dy - (py - e.y0) * dx) / det;
      if (along < -HAIR / long || along > 1 + HAIR / long) continue;
      note((e.x0 + along * ex - px) * dx + (e.y0 + along * ey - py) * dy, ex, ey);
      continue;
    }
    const [mx, my] = [e.cx - px, e.cy - py];
    const b = mx * dx + my * dy;
    const off = mx * mx + my * my - b * b;
    if (off > e.r * e.r) continue;
    for (const t of [b - Math.sqrt(e.r * e.r - off), b + Math.sqrt(e.r * e.r - off)]) {
      const [ux, uy] = [px + t * dx - e.cx, py + t * dy - e.cy];
      if (onArc(e, ux, uy)) note(t, -uy, ux);
    }
  }
  found.sort((a, b) => a.out - b.out);
  return found.filter((h, i) => i === 0 || h.out - found[i - 1]!.out > 1e-5);
}

const HAIR = 1e-7;

/** Is the direction (ux, uy) from an arc's centre between its ends? */
function onArc(e: Edge, ux: number, uy: number): boolean {
  const turn = (x: number, y: number): number => {
    const a = Math.atan2(y, x) - Math.atan2(e.y0 - e.cy, e.x0 - e.cx);
    const forward = e.r > 0 ? a : -a;
    return ((forward % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  };
  const slack = HAIR / Math.abs(e.r);
  const at = turn(ux, uy);
  return at <= turn(e.x1 - e.cx, e.y1 - e.cy) + slack || at >= 2 * Math.PI - slack;
}

/**
 * The share of random points of a box at which a region and its image under `move` disagree; at least the true share
 * when that is over `most`, where counting stops.
 */
export function disagreement(
  region: Region,
  [x0, y0, x1, y1]: readonly [number, number, number, number],
  move: (x: number, y: number) => readonly [number, number],
  points = 1500,
  most = 1,
): number {
  let state = 7;
  const next = (): number => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  let apart = 0;
  for (let i = 0; i < points; i++) {
    const [x, y] = [x0 + (x1 - x0) * next(), y0 + (y1 - y0) * next()];
    if (contains(region, x, y) !== contains(region, ...move(x, y))) apart++;
    if (apart > most * points) break;
  }
  return apart / points;
}
