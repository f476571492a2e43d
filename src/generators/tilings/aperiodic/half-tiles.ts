import { cos, sin } from '../../../geometry/trig.js';
import type { Point } from '../tile.js';
import type { PatchTile } from './patch.js';

/**
 * Half a Penrose tile, a triangle of edges 1 and (1 + sqrt 5) / 2. Penrose's tiles are cut along their mirror lines,
 * and every half divides into smaller halves of the same kinds (Grunbaum and Shephard, Tilings and Patterns, 1987,
 * 10.3, from memory). Corners a, b, c by kind:
 * - thick, thin: a is the corner between the two edges of the rhomb, b and c are on the line of the cut;
 * - kite: a the sharp corner on the axis, b the corner beside it, c the blunt corner on the axis;
 * - dart: a the sharp corner on the axis, b the corner beside it, c the corner on the axis that turns in.
 */
export interface Half {
  readonly kind: 'thick' | 'thin' | 'kite' | 'dart';
  readonly a: Point;
  readonly b: Point;
  readonly c: Point;
}

export type PenroseStyle = 'rhombs' | 'kites';

export const PHI = (1 + Math.sqrt(5)) / 2;

/** The halves, smaller by the golden ratio, that a half divides into. */
export function divided({ kind, a, b, c }: Half): Half[] {
  switch (kind) {
    case 'thin': {
      const p = between(a, b, 1 / PHI);
      return [half('thin', c, p, b), half('thick', p, c, a)];
    }
    case 'thick': {
      const p = between(b, a, 1 / PHI);
      const q = between(b, c, 1 / PHI);
      return [half('thick', q, c, a), half('thick', p, q, b), half('thin', q, p, a)];
    }
    case 'kite': {
      const p = between(b, a, 1 / PHI);
      const q = between(a, c, 1 / PHI);
      return [half('kite', b, c, q), half('kite', b, p, q), half('dart', a, q, p)];
    }
    case 'dart': {
      const p = between(a, b, 1 / PHI);
      return [half('kite', a, p, c), half('dart', b, c, p)];
    }
  }
}

/** Ten halves round (0, 0), each edge there `edge` long: a decagon with five mirror lines. */
export function wheel(style: PenroseStyle, edge: number): Half[] {
  const rim = Array.from({ length: 10 }, (_, i): Point => {
    const a = Math.PI / 2 + (i * Math.PI) / 5;
    return [edge * cos(a), edge * sin(a)];
  });
  return rim.map((p, i) => {
    const q = rim[(i + 1) % 10]!;
    const [b, c] = i % 2 === 0 ? [p, q] : [q, p];
    return half(style === 'rhombs' ? 'thin' : 'kite', [0, 0], b, c);
  });
}

/**
 * The whole tile of a half, from the half that runs counter-clockwise; null from the other one, so that each tile
 * comes once.
 */
export function wholeTile({ kind, a, b, c }: Half): PatchTile | null {
  if ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) < 0) return null;
  if (kind === 'thick' || kind === 'thin')
    return { kind, points: [a, b, [b[0] + c[0] - a[0], b[1] + c[1] - a[1]], c] };
  return { kind, points: [a, b, c, mirrored(b, a, c)] };
}

function half(kind: Half['kind'], a: Point, b: Point, c: Point): Half {
  return { kind, a, b, c };
}

function between(p: Point, q: Point, share: number): Point {
  return [p[0] + (q[0] - p[0]) * share, p[1] + (q[1] - p[1]) * share];
}

/** The mirror image of p in the line through a and c. */
function mirrored(p: Point, a: Point, c: Point): Point {
  const dx = c[0] - a[0];
  const dy = c[1] - a[1];
  const t = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy);
  return [2 * (a[0] + t * dx) - p[0], 2 * (a[1] + t * dy) - p[1]];
}
