import { cos, sin, tan } from '../geometry/trig.js';
import type { Profile } from './profile.js';
import { halfAngle, type Stave } from './stave.js';

/** The glued shell of flat staves between two levels, before anything is turned. Millimetres, mm2, mm3. */

/** Area of the regular polygon that the staves' faces at a depth make at a level. */
function polygonAt(stave: Stave, z: number, depth: number): number {
  const { sides, apothem, slope } = stave;
  const inner = apothem + (z * cos(slope)) / sin(slope) - depth / sin(slope);
  return inner <= 0 ? 0 : sides * tan(halfAngle(stave)) * inner * inner;
}

/** Area of the shell's cut at a level: of its rim, where tape may hold it. */
export function ringAt(stave: Stave, z: number): number {
  return polygonAt(stave, z, 0) - polygonAt(stave, z, stave.thickness);
}

/** Wood in the shell from the level 0 to `height`: a frustum of a pyramid less the one within. */
export function shellVolume(stave: Stave, height: number): number {
  const lean = cos(stave.slope) / sin(stave.slope);
  const k = stave.sides * tan(halfAngle(stave));
  /** The integral of k (a + lean z)^2 from where it is above 0. */
  const pyramid = (a: number): number => {
    const [p, q] = [Math.max(0, a), Math.max(0, a + lean * height)];
    if (Math.abs(lean) * height < 1e-9) return k * p * p * height;
    return (k * (q * q * q - p * p * p)) / (3 * lean);
  };
  return pyramid(stave.apothem) - pyramid(stave.apothem - stave.thickness / sin(stave.slope));
}

/** Slices of a turned volume: Simpson's rule is exact for cones, and near enough for anything smooth. */
const SLICES = 400;

/** Volume within a profile between two levels, mm3. */
export function turnedVolume(profile: Profile, from = profile.from, to = profile.to): number {
  const h = (to - from) / SLICES;
  let sum = 0;
  for (let k = 0; k <= SLICES; k++) {
    const r = profile.radius(from + k * h);
    sum += (k === 0 || k === SLICES ? 1 : k % 2 === 1 ? 4 : 2) * r * r;
  }
  return (Math.PI * sum * h) / 3;
}

/** A level trapezoid: widths at its lower and its upper edge, and its length along the stave. */
export interface Trapezoid {
  readonly bottom: number;
  readonly top: number;
  readonly length: number;
}

/** What a stave's face at a depth is between two levels, true size; its ends are level, its edges the joint's. */
export function faceAt(stave: Stave, from: number, to: number, depth: number): Trapezoid {
  const { apothem, slope, sides } = stave;
  const [c, s] = [cos(slope), sin(slope)];
  const wide = (z: number): number =>
    2 * Math.max(0, apothem + (z * c) / s - depth / s) * tan(Math.PI / sides);
  return { bottom: wide(from), top: wide(to), length: (to - from) / s };
}

/** The board a stave is cut from, with ends sawn square and trimmed level after gluing, mm. */
export interface Blank {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/** `trim`: waste at each end beyond the level cuts. */
export function blankOf(stave: Stave, height: number, trim: number): Blank {
  const { bottom, top, length } = faceAt(stave, 0, height, 0);
  // Level ends slant through the thickness: a square end has to lie beyond the slant.
  const slant = (stave.thickness * cos(stave.slope)) / sin(stave.slope);
  const lean = (top - bottom) / length;
  // The wide end grows on into its trim.
  return {
    length: length + slant + 2 * trim,
    width: Math.max(bottom, top) + Math.abs(lean) * (lean > 0 ? trim : trim + slant),
    thickness: stave.thickness,
  };
}

export interface WoodUsed {
  /** All staves sawn head to tail out of one board, without the saw's kerf, mm3. */
  readonly staves: number;
  /** A square block out of which the vessel could be turned. */
  readonly block: number;
  /** Flat rings as thick as the staves, glued up in layers. */
  readonly rings: number;
  /** The finished wall. */
  readonly finished: number;
}

/** Wood that goes into the vessel by three ways of making its blank. */
export function woodUsed(
  stave: Stave,
  height: number,
  trim: number,
  outside: Profile,
  inside: Profile,
): WoodUsed {
  const { length, thickness } = blankOf(stave, height, trim);
  // Head to tail, every second stave turned: a stave takes its mean width, which lies half way along its blank.
  const { bottom, top, length: face } = faceAt(stave, 0, height, 0);
  const slant = length - face - 2 * trim;
  const mean = (bottom + top) / 2 - (((top - bottom) / face) * slant) / 2;
  const widest = (from: number, to: number): number =>
    Math.max(...levels(from, to).map((z) => outside.radius(z)));
  const d = 2 * widest(0, height);
  let rings = 0;
  for (let z = 0; z < height - 1e-9; z += thickness) {
    const top = Math.min(height, z + thickness);
    const hole =
      top <= inside.from
        ? 0
        : Math.min(...levels(Math.max(z, inside.from), top).map((at) => inside.radius(at)));
    const full = z < inside.from ? 0 : hole;
    rings += Math.PI * (widest(z, top) * widest(z, top) - full * full) * thickness;
  }
  return {
    staves: stave.sides * length * mean * thickness,
    block: d * d * height,
    rings,
    finished: turnedVolume(outside) - turnedVolume(inside),
  };
}

function levels(from: number, to: number): number[] {
  return Array.from({ length: 41 }, (_, k) => from + ((to - from) * k) / 40);
}
