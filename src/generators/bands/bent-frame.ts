import { contains, distanceToBoundary } from '../../geometry/region.js';
import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import { bad, ceil, floor, mm, num } from '../values.js';
import { bend } from './bend.js';
import { frameSides } from './frame.js';
import { frameTrack } from './frame-track.js';
import { noRoom, type Room, repeatsOn } from './room.js';
import { type Track, trackLength } from './track.js';

/** The inner edge of a bend is left at least this radius, mm: half of what a small cutter needs, for rails and straps. */
const LEAST_INNER = 2;

/** Bends of this many half heights suit most bands. */
const SUITS = 1.9;

/** A track along the sides of a rectangle or polygon that turns the corners in bends. */
export function bentFrame(values: Values, outline: Outline, room: Room): Track {
  let depth = num(values, 'inset') + room.outer;
  for (let attempt = 0; ; attempt++) {
    const track = frameAt(values, outline, room, depth);
    // The outline's own corners may be rounder than the band's.
    const out = pokesOut(track, outline, room.outer);
    if (out === 0 || attempt === 20) return track;
    depth += out;
  }
}

function frameAt(values: Values, outline: Outline, room: Room, depth: number): Track {
  const sides = frameSides(outline, depth);
  if (!sides) throw noRoom(2 * room.outer, (2 * room.outer * 0.999 * depth) / (depth + room.outer));
  const turn = (2 * Math.PI) / sides.length;
  const least = room.outer + LEAST_INNER;
  const shortest = Math.min(...sides.map((s) => s.length));
  const most = (shortest / 2 / bend(turn, 1).setback) * (1 - 1e-6);
  if (most < least) throw noRoom(2 * room.outer, (2 * room.outer * most) / least);
  const asked = num(values, 'bend');
  if (asked !== 0 && (asked < least || asked > most))
    throw bad(
      'bend',
      `${mm(asked)} is out of range here; use ${mm(ceil(least))} to ${mm(floor(most))}, or 0`,
    );
  const radius = asked || Math.min(most, Math.max(least, (room.bends ?? SUITS) * room.half));
  const corner = bend(turn, radius);
  const count = (side: number): number =>
    repeatsOn(side - 2 * corner.setback + corner.length, 1 - (room.depth ?? room.half) / radius, room);
  return frameTrack(sides, radius, [count(sides[0]!.length), count(sides[1]!.length)]);
}

/** How far the outer edge of the band pokes out of the outline's inner edge, mm; 0 for rounding. */
function pokesOut(track: Track, { inner }: Outline, outer: number): number {
  let most = 0;
  const steps = 512;
  for (let i = 0; i < steps; i++) {
    const [x, y] = track.spot((i * trackLength(track)) / steps, -outer).at;
    if (!contains(inner, x, y)) most = Math.max(most, distanceToBoundary(inner, x, y));
  }
  return most < 1e-6 ? 0 : most;
}
