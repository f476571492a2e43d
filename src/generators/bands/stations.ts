import type { Vector } from '../../geometry/bezier.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import { type Band, bandOn, layBand } from './band.js';
import { frameSides, hasCorners } from './frame.js';
import type { FrameSide } from './frame-track.js';
import { noRoom, repeatsOn, unwarped, type Wish } from './room.js';
import { frameDepth } from './sharp-frame.js';
import { straightTrack } from './tracks.js';

/** A place for one figure of a band: its middle, the direction of the band there, and the room along it, mm. */
export interface Station {
  readonly at: Vector;
  readonly heading: Vector;
  readonly room: number;
  readonly corner: boolean;
}

/**
 * Places for figures that are not bent: on a frame one at every corner and a whole number along each side, elsewhere
 * one a repeat, half a repeat from joints and ends.
 */
export function stations(
  values: Values,
  outline: Outline,
  wish: Wish,
  long: (room: number) => number,
): { band: Band; places: Station[] } {
  if (!hasCorners(outline) || values.across === true) {
    const band = layBand(values, outline, wish);
    return { band, places: along(band, long) };
  }
  const sides = middleSides(values, outline, wish.half);
  const places = sides.flatMap(({ start, heading, length }) => {
    const n = repeatsOn(length, 1, wish);
    const room = length / n;
    const way: Vector = [cos(heading), sin(heading)];
    return Array.from({ length: n }, (_, k): Station => {
      const at: Vector = [start[0] + way[0] * k * room, start[1] + way[1] * k * room];
      return { at, heading: way, room, corner: k === 0 };
    });
  });
  // Nothing is cut off on a frame: any closed track will do.
  return {
    band: bandOn(unwarped(straightTrack('closed', [0, 0], 0, 1, 1)), wish.half, 0, outline),
    places,
  };
}

/** The sides that a band's middle follows round a frame with sharp corners. */
export function middleSides(values: Values, outline: Outline, half: number): FrameSide[] {
  const depth = frameDepth(values, outline) + half;
  const sides = frameSides(outline, depth);
  if (!sides || !frameSides(outline, depth + half)) throw noRoom(2 * half, depth);
  return sides;
}

/**
 * One place a repeat, half a repeat from where the band starts. On a bend a figure that reaches `long` mm to either side
 * of its middle stands so much further in that its ends keep to the band.
 */
export function along({ track, first, last }: Band, long: (room: number) => number, offset = 0.5): Station[] {
  const out: Station[] = [];
  // As many places beyond one joint as beyond the other.
  const end = offset === 0 && track.ends === 'joint' ? last + 1 : last;
  for (let k = first; k <= end; k++) {
    const s = (k + offset) * track.repeat;
    const way = track.spot(s, 0).along;
    const l = Math.sqrt(way[0] * way[0] + way[1] * way[1]);
    const beside = track.spot(s, 1).along;
    // A mm to the left the way is shorter by the curvature.
    const curvature = 1 - Math.sqrt(beside[0] * beside[0] + beside[1] * beside[1]) / l;
    const reach = long(track.repeat * l);
    const { at } = track.spot(s, sagitta(reach, curvature));
    out.push({ at, heading: [way[0] / l, way[1] / l], room: track.repeat * l, corner: false });
  }
  return out;
}

/** How far the circle of a curvature (1/mm) leaves its tangent within `reach` mm, to the side it bends to. */
function sagitta(reach: number, curvature: number): number {
  return (
    (curvature * reach * reach) / (1 + Math.sqrt(Math.max(0, 1 - curvature * curvature * reach * reach)))
  );
}
