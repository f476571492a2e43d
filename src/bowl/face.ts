import { cos, sin } from '../geometry/trig.js';
import type { Values } from '../schema/parameter.js';
import { faceAt } from './shell.js';
import type { OnStave } from './stave.js';
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
