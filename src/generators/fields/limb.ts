import type { Vector } from '../../geometry/bezier.js';
import { bulgedContour, type Contour } from '../../geometry/region.js';
import { cos, sin, tan } from '../../geometry/trig.js';

/** A part of a plant along an arc: it starts at (x, y) facing `angle` and turns by `bend` over its length. mm, radians. */
export interface Limb {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly bend: number;
  readonly length: number;
  /** A stem tapers from `width` to `tip`; a leaf is a lens `width` across its middle, on a stalk of `tip`. */
  readonly kind: 'stem' | 'leaf';
  readonly width: number;
  readonly tip: number;
  /** The stem that it grows from. */
  readonly parent: Limb | null;
}

/** The point at share s of the way along the limb. */
export function along({ x, y, angle, bend, length }: Limb, s: number): Vector {
  // The chord of an arc that turns by b over l has length l sin(b / 2) / (b / 2), half way between its two directions.
  const half = (bend * s) / 2;
  const chord = Math.abs(half) < 1e-9 ? length * s : (length * s * sin(half)) / half;
  return [x + chord * cos(angle + half), y + chord * sin(angle + half)];
}

export function facing({ angle, bend }: Limb, s: number): number {
  return angle + bend * s;
}

export function halfWidth(limb: Limb, s: number): number {
  const { kind, width, tip } = limb;
  if (kind === 'stem') return (width + (tip - width) * s) / 2;
  const lens = 2 * width * s * (1 - s);
  return s < 0.5 ? Math.max(tip / 2, lens) : lens;
}

/** The limb's outlines, counter-clockwise; they may overlap. */
export function outlinesOf(limb: Limb): Contour[] {
  if (limb.kind === 'stem') return [band(limb)];
  // The stalk runs to where the leaf is as wide: 4 s (1 - s) = tip / width, nearly.
  const s = (1 - Math.sqrt(Math.max(0, 1 - limb.tip / limb.width))) / 2;
  const stalk = {
    ...limb,
    kind: 'stem' as const,
    length: s * limb.length,
    bend: s * limb.bend,
    width: limb.tip,
  };
  return [lens(limb), band(stalk)];
}

function lens(limb: Limb): Contour {
  const [x, y] = along(limb, 1);
  // Bulge is sagitta over half the chord: the axis's own, more on one side by half the width, less on the other.
  const axis = tan(limb.bend / 4);
  const chord = Math.sqrt((x - limb.x) * (x - limb.x) + (y - limb.y) * (y - limb.y));
  const belly = limb.width / chord;
  return bulgedContour([
    { x: limb.x, y: limb.y, bulge: belly + axis },
    { x, y, bulge: belly - axis },
  ]);
}

function band(limb: Limb): Contour {
  const [x, y] = along(limb, 1);
  const axis = tan(limb.bend / 4);
  const a = facing(limb, 0);
  const b = facing(limb, 1);
  const [h0, h1] = [limb.width / 2, limb.tip / 2];
  return bulgedContour([
    { x: limb.x + h0 * sin(a), y: limb.y - h0 * cos(a), bulge: axis },
    { x: x + h1 * sin(b), y: y - h1 * cos(b), bulge: 1 },
    { x: x - h1 * sin(b), y: y + h1 * cos(b), bulge: -axis },
    { x: limb.x - h0 * sin(a), y: limb.y + h0 * cos(a), bulge: 0 },
  ]);
}

/** The mirror image of the limb about the upright line at x = middle. */
export function mirrored(limb: Limb, middle: number, parent: Limb | null): Limb {
  return { ...limb, x: 2 * middle - limb.x, angle: Math.PI - limb.angle, bend: -limb.bend, parent };
}
