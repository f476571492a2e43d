import type { Vector } from '../../geometry/bezier.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Base } from './layout.js';

/** Radii under this are no base line, mm. */
const LEAST_RADIUS = 0.5;

/** A straight base line through a point along a direction, radians; more lines go to its right-hand side. */
export function straightBase([x, y]: Vector, turn: number, middles: readonly number[] = [0]): Base {
  const [c, s] = [cos(turn), sin(turn)];
  return {
    curvature: () => 0,
    pose: (down, at) => ({ x: x + at * c + down * s, y: y + at * s - down * c, turn }),
    middles,
    round: 0,
  };
}

/** A circle that letters stand on: outside it, read clockwise, or inside it, read counter-clockwise. */
export interface Circle {
  readonly centre: Vector;
  readonly radius: number;
  /** Direction from the centre to the middle of the text, radians. */
  readonly middle: number;
  readonly side: 'outside' | 'inside';
}

/**
 * A base line along a circle; more lines lie on smaller circles when letters stand outside, on larger ones inside.
 *
 * @param length of the circle that the text may take, mm; the whole of it unless said
 */
export function circleBase({ centre, radius, middle, side }: Circle, repeats: number, length = 0): Base {
  const sense = side === 'outside' ? -1 : 1;
  const radiusAt = (down: number): number => radius + sense * down;
  const whole = length > 0 ? length : 2 * Math.PI * radius;
  const first = length > 0 ? -whole / 2 + whole / repeats / 2 : 0;
  return {
    curvature(down) {
      const r = radiusAt(down);
      return r < LEAST_RADIUS ? null : sense / r;
    },
    pose(down, s) {
      const r = radiusAt(down);
      const angle = middle + (sense * s) / r;
      return {
        x: centre[0] + r * cos(angle),
        y: centre[1] + r * sin(angle),
        turn: angle + (sense * Math.PI) / 2,
      };
    },
    middles: Array.from({ length: repeats }, (_, k) => first + (k * whole) / repeats),
    round: length > 0 ? 0 : whole,
  };
}
