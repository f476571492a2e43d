import type { Vector } from '../../geometry/bezier.js';
import { line } from '../../geometry/edge.js';
import { cos, sin } from '../../geometry/trig.js';
import { arcAbout, type Track } from './track.js';

/** A straight track from a point, running along the angle `turn`, radians. */
export function straightTrack(
  ends: Track['ends'],
  start: Vector,
  turn: number,
  repeats: number,
  repeat: number,
): Track {
  const along: Vector = [cos(turn), sin(turn)];
  const across: Vector = [-along[1], along[0]];
  const at = (s: number, t: number): Vector => [
    start[0] + s * along[0] + t * across[0],
    start[1] + s * along[1] + t * across[1],
  ];
  return {
    ends,
    repeats,
    repeat,
    spot: (s, t) => ({ at: at(s, t), along, across }),
    along: (t, s0, s1) => [line(...at(s0, t), ...at(s1, t))],
  };
}

/** A circle or a part of one. */
export interface Round {
  readonly centre: Vector;
  readonly radius: number;
  /** Direction from the centre to the start, radians. */
  readonly from: number;
  /** 1 counter-clockwise (left of the way is inwards), -1 clockwise. */
  readonly sense: 1 | -1;
}

/** A track along a circle: lines along it are arcs about the centre, lines across it point there. */
export function roundTrack(
  ends: Track['ends'],
  { centre, radius, from, sense }: Round,
  repeats: number,
  repeat: number,
): Track {
  const at = (s: number, t: number): Vector => {
    const a = from + (sense * s) / radius;
    const r = radius - sense * t;
    return [centre[0] + r * cos(a), centre[1] + r * sin(a)];
  };
  return {
    ends,
    repeats,
    repeat,
    spot(s, t) {
      const a = from + (sense * s) / radius;
      const [x, y] = [cos(a), sin(a)];
      const r = radius - sense * t;
      const stretch = (sense * r) / radius;
      return {
        at: [centre[0] + r * x, centre[1] + r * y],
        along: [-y * stretch, x * stretch],
        across: [-sense * x, -sense * y],
      };
    },
    along: (t, s0, s1) => arcAbout(centre, at(s0, t), at(s1, t), (sense * (s1 - s0)) / radius),
  };
}

/** Half the width at a height, in a shape with straight sides: half(y) = middle + slope * y. */
export interface Sides {
  readonly middle: number;
  readonly slope: number;
}

/** A level track from one side of a stave to the other, stretched with the stave's width at every height. */
export function levelTrack(sides: Sides, level: number, repeats: number, repeat: number): Track {
  const half = (t: number): number => sides.middle + sides.slope * (level + t);
  const length = repeats * repeat;
  const share = (s: number): number => (2 * s) / length - 1;
  const at = (s: number, t: number): Vector => [share(s) * half(t), level + t];
  return {
    ends: 'joint',
    repeats,
    repeat,
    spot: (s, t) => ({
      at: at(s, t),
      along: [(2 * half(t)) / length, 0],
      across: [share(s) * sides.slope, 1],
    }),
    along: (t, s0, s1) => [line(...at(s0, t), ...at(s1, t))],
  };
}
