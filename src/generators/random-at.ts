import { random } from './random.js';

/** Numbers for one place of a grid, fixed by the seed and the place alone: a larger grid leaves its others as they are. */
export function randomAt(seed: number, x: number, y: number): () => number {
  return random(Math.imul(seed, 0x9e3779b1) ^ Math.imul(x, 0x85ebca6b) ^ Math.imul(y, 0xc2b2ae35));
}
