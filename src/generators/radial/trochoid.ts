import type { Vector } from '../../geometry/bezier.js';
import { closedChain } from '../../geometry/chain.js';
import { type Edge, edgeLength } from '../../geometry/edge.js';
import { curveArcs } from '../../geometry/parametric.js';
import { area, EMPTY, type Region } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { bad, floor, length, mm, num, seed, turn } from '../values.js';
import {
  curveParameters,
  curveRadius,
  curveStrap,
  drawFields,
  greatestCommonDivisor,
} from './closed-curve.js';
import { UP } from './polar.js';
import { drawRim, rimParameters } from './rim.js';
import { drawPiece, size, stageOf } from './stage.js';

export const trochoid: Generator = {
  name: 'trochoid',
  title: 'Trochoid',
  family: 'radial',
  summary:
    'The closed curve that a point of a circle draws as the circle rolls inside or outside a fixed one.',
  parameters: [
    {
      kind: 'choice',
      name: 'rolls',
      meaning: 'Where the circle rolls.',
      say: 'rolled …',
      default: 'outside',
      options: [
        { value: 'inside', meaning: 'inside the fixed one: a hypotrochoid' },
        { value: 'outside', meaning: 'outside the fixed one: an epitrochoid' },
      ],
    },
    {
      kind: 'count',
      name: 'fixed',
      meaning: 'Radius of the fixed circle, in parts of any size.',
      say: 'a fixed circle of … parts',
      default: 6,
      min: 2,
      max: 72,
    },
    {
      kind: 'count',
      name: 'rolling',
      meaning:
        'Radius of the rolling circle, in the same parts; the curve has as many lobes as the fixed one has parts, divided by what both have in common.',
      say: 'a rolling circle of … parts',
      one: 'a rolling circle of … part',
      default: 1,
      min: 1,
      max: 72,
    },
    {
      kind: 'number',
      name: 'arm',
      meaning: "Distance of the drawing point from the rolling circle's middle, as a share of its radius.",
      say: 'the drawing point … radii out',
      default: 3,
      min: 0.05,
      max: 12,
    },
    ...curveParameters('strap'),
    size,
    ...rimParameters(0),
    length('gap', 'Width of the walls between fields and rings.', 'walls … wide', 4.2, 0.2),
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const stage = stageOf(values, outline, pen);
    const outer = drawRim(values, stage.radius, num(values, 'strap') / 2, stage.pen);
    const wheel = wheelOf(values);
    const { least, most } = reach(wheel);
    const scale = curveRadius(values, outer) / most;
    const open = least * scale - (values.style === 'strap' ? num(values, 'strap') / 2 : 0);
    if (stage.bore > 0 && (open < stage.bore || values.style === 'solid'))
      throw bad(
        'arm',
        `the curve would cross the opening of ${mm(2 * stage.bore)} in the outline; use a strap and an arm or rolling circle that leaves more than the ${mm(2 * Math.max(0, open))} it does`,
      );
    const path = trochoidPath(wheel, scale, num(values, 'turn') + UP);
    if (values.style === 'strap')
      drawPiece(stage.pen, 'strap', strapAlong(path, num(values, 'strap'), least * scale, most * scale));
    else drawFields(values, path, stage.pen);
  },
};

/** A strap that could cover its ring this often leaves no field worth the time to look for it. */
const FULL = 8;

/** Share of its length by its width that a strap covers at least where its turns do not run over each other. */
const APART = 0.9;

/** The strap along the curve. Refused when its turns run together into a solid ring. `from`..`to`: its reach, mm. */
function strapAlong(path: readonly Edge[], strap: number, from: number, to: number): Region {
  const length = path.reduce((sum, e) => sum + edgeLength(e), 0);
  const room = Math.PI * (to * to - from * from);
  const region = length * strap > FULL * room ? EMPTY : curveStrap(path, strap);
  const holes = region.contours.length - 1;
  if (holes > 1 || (holes >= 0 && area(region) > APART * length * strap)) return region;
  // Straps that could cover half the ring left fields with every pair of circles tried.
  const half = floor(room / (2 * length));
  const thinner = half >= 0.2 ? `use ${mm(half)} at most, or circles` : 'use circles';
  throw bad('strap', `${mm(strap)} leaves no field between the turns; ${thinner} that close in fewer turns`);
}

/** A wheel of radius `wheel` about a ring of radius `ring`, in any unit; the point `arm` from the wheel's middle. */
export interface Wheel {
  readonly ring: number;
  readonly wheel: number;
  readonly arm: number;
  readonly inside: boolean;
}

function wheelOf(values: Values): Wheel {
  const ring = num(values, 'fixed');
  const wheel = num(values, 'rolling');
  const inside = values.rolls === 'inside';
  if (inside && wheel >= ring)
    throw bad('rolling', `a circle of ${wheel} does not roll inside one of ${ring}; use ${ring - 1} at most`);
  return { ring, wheel, arm: num(values, 'arm') * wheel, inside };
}

/** Distance of the wheel's middle from the ring's. */
function carried({ ring, wheel, inside }: Wheel): number {
  return inside ? ring - wheel : ring + wheel;
}

/** Least and greatest distance of the curve from the middle. */
export function reach(w: Wheel): { least: number; most: number } {
  return { least: Math.abs(carried(w) - w.arm), most: carried(w) + w.arm };
}

/** Times that the wheel goes round before the curve closes, and the lobes that it has then. */
export function closure({ ring, wheel }: Wheel): { turns: number; lobes: number } {
  const common = greatestCommonDivisor(ring, wheel);
  return { turns: wheel / common, lobes: ring / common };
}

/** The whole curve, `scale` mm to the unit, an outermost point in direction `first`. */
export function trochoidPath(w: Wheel, scale: number, first: number): Edge[] {
  const { turns, lobes } = closure(w);
  const out = carried(w);
  // Inside, the point turns back about the wheel's middle while that goes round; outside it turns on.
  const spin = (w.inside ? -1 : 1) * (out / w.wheel);
  const lobe = (2 * Math.PI * turns) / lobes;
  // A cusp, where the point stands still, lies half way between two outermost points.
  const still = Math.abs(w.arm - w.wheel) < 1e-9 * w.wheel;
  const point = (t: number): Vector => {
    const u = t + first;
    const v = spin * t + first;
    return [scale * (out * cos(u) + w.arm * cos(v)), scale * (out * sin(u) + w.arm * sin(v))];
  };
  const along = (t: number): Vector => {
    const u = t + first;
    const v = spin * t + first;
    return [-out * sin(u) - w.arm * spin * sin(v), out * cos(u) + w.arm * spin * cos(v)];
  };
  const edges: Edge[] = [];
  const pieces = 4 + 2 * Math.ceil(turns / lobes + 1);
  const halfLobes = 2 * lobes;
  for (let i = 0; i < halfLobes; i++) {
    const t0 = (i * lobe) / 2;
    const t1 = ((i + 1) * lobe) / 2;
    const [lo, hi] = still ? [t0 + (t1 - t0) * NEAR, t1 - (t1 - t0) * NEAR] : [t0, t1];
    const curve = { point, tangent: (t: number) => along(Math.min(Math.max(t, lo), hi)) };
    edges.push(...curveArcs(curve, t0, t1, pieces));
  }
  return closedChain(edges);
}

/** Beside a cusp, where the curve has no direction, that of a point this share of half a lobe away stands for it. */
const NEAR = 1e-4;
