import { readDxf } from '../../../src/generators/drawing/dxf/read-dxf.js';
import { AS_DRAWN, type ReadAs } from '../../../src/generators/drawing/outlines/options.js';
import type { Repair } from '../../../src/generators/drawing/outlines/repair.js';
import type { Drawing } from '../../../src/generators/drawing/read-svg.js';
import type { Region } from '../../../src/geometry/region.js';
import { BadInput, Refusal } from '../../../src/schema/fault.js';

type Pair = readonly [code: number, value: number | string];

/** An entity from group codes and values. */
export function entity(kind: string, ...pairs: readonly Pair[]): string {
  return [[0, kind] as Pair, ...pairs].map(([c, v]) => `${c}\n${v}\n`).join('');
}

export function lineEntity(x0: number, y0: number, x1: number, y1: number, layer = '0'): string {
  return entity('LINE', [8, layer], [10, x0], [20, y0], [11, x1], [21, y1]);
}

/** A chain of LINEs from point to point. */
export function lines(points: readonly (readonly [number, number])[]): string {
  return points
    .slice(1)
    .map(([x, y], i) => lineEntity(points[i][0], points[i][1], x, y))
    .join('');
}

export function arcEntity(
  x: number,
  y: number,
  r: number,
  from: number,
  to: number,
  ...more: Pair[]
): string {
  return entity('ARC', [8, '0'], [10, x], [20, y], [40, r], [50, from], [51, to], ...more);
}

export function circleEntity(x: number, y: number, r: number, layer = '0', ...more: Pair[]): string {
  return entity('CIRCLE', [8, layer], [10, x], [20, y], [40, r], ...more);
}

/** A light polyline by x, y and bulge. */
export function poly(
  corners: readonly (readonly [number, number, number?])[],
  closed = true,
  ...more: readonly Pair[]
): string {
  const list = corners.flatMap(([x, y, b]): Pair[] => [[10, x], [20, y], ...(b ? [[42, b] as Pair] : [])]);
  return entity('LWPOLYLINE', [8, '0'], [90, corners.length], [70, closed ? 1 : 0], ...more, ...list);
}

export function rectangle(x: number, y: number, w: number, h: number): string {
  return poly([
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ]);
}

/** A DXF of some entities in mm, and of blocks and layers where given. */
export function dxf(
  entities: string,
  { blocks = '', layers = '', header = '9\n$INSUNITS\n70\n4\n' } = {},
): string {
  const section = (name: string, inside: string): string => `0\nSECTION\n2\n${name}\n${inside}0\nENDSEC\n`;
  const table = layers === '' ? '' : `0\nTABLE\n2\nLAYER\n70\n9\n${layers}0\nENDTAB\n`;
  return `${section('HEADER', header)}${section('TABLES', table)}${section('BLOCKS', blocks)}${section('ENTITIES', entities)}0\nEOF\n`;
}

export function layer(name: string, flags = 0, colour = 7): string {
  return entity('LAYER', [2, name], [70, flags], [62, colour], [6, 'CONTINUOUS']);
}

export function block(name: string, x: number, y: number, inside: string): string {
  return `${entity('BLOCK', [8, '0'], [2, name], [70, 0], [10, x], [20, y])}${inside}${entity('ENDBLK')}`;
}

export function insert(name: string, x: number, y: number, ...more: readonly Pair[]): string {
  return entity('INSERT', [8, '0'], [2, name], [10, x], [20, y], ...more);
}

export function as(change: Partial<ReadAs['tolerances']> & { layer?: string } = {}): ReadAs {
  const { layer: own = '', ...tolerances } = change;
  return { ...AS_DRAWN, layer: own, tolerances: { ...AS_DRAWN.tolerances, ...tolerances } };
}

export function read(text: string, how: ReadAs = AS_DRAWN): Drawing {
  return readDxf(text, 'part.dxf', how);
}

/** What a DXF shows at its own size, as one region about its middle. */
export function region(text: string, how?: ReadAs, scale = 1): Region {
  return {
    contours: read(text, how)
      .figures(scale)
      .flatMap((p) => p.region.contours),
  };
}

export function repairs(text: string, how?: ReadAs): readonly Repair[] {
  return read(text, how).repairs;
}

/** What is said of a drawing; fails when nothing is. */
export function said(text: string, how?: ReadAs, scale = 1): string {
  try {
    read(text, how).figures(scale);
  } catch (e) {
    if (e instanceof BadInput || e instanceof Refusal) return e.message;
    throw e;
  }
  throw new Error('was read without a fault');
}
