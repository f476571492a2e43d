import type { Safe } from '../cutter/safe.js';
import { comeNear, Indexed } from '../geometry/near.js';

/** Rounded corners and opened gaps keep 2r to this much, mm. */
const ROUNDING = 1e-3;

/** For each inlay the earlier ones that it overlaps or comes nearer to than 2r. */
export function cutInto(safes: readonly Safe[], r: number): number[][] {
  const bodies = safes.map((s) => new Indexed(s.region));
  return bodies.map((b, k) =>
    bodies.slice(0, k).flatMap((a, j) => (comeNear(a, b, 2 * r - ROUNDING) ? [j] : [])),
  );
}
