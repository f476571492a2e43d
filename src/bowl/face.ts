import { union } from '../geometry/boolean.js';
import { circle, polygon, type Region } from '../geometry/region.js';
import { cos, sin } from '../geometry/trig.js';
import type { Values } from '../schema/parameter.js';
import type { Profile } from './profile.js';
import { faceAt } from './shell.js';
import { halfAngle, type OnStave, toStave } from './stave.js';
import type { Vessel } from './vessel.js';

/*
 * The face of a stave that its drawings show: the trapezoid between the level of the foot and of the rim, its middle at
 * 0, 0, x to the right and y up as one looks at that face. Seen from the axis the stave is the other way round.
 */

/** The shape and sizes of that face, as an outline's. */
export function outlineOf({ setup, stave, wall }: Vessel): {
  readonly shape: string;
  readonly values: Values;
} {
  if (stave.sides === 1) {
    const { from, to } = wall.outside;
    let widest = 0;
    for (let k = 0; k <= 200; k++)
      widest = Math.max(widest, wall.outside.radius(from + ((to - from) * k) / 200));
    return { shape: 'circle', values: { diameter: 2 * (widest + setup.over) } };
  }
  const { bottom, top, length } = faceAt(stave, 0, setup.height, depthOfFace(setup.face, stave.thickness));
  return { shape: 'stave', values: { bottom, top, height: length } };
}

/** Depth of the drawn face under the outer one. */
function depthOfFace(face: 'outside' | 'inside', thickness: number): number {
  return face === 'outside' ? 0 : thickness;
}

/** A point of the drawn face at a depth under it, in the stave. */
export function fromFace({ setup, stave }: Vessel, u: number, v: number, depth: number): OnStave {
  const inside = setup.face === 'inside';
  const own = inside ? stave.thickness - depth : depth;
  return { x: inside ? -u : u, y: v + middle({ setup, stave }), depth: own };
}

/** The same the other way round: u, v on the drawn face and the depth under it. */
export function toFace(
  { setup, stave }: Vessel,
  { x, y, depth }: OnStave,
): { u: number; v: number; depth: number } {
  const inside = setup.face === 'inside';
  return {
    u: inside ? -x : x,
    v: y - middle({ setup, stave }),
    depth: inside ? stave.thickness - depth : depth,
  };
}

/** Where the drawn face's middle lies along the stave. */
function middle({ setup, stave }: Pick<Vessel, 'setup' | 'stave'>): number {
  if (stave.sides === 1) return 0;
  const [c, s] = [cos(stave.slope), sin(stave.slope)];
  const depth = depthOfFace(setup.face, stave.thickness);
  const at = (z: number): number => (z - depth * c) / s;
  return (at(0) + at(setup.height)) / 2;
}

/** Points of a side of what survives: chords of it stand off by hundredths. */
const POINTS = 48;

/**
 * The part of the drawn face under which the finished wall has its outside or its inside on this stave: what lies beyond
 * is sawn or carved away. `past`: mm by which it is widened at the joints, for what runs on over them.
 */
export function surviving(vessel: Vessel, past: number): Region {
  const { stave, wall } = vessel;
  if (stave.sides === 1) {
    const { values } = outlineOf(vessel);
    return { contours: [circle(0, 0, Number(values.diameter) / 2)] };
  }
  const half = halfAngle(stave);
  const of = ({ from, to, radius }: Profile): Region => {
    const at = (angle: number, z: number): { u: number; v: number } =>
      toFace(vessel, toStave(stave, radius(z), angle, z));
    // The stave is alike on both sides, so one is worked out: to the right, whichever face is drawn.
    const side = steps(from, to).map((z): [number, number] => {
      const { u, v } = at(half, z);
      return [Math.abs(u) + past, v];
    });
    const end = (z: number): [number, number][] =>
      steps(half, -half)
        .slice(1, -1)
        .map((angle) => {
          const { u, v } = at(angle, z);
          return [angle < 0 ? -Math.abs(u) : Math.abs(u), v];
        });
    const left = side.map(([u, v]): [number, number] => [-u, v]).reverse();
    return { contours: [polygon([...side, ...end(to), ...left, ...end(from).reverse()])] };
  };
  return union([of(wall.outside), of(wall.inside)]);
}

function steps(from: number, to: number): number[] {
  return Array.from({ length: POINTS + 1 }, (_, k) => from + ((to - from) * k) / POINTS);
}
