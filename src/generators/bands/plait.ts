import { cos, sin } from '../../geometry/trig.js';

/** Where two strands of a plait cross, in repeats along the band, and which passes over. */
export interface Crossing {
  readonly u: number;
  readonly over: number;
  readonly under: number;
}

/**
 * Strand k of m is the cosine of u + k / m + PHASE[m], in turns. The phases set crossings as far as can be from whole
 * repeats, so that ends and joints never cut one.
 */
export const PHASE: Readonly<Record<number, number>> = { 2: 0, 3: 1 / 12 };

/**
 * The crossings of a plait of 2 or 3 strands over `repeats` repeats, rising in u. Along each strand over and under
 * alternate: of two strands the rising one passes over; of three it does so in the lower half, and the falling one in
 * the upper half.
 */
export function crossingsOf(strands: number, repeats: number): Crossing[] {
  const out: Crossing[] = [];
  const phase = PHASE[strands]!;
  const turn = (u: number, k: number): number => 2 * Math.PI * (u + k / strands + phase);
  for (let k = 0; k < strands; k++)
    for (let l = k + 1; l < strands; l++) {
      // cos(x + a) = cos(x + b) where x = -(a + b) / 2, and again half a turn on.
      const first = -(k + l) / (2 * strands) - phase;
      const start = first - Math.floor(2 * first) / 2;
      for (let j = 0; j < 2 * repeats; j++) {
        const u = start + j / 2;
        const lRises = -sin(turn(u, l)) > 0;
        const riserOver = strands === 2 || cos(turn(u, k)) < 0;
        const over = lRises === riserOver ? l : k;
        out.push({ u, over, under: over === l ? k : l });
      }
    }
  return out.sort((a, b) => a.u - b.u);
}
