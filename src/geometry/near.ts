import { nearerThan } from './apart.js';
import { meet } from './crossings.js';
import type { Edge } from './edge.js';
import { EdgesIndex } from './edges-index.js';
import { type Box, bounds, type Region, windingNumber } from './region.js';

/** A region made ready to be asked often what comes near it; what takes work is done when it is first asked. */
export class Indexed {
  readonly region: Region;
  readonly box: Box;
  #edges: readonly Edge[] | undefined;
  #index: EdgesIndex | undefined;

  constructor(region: Region) {
    this.region = region;
    this.box = bounds(region.contours);
  }

  get edges(): readonly Edge[] {
    this.#edges ??= this.region.contours.flat();
    return this.#edges;
  }

  /** Over `edges`, by position. */
  get index(): EdgesIndex {
    this.#index ??= new EdgesIndex(this.edges);
    return this.#index;
  }
}

/** Whether two regions overlap, touch or come nearer to each other than a distance, mm. */
export function comeNear(a: Indexed, b: Indexed, distance: number): boolean {
  if (!boxesNear(a.box, b.box, distance)) return false;
  const [few, many] = a.edges.length < b.edges.length ? [a, b] : [b, a];
  for (let i = 0; i < few.edges.length; i++)
    for (const j of many.index.nearEdge(i, distance, few.index)) {
      const [e, f] = [few.edges[i]!, many.edges[j]!];
      if (nearerThan(e, f, distance) || meet(e, f)) return true;
    }
  // With no edges near each other, a contour lies in the other region as a whole or not at all.
  return startsIn(a.region, b.region) || startsIn(b.region, a.region);
}

function boxesNear(a: Box, b: Box, d: number): boolean {
  return a.minX - d <= b.maxX && b.minX - d <= a.maxX && a.minY - d <= b.maxY && b.minY - d <= a.maxY;
}

function startsIn(a: Region, b: Region): boolean {
  return a.contours.some((c) => c.length > 0 && windingNumber(b.contours, c[0]!.x0, c[0]!.y0) > 0);
}
