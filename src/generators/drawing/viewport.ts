import type { Matrix } from './matrix.js';
import { readNumbers } from './numbers.js';
import { shortened } from './shortened.js';
import { Unreadable } from './unreadable.js';
import type { SvgElement } from './xml.js';

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The `viewBox` of an element; null when it has none. */
export function readViewBox({ attributes }: SvgElement): Rect | null {
  const text = attributes.get('viewBox');
  if (text === undefined) return null;
  const n = readNumbers(text);
  if (n?.length !== 4 || !(n[2]! > 0 && n[3]! > 0))
    throw new Unreadable(`has viewBox="${shortened(text)}"; it needs x, y, and a width and height above 0`);
  return { x: n[0]!, y: n[1]!, width: n[2]!, height: n[3]! };
}

/** The map from a view box onto a viewport, by the element's `preserveAspectRatio` (SVG 2, section 8.6). */
export function viewMatrix(box: Rect, port: Rect, element: SvgElement): Matrix {
  const [align, slice] = aspect(element);
  let sx = port.width / box.width;
  let sy = port.height / box.height;
  if (align === null) return [sx, 0, 0, sy, port.x - box.x * sx, port.y - box.y * sy];
  sx = sy = slice ? Math.max(sx, sy) : Math.min(sx, sy);
  const x = port.x + (port.width - box.width * sx) * align[0] - box.x * sx;
  const y = port.y + (port.height - box.height * sy) * align[1] - box.y * sy;
  return [sx, 0, 0, sy, x, y];
}

const PLACES = { Min: 0, Mid: 0.5, Max: 1 } as const;

type Place = keyof typeof PLACES;

/** Shares of the room left over that go before the box, across and down; null to stretch. */
function aspect({ attributes }: SvgElement): [readonly [number, number] | null, boolean] {
  const text = (attributes.get('preserveAspectRatio') ?? '').trim();
  if (text === '') return [[0.5, 0.5], false];
  if (text.startsWith('none')) return [null, false];
  const found = /^x(Min|Mid|Max)Y(Min|Mid|Max)(?:\s+(meet|slice))?$/.exec(text);
  if (!found) throw new Unreadable(`has preserveAspectRatio="${shortened(text)}", which is not one of SVG's`);
  return [[PLACES[found[1] as Place], PLACES[found[2] as Place]], found[3] === 'slice'];
}
