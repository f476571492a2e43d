/**
 * Numbers in [0, 1) that look random and are fixed by the seed: Mulberry32 (T. Ettinger, public domain, from memory).
 * Its arithmetic is on 32-bit integers, so every engine gives the same.
 */
export function random(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
