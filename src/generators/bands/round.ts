import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import { largestCircle } from '../middle.js';
import { num } from '../values.js';
import { noRoom, type Room, repeatsOn } from './room.js';
import type { Track } from './track.js';
import { roundTrack } from './tracks.js';

/** A track round a circle or ring, its outer edge `inset` inside the margin; it starts at the bottom. */
export function ringTrack(values: Values, outline: Outline, room: Room): Track {
  const circle = largestCircle(outline.inner);
  const inset = num(values, 'inset');
  const radius = circle.radius - inset - room.outer;
  if (radius - room.outer < circle.bore + 1e-9 || radius <= room.outer)
    throw noRoom(2 * room.outer, circle.radius - inset - circle.bore);
  const length = 2 * Math.PI * radius;
  const repeats = repeatsOn(length, 1 - (room.depth ?? room.half) / radius, room);
  return roundTrack(
    'closed',
    { centre: [circle.x, circle.y], radius, from: -Math.PI / 2, sense: 1 },
    repeats,
    length / repeats,
  );
}
