/**
 * Reference geometry by independent open-source libraries, for tests only: JSTS and GEOS (two ports of the JTS
 * Topology Suite, working in doubles) and Clipper2 (whole numbers). Polygons are lists of rings, each a list of
 * [x, y] without repeating the first point, outer rings counter-clockwise, holes clockwise, millimetres.
 */
import * as clipper from './engines/clipper.mjs';
import * as geos from './engines/geos.mjs';
import * as jsts from './engines/jsts.mjs';
import { signedArea } from './engines/rings.mjs';

export type Ring = [number, number][];
export type Rings = readonly Ring[];
export type EngineName = 'jsts' | 'clipper' | 'geos';

interface Engine {
  offsets(rings: Rings, distances: readonly number[], chord: number): Ring[];
}

const ENGINES: Record<EngineName, Engine> = { jsts, clipper, geos };

/** All points within d of the region (d > 0), or further than -d from its complement (d < 0); arcs to `chord` mm. */
export function offsetBy(engine: EngineName, rings: Rings, d: number, chord: number): Ring[] {
  return rings.length === 0 ? [] : ENGINES[engine].offsets(rings, [d], chord);
}

/** Opening by a disc of radius r: the union of all discs of radius r that fit in the region. */
export function opening(engine: EngineName, rings: Rings, r: number, chord: number): Ring[] {
  return rings.length === 0 ? [] : ENGINES[engine].offsets(rings, [-r, r], chord);
}

/** Closing by a disc of radius r: the complement's opening. */
export function closing(engine: EngineName, rings: Rings, r: number, chord: number): Ring[] {
  return rings.length === 0 ? [] : ENGINES[engine].offsets(rings, [r, -r], chord);
}

/** Opening, then closing: the two steps between them grow by 2r at once, which is the same and errs less. */
export function openingClosing(engine: EngineName, rings: Rings, r: number, chord: number): Ring[] {
  return rings.length === 0 ? [] : ENGINES[engine].offsets(rings, [-r, 2 * r, -r], chord);
}

/** Area of the polygons, holes taken off, mm2. */
export function polygonArea(rings: Rings): number {
  return signedArea(rings);
}

/** Boolean operation by Clipper2, to 1e-6 mm. */
export function combined(
  operation: 'union' | 'intersection' | 'difference' | 'xor',
  a: Rings,
  b: Rings,
): Ring[] {
  return clipper.combined(operation, a, b);
}

/** Area in exactly one of two polygons, mm2. */
export function differenceArea(a: Rings, b: Rings): number {
  return polygonArea(combined('xor', a, b));
}

/** How far two boundaries stray from each other. */
export interface Stray {
  /** The largest distance from a sampled point of either boundary to the other boundary, mm; infinite if one is empty. */
  readonly distance: number;
  /** The point it was found at. */
  readonly at: readonly [number, number];
}

/** Hausdorff distance of two boundaries, each sampled at its vertices and every `step` mm between them. */
export function boundaryDistance(a: Rings, b: Rings, step: number): Stray {
  const forth = worstFrom(a, b, step);
  const back = worstFrom(b, a, step);
  return forth.distance >= back.distance ? forth : back;
}

function worstFrom(a: Rings, b: Rings, step: number): Stray {
  const nearest = distanceMeter(b);
  let worst: Stray = { distance: 0, at: [0, 0] };
  for (const ring of a) {
    ring.forEach(([x0, y0], i) => {
      const [x1, y1] = ring[(i + 1) % ring.length]!;
      const n = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / step));
      for (let k = 0; k < n; k++) {
        const x = x0 + ((x1 - x0) * k) / n;
        const y = y0 + ((y1 - y0) * k) / n;
        const distance = nearest(x, y);
        if (distance > worst.distance) worst = { distance, at: [x, y] };
      }
    });
  }
  return worst;
}

/** A function giving the distance of a point to the rings' boundary: segments in square cells, searched ring by ring. */
function distanceMeter(rings: Rings): (x: number, y: number) => number {
  const cell = 1;
  const cells = new Map<string, [number, number, number, number][]>();
  let reach = 0;
  for (const ring of rings) {
    ring.forEach(([x0, y0], i) => {
      const [x1, y1] = ring[(i + 1) % ring.length]!;
      const n = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / cell));
      for (let k = 0; k < n; k++) {
        const at = (t: number): [number, number] => [x0 + (x1 - x0) * t, y0 + (y1 - y0) * t];
        const [ax, ay] = at(k / n);
        const [bx, by] = at((k + 1) / n);
        const i0 = Math.floor((ax + bx) / 2 / cell);
        const j0 = Math.floor((ay + by) / 2 / cell);
        const key = `${i0},${j0}`;
        const list = cells.get(key);
        if (list) list.push([ax, ay, bx, by]);
        else cells.set(key, [[ax, ay, bx, by]]);
        reach = Math.max(reach, Math.abs(i0), Math.abs(j0));
      }
    });
  }
  return (x, y) => {
    const i0 = Math.floor(x / cell);
    const j0 = Math.floor(y / cell);
    const last = reach + Math.max(Math.abs(i0), Math.abs(j0)) + 1;
    let best = Number.POSITIVE_INFINITY;
    // A piece filed under a cell reaches at most half a cell beyond it, so a find within k - 1/2 cells is the nearest.
    for (let k = 0; k <= last && best > (k - 1.5) * cell; k++) {
      for (let i = i0 - k; i <= i0 + k; i++) {
        const inner = Math.abs(i - i0) < k;
        for (let j = j0 - k; j <= j0 + k; j += inner ? 2 * k : 1) {
          for (const s of cells.get(`${i},${j}`) ?? []) best = Math.min(best, segmentDistance(s, x, y));
        }
      }
    }
    return best;
  };
}

function segmentDistance(s: readonly [number, number, number, number], x: number, y: number): number {
  const dx = s[2] - s[0];
  const dy = s[3] - s[1];
  const l2 = dx * dx + dy * dy;
  const t = l2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - s[0]) * dx + (y - s[1]) * dy) / l2));
  return Math.hypot(x - s[0] - t * dx, y - s[1] - t * dy);
}
