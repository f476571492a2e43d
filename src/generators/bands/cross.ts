import { contains } from '../../geometry/region.js';
import type { Outline } from '../../outline/outline.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import { mm, num } from '../values.js';
import { type Room, repeatsOn } from './room.js';
import type { Track } from './track.js';
import { straightTrack } from './tracks.js';

/** A straight track across the middle of an outline, as long as the band fits in there. */
export function crossTrack(values: Values, outline: Outline, room: Room): Track {
  const length = 2 * (reach(outline, room.outer) - num(values, 'inset') - (room.caps ?? 0));
  const repeats = repeatsOn(Math.max(length, 0), 1, room);
  return straightTrack('free', [-length / 2, 0], 0, repeats, length / repeats);
}

/** How far a band of this half height, mm, reaches to either side of (0, 0) within the outline's inner edge. */
function reach({ inner, box }: Outline, half: number): number {
  if (!contains(inner, 0, 0))
    throw new Refusal('no-room', 'pattern.across: the outline is open in the middle; leave across off');
  const fits = (x: number): boolean =>
    [-1, 1].every((i) => contains(inner, i * x, half) && contains(inner, i * x, -half));
  if (!fits(0))
    throw new Refusal(
      'no-room',
      `pattern.across: the band is ${mm(2 * half)} high, which is more than the outline holds; use narrower straps and gaps or fewer rails`,
    );
  let lo = 0;
  let hi = box.maxX;
  while (hi - lo > 1e-7) {
    const mid = (lo + hi) / 2;
    if (fits(mid)) lo = mid;
    else hi = mid;
  }
  return lo;
}
