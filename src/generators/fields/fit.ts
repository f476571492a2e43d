import type { Vector } from '../../geometry/bezier.js';
import { bounds, polygon, type Region } from '../../geometry/region.js';
import { placer } from '../field.js';

/** Where a figure about (0, 0) goes and how many times larger it gets. */
export interface Fitted {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** Found to this share of the size. */
const FINE = 1e-7;

/**
 * The largest copy of a figure, given by a polygon round it (about (0, 0)), that lies in the field, on its middle
 * line; scale 0 when none does. Right for convex fields, where the size has one summit along that line.
 */
export function largestIn(field: Region, figure: readonly Vector[]): Fitted {
  const place = placer(field);
  const box = bounds(field.contours);
  const x = (box.minX + box.maxX) / 2;
  const reach = Math.max(...figure.map((p) => Math.max(Math.abs(p[0]), Math.abs(p[1]))));
  const most = Math.max(box.maxX - box.minX, box.maxY - box.minY) / reach;
  const fits = (y: number, k: number): boolean => {
    const there = polygon(figure.map((p) => [x + k * p[0], y + k * p[1]] as const));
    return place({ contours: [there] }) === 'inside';
  };
  const scaleAt = (y: number): number => {
    let lo = 0;
    let hi = most;
    while (hi - lo > most * FINE) {
      const k = (lo + hi) / 2;
      if (fits(y, k)) lo = k;
      else hi = k;
    }
    return lo;
  };
  // Both by the same halvings: once a size fits in one place alone, that place has the larger one.
  const largerAt = (b: number, a: number): boolean => {
    let lo = 0;
    let hi = most;
    while (hi - lo > most * FINE) {
      const k = (lo + hi) / 2;
      const inA = fits(a, k);
      if (inA !== fits(b, k)) return !inA;
      if (inA) lo = k;
      else hi = k;
    }
    return false;
  };
  const middle = { x, y: (box.minY + box.maxY) / 2 };
  let [low, high] = [box.minY, box.maxY];
  while (high - low > 0.001) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (largerAt(b, a)) low = a;
    else high = b;
  }
  const best = { x, y: (low + high) / 2, scale: scaleAt((low + high) / 2) };
  // The middle of a symmetric field, exactly, when nowhere is better.
  const home = scaleAt(middle.y);
  return home >= best.scale * (1 - 1e-4) ? { ...middle, scale: home } : best;
}
