import type { Vector } from '../../geometry/bezier.js';
import { cos, radians, sin, tan } from '../../geometry/trig.js';
import { readNumbers } from './numbers.js';
import { shortened } from './shortened.js';
import { Unreadable } from './unreadable.js';

/** An affine map as SVG writes it: x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

/** The map that does `n` first, then `m`. */
export function multiply(m: Matrix, n: Matrix): Matrix {
  return [
    m[0] * n[0] + m[2] * n[1],
    m[1] * n[0] + m[3] * n[1],
    m[0] * n[2] + m[2] * n[3],
    m[1] * n[2] + m[3] * n[3],
    m[0] * n[4] + m[2] * n[5] + m[4],
    m[1] * n[4] + m[3] * n[5] + m[5],
  ];
}

export function apply(m: Matrix, [x, y]: Vector): Vector {
  return [m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5]];
}

/** The map of directions: `apply` without the move. */
export function applyLinear(m: Matrix, [x, y]: Vector): Vector {
  return [m[0] * x + m[2] * y, m[1] * x + m[3] * y];
}

export function determinant(m: Matrix): number {
  return m[0] * m[3] - m[1] * m[2];
}

/** A map that squeezes the plane into a line (or nothing): what is drawn through it has no area. */
export function collapses(m: Matrix): boolean {
  const size = m[0] * m[0] + m[1] * m[1] + m[2] * m[2] + m[3] * m[3];
  return !(Math.abs(determinant(m)) > 1e-12 * size);
}

/** The factor of a map that keeps shapes (turns, mirrors and scales evenly), or null when it does not. */
export function evenScale(m: Matrix): number | null {
  const p = m[0] * m[0] + m[1] * m[1];
  const q = m[2] * m[2] + m[3] * m[3];
  const skew = m[0] * m[2] + m[1] * m[3];
  return Math.abs(p - q) <= EVEN * p && Math.abs(skew) <= EVEN * p ? Math.sqrt(p) : null;
}

/** Written matrices are rounded; a circle of 100 mm that is round to this share is round to a tenth of a micron. */
const EVEN = 1e-9;

const FUNCTION = /\s*([a-zA-Z]+)\s*\(([^()]*)\)\s*,?/y;

/** Reads a `transform`: a list of functions, the last done first. */
export function readTransform(text: string): Matrix {
  if (text.trim() === '' || text.trim() === 'none') return IDENTITY;
  let made = IDENTITY;
  FUNCTION.lastIndex = 0;
  while (FUNCTION.lastIndex < text.trimEnd().length) {
    const found = FUNCTION.exec(text);
    // The CSS form has units, which for these two are the ones of the attribute.
    const numbers = found && readNumbers(found[2]!.replace(/(\d)(px|deg)/g, '$1'));
    const m = found && numbers && functionMatrix(found[1]!, numbers);
    if (!m) throw new Unreadable(`has a transform that cannot be read: "${shortened(text)}"`);
    made = multiply(made, m);
  }
  return made;
}

function functionMatrix(name: string, n: readonly number[]): Matrix | null {
  const [a = 0, b] = n;
  switch (`${name} ${n.length}`) {
    case 'matrix 6':
      return [a, b!, n[2]!, n[3]!, n[4]!, n[5]!];
    case 'translate 1':
    case 'translate 2':
      return [1, 0, 0, 1, a, b ?? 0];
    case 'translateX 1':
      return [1, 0, 0, 1, a, 0];
    case 'translateY 1':
      return [1, 0, 0, 1, 0, a];
    case 'scale 1':
    case 'scale 2':
      return [a, 0, 0, b ?? a, 0, 0];
    case 'scaleX 1':
      return [a, 0, 0, 1, 0, 0];
    case 'scaleY 1':
      return [1, 0, 0, a, 0, 0];
    case 'rotate 1':
      return rotation(a);
    case 'rotate 3':
      return multiply(multiply([1, 0, 0, 1, b!, n[2]!], rotation(a)), [1, 0, 0, 1, -b!, -n[2]!]);
    case 'skewX 1':
      return [1, 0, tan(radians(a)), 1, 0, 0];
    case 'skewY 1':
      return [1, tan(radians(a)), 0, 1, 0, 0];
    default:
      return null;
  }
}

/** A turn about the origin, from +x towards +y. */
export function rotation(degrees: number): Matrix {
  // Whole turns off, since the trigonometry is good for moderate angles only.
  const angle = radians(degrees % 360);
  const c = cos(angle);
  const s = sin(angle);
  return [c, s, -s, c, 0, 0];
}
