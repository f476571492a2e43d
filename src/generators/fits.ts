import { contains, flatten, type Region } from '../geometry/region.js';

/** Chords this close to curves tell whether they fit, mm. */
const CHORD = 0.02;

/** The largest scale about the origin, up to 1, at which the regions lie in the field; 0 when there is none. */
export function shareThatFits(regions: readonly Region[], field: Region): number {
  const points = regions.flatMap((l) => l.contours.flatMap((c) => flatten(c, CHORD)));
  const edge = field.contours.flatMap((c) => flatten(c, CHORD));
  const fits = (share: number): boolean =>
    points.every(([x, y]) => contains(field, x * share, y * share)) &&
    // A narrow opening of the field may lie wholly inside a region.
    !regions.some((l) => edge.some(([x, y]) => contains(l, x / share, y / share)));
  if (fits(1)) return 1;
  let lo = 0;
  let hi = 1;
  for (let k = 0; k < 16; k++) {
    const mid = (lo + hi) / 2;
    if (fits(mid)) lo = mid;
    else hi = mid;
  }
  return lo;
}
