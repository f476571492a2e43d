import { type Edge, edgeLength, parameterEnd, pointAt, sweep } from '../../geometry/edge.js';
import { EdgesIndex } from '../../geometry/edges-index.js';
import { type Nearest, nearestPoints } from '../../geometry/nearest.js';
import { type Contour, contains, distanceToEdge, parts, type Region } from '../../geometry/region.js';
import { tan } from '../../geometry/trig.js';
import type { Outline } from '../../outline/outline.js';

/** The thinnest wall of field between two pocket parts, or between one and the edge of the face, mm. */
export interface FieldWall {
  readonly thickness: number;
  /** Its middle. */
  readonly at: readonly [number, number];
  /** How long it stays under 1.5 times that; Infinity when longer than was looked for. */
  readonly length: number;
  readonly beside: 'pocket' | 'edge';
}

/** A wall counts as thin for as long as it is under this many times its least. Our own choice. */
const STILL = 1.5;

/** Contact of two sound parts is never nearer than this, mm: what is belongs to a pocket that runs over the edge. */
const TOUCHING = 1e-6;

const found = new WeakMap<Region, FieldWall | null>();

/**
 * The thinnest wall, or null where there is only one part and it runs over the edge. `enough`: a length beyond which it
 * does not matter how long the wall is, mm. A part that runs over the edge of the face has no wall there, so its
 * distance to the edge is left out.
 */
export function thinnestWall(outline: Outline, pocket: Region, enough: number): FieldWall | null {
  // Findings, numbers and sheet all ask; the answer for one drawing is one.
  const known = found.get(pocket);
  if (known !== undefined) return known;
  const wall = new Walls(outline, pocket).thinnest(enough);
  found.set(pocket, wall);
  return wall;
}

class Walls {
  readonly #edges: Edge[] = [];
  /** The part an edge belongs to; -1 the edge of the face. */
  readonly #part: number[] = [];
  readonly #contour: Contour[] = [];
  readonly #place: number[] = [];
  readonly #over: boolean[] = [];
  readonly #index: EdgesIndex;
  readonly #size: number;

  constructor({ face, box }: Outline, pocket: Region) {
    parts(pocket).forEach((part, i) => {
      this.#over.push(part.some((c) => c.some((e) => !contains(face, e.x0, e.y0))));
      for (const c of part) this.#add(c, i);
    });
    for (const c of face.contours) this.#add(c, -1);
    this.#index = new EdgesIndex(this.#edges);
    this.#size = box.maxX - box.minX + (box.maxY - box.minY);
  }

  #add(contour: Contour, part: number): void {
    contour.forEach((e, k) => {
      this.#edges.push(e);
      this.#part.push(part);
      this.#contour.push(contour);
      this.#place.push(k);
    });
  }

  thinnest(enough: number): FieldWall | null {
    for (let reach = 2; reach < 2 * this.#size; reach *= 2) {
      const best = this.#within(reach);
      if (best) return this.#wall(best, enough);
    }
    return null;
  }

  /** Whether field stands between the two edges' parts. */
  #apart(i: number, j: number): boolean {
    const [p, q] = [this.#part[i]!, this.#part[j]!];
    return p !== q && !(p < 0 && this.#over[q]) && !(q < 0 && this.#over[p]);
  }

  #within(reach: number): { near: Nearest; i: number; j: number } | null {
    const best: { near: Nearest; i: number; j: number }[] = [];
    let least = reach;
    for (let i = 0; i < this.#edges.length && this.#part[i]! >= 0; i++)
      for (const j of this.#index.nearEdge(i, least)) {
        if (j <= i || !this.#apart(i, j)) continue;
        const near = nearestPoints([this.#edges[i]!], [this.#edges[j]!]);
        if (!near || near.distance <= TOUCHING || near.distance > least) continue;
        least = near.distance;
        best[0] = { near, i, j };
      }
    return best[0] ?? null;
  }

  #wall({ near, i, j }: { near: Nearest; i: number; j: number }, enough: number): FieldWall {
    const { p, q, distance } = near;
    const along = (way: 1 | -1): number => this.#thinFor(i, p, way, STILL * distance, enough);
    const length = along(1) + along(-1);
    return {
      thickness: distance,
      at: [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2],
      length: length >= enough ? Number.POSITIVE_INFINITY : Math.max(length, distance),
      beside: this.#part[j] === -1 ? 'edge' : 'pocket',
    };
  }

  /** How far from a point of edge i, one way along its contour, another part stays within `reach`. */
  #thinFor(i: number, from: readonly [number, number], way: 1 | -1, reach: number, enough: number): number {
    const contour = this.#contour[i]!;
    const step = reach / 6;
    let walked = 0;
    let left = from;
    for (let n = 0, k = this.#place[i]!; n <= contour.length && walked < enough; n++) {
      const e = contour[k]!;
      const points = samples(e, step, way);
      // On the first edge only what lies beyond the starting point.
      const begin = n === 0 ? nearestOf(points, from) : 0;
      for (const at of points.slice(begin)) {
        if (!this.#near(i, at, reach)) return walked;
        walked += length(left, at);
        left = at;
        if (walked >= enough) break;
      }
      k = (k + way + contour.length) % contour.length;
    }
    return walked;
  }

  #near(i: number, [x, y]: readonly [number, number], reach: number): boolean {
    return this.#index
      .near({ minX: x, minY: y, maxX: x, maxY: y }, reach)
      .some((j) => this.#apart(i, j) && distanceToEdge(this.#edges[j]!, x, y) <= reach);
  }
}

function samples(e: Edge, step: number, way: 1 | -1): [number, number][] {
  const n = Math.max(1, Math.min(400, Math.ceil(edgeLength(e) / step)));
  const half = Math.abs(sweep(e)) / 2;
  const out = Array.from({ length: n + 1 }, (_, k) =>
    pointAt(e, e.r === 0 ? (k / n) * parameterEnd(e) : tan((k / n) * half)),
  );
  return way === 1 ? out : out.reverse();
}

function nearestOf(points: readonly [number, number][], to: readonly [number, number]): number {
  let best = 0;
  points.forEach((p, k) => {
    if (length(p, to) < length(points[best]!, to)) best = k;
  });
  return best;
}

function length(a: readonly [number, number], b: readonly [number, number]): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  return Math.sqrt(dx * dx + dy * dy);
}
