import { polygon, type Region } from '../../geometry/region.js';
import { atan } from '../../geometry/trig.js';
import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import { bad, ceil, floor, mm, num } from '../values.js';
import { type Laid, noRoom, type Room, repeatsOn, unwarped } from './room.js';
import type { Track } from './track.js';
import { levelTrack, roundTrack, type Sides, straightTrack } from './tracks.js';

/** A stave nearer to parallel sides than this (mm of width per mm of height) is taken to have them. */
const PARALLEL = 1e-6;

/**
 * A track across a stave from joint to joint. It keeps clear of the margin at top and bottom only: its ends lie on
 * the face's sloping edges, where the neighbouring staves go on.
 */
export function staveTrack(values: Values, outline: Outline, room: Room): Laid {
  const sides = sidesOf(outline);
  const arched = values.run === 'arched' && Math.abs(sides.slope) > PARALLEL;
  return arched
    ? unwarped(archTrack(values, outline, room, sides))
    : acrossStave(values, outline, room, sides);
}

function sidesOf({ sizes }: Outline): Sides {
  const { bottom, top, height } = sizes;
  return { middle: (bottom! + top!) / 4, slope: (top! - bottom!) / 2 / height! };
}

/**
 * Straight across. Where the stave's width changes, the band is drawn as on parallel sides and then stretched with the
 * width, gaps, rounded ends and all: so what meets the one joint meets the other at the same places.
 */
function acrossStave(values: Values, outline: Outline, room: Room, sides: Sides): Laid {
  const { low, high } = limits(values, outline);
  const level = levelIn(values, outline, low + room.outer, high - room.outer, 2 * room.outer);
  const half = sides.middle + sides.slope * level;
  const narrow =
    sides.middle + Math.min(sides.slope * (level - room.half), sides.slope * (level + room.half));
  const repeats = repeatsOn(2 * half, Math.max(narrow / half, 1e-3), room);
  const repeat = (2 * half) / repeats;
  if (Math.abs(sides.slope) <= PARALLEL)
    return unwarped(straightTrack('joint', [-half, level], 0, repeats, repeat));
  return {
    track: straightTrack('joint', [0, 0], 0, repeats, repeat),
    warp: levelTrack(sides, level, repeats, repeat),
    share: smallest(narrow / half, sides.slope),
  };
}

/**
 * The least share of its width that a strap keeps in a band of this half height, mm: a level band is stretched with the
 * width of its stave, so it is squeezed where that is narrower, and sheared towards the joints. 1 for any other band.
 */
export function leastShare(values: Values, outline: Outline, half: number): number {
  if (outline.shape !== 'stave' || values.run !== 'level' || values.across === true) return 1;
  const { middle, slope } = sidesOf(outline);
  const asked = num(values, 'level');
  const wide = middle + slope * (asked === 0 ? 0 : outline.box.minY + asked);
  // On a stave that has no room for the band, laying the band says so.
  return smallest(Math.max(0.2, 1 - (Math.abs(slope) * half) / wide), slope);
}

/** The smaller singular value of [[a, b], [0, 1]]: the least that a width shrinks to under the map. */
function smallest(a: number, b: number): number {
  const root = (x: number): number => Math.sqrt(x * x + b * b);
  return (root(a + 1) - root(a - 1)) / 2;
}

/** Along the circle about the point where the joints' lines meet. */
function archTrack(values: Values, outline: Outline, room: Room, { middle, slope }: Sides): Track {
  const { low, high } = limits(values, outline);
  const apex = -middle / slope;
  // Half the angle between the joints, and its cosine: at the joints the band lies r (1 - cosine) off its middle.
  const half = atan(Math.abs(slope));
  const cosine = 1 / Math.sqrt(1 + slope * slope);
  const up = slope > 0 ? 1 : -1;
  // The nearer edge of the band comes nearest to its margin at the joints, the farther edge in the middle.
  const near = Math.abs((slope > 0 ? low : high) - apex) / cosine + room.outer;
  const far = Math.abs((slope > 0 ? high : low) - apex) - room.outer;
  const [from, to] = up > 0 ? [apex + near, apex + far] : [apex - far, apex - near];
  const level = levelIn(values, outline, from, to, 2 * room.outer);
  const radius = Math.abs(level - apex);
  const length = 2 * half * radius;
  const repeats = repeatsOn(length, 1 - (room.depth ?? room.half) / radius, room);
  const round = {
    centre: [0, apex],
    radius,
    from: (up * Math.PI) / 2 + up * half,
    sense: up > 0 ? -1 : 1,
  } as const;
  return roundTrack('joint', round, repeats, length / repeats);
}

/** The lowest and highest that the band may reach, mm from the middle of the outline's box. */
function limits(values: Values, { box, sizes }: Outline): { low: number; high: number } {
  const inset = num(values, 'inset');
  return { low: box.minY + sizes.margin! + inset, high: box.maxY - sizes.margin! - inset };
}

/** The level of the band's middle, which must lie in from..to; half way when the user leaves it open. */
function levelIn(values: Values, { box }: Outline, from: number, to: number, height: number): number {
  if (to < from) throw noRoom(height, height - (from - to));
  const asked = num(values, 'level');
  if (asked === 0) return (from + to) / 2;
  const level = box.minY + asked;
  if (level < from - 1e-9 || level > to + 1e-9)
    throw bad(
      'level',
      `${mm(asked)} brings the band over the margin; use ${mm(ceil(from - box.minY))} to ${mm(floor(to - box.minY))}, or 0 for half way up`,
    );
  return level;
}

/** The face made wider by `over` mm past both joints, and higher without end: what a band through them is cut off by. */
export function staveWindow(outline: Outline, over: number): Region {
  const { middle, slope } = sidesOf(outline);
  const { minY, maxY } = outline.box;
  const wider = over * Math.sqrt(1 + slope * slope);
  const far = (maxY - minY) * 0.1;
  const corners = [minY - far, maxY + far].map((y) => [middle + slope * y + wider, y] as const);
  return {
    contours: [
      polygon([
        [-corners[0]![0], corners[0]![1]],
        [corners[0]![0], corners[0]![1]],
        [corners[1]![0], corners[1]![1]],
        [-corners[1]![0], corners[1]![1]],
      ]),
    ],
  };
}
