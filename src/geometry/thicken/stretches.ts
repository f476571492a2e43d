import { TIGHT } from '../tolerances.js';
import type { Ball } from './balls.js';
import type { Run } from './runs.js';

/** What of runs is thinner than 2r, gone on to where it is wide enough. Wide places shorter than 2r are passed over. */
export function thinStretches(runs: readonly Run[], r: number): Run[] {
  const out: Run[] = [];
  for (const run of runs) {
    const n = run.balls.length;
    const thin = run.balls.map((b) => b.w < r - TIGHT);
    if (!thin.includes(true)) continue;
    if (run.closed && !longGap(run.balls, thin, r)) {
      out.push(run);
      continue;
    }
    // A closed run is opened in a wide place first.
    const start = run.closed ? startOfGap(run.balls, thin, r) : 0;
    const balls = [...run.balls.slice(start), ...run.balls.slice(0, start)];
    const isThin = [...thin.slice(start), ...thin.slice(0, start)];
    let from = -1;
    let last = -1;
    for (let i = 0; i <= n; i++) {
      const ends = i === n || (from >= 0 && !isThin[i] && away(balls[i]!, balls[last]!) > 2 * r);
      if (from >= 0 && ends) {
        out.push({ balls: goneOn(balls, from, last, r), closed: false });
        from = -1;
      }
      if (i < n && isThin[i]) {
        if (from < 0) from = i;
        last = i;
      }
    }
  }
  return out;
}

function away(a: Ball, b: Ball): number {
  return Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));
}

/** A stretch with the balls beside it up to the first of radius r. */
function goneOn(balls: readonly Ball[], from: number, last: number, r: number): Ball[] {
  let i = from;
  let j = last;
  while (i > 0 && balls[i]!.w < r) i--;
  while (j + 1 < balls.length && balls[j]!.w < r) j++;
  return balls.slice(i, j + 1);
}

function longGap(balls: readonly Ball[], thin: readonly boolean[], r: number): boolean {
  return startOfGap(balls, thin, r) >= 0;
}

/** In a closed run, a ball in the middle of a wide stretch longer than 2r; -1 when there is none. */
function startOfGap(balls: readonly Ball[], thin: readonly boolean[], r: number): number {
  const n = balls.length;
  for (let i = 0; i < n; i++) {
    if (thin[i] || !thin[(i + n - 1) % n]) continue;
    let length = 0;
    let k = i;
    while (!thin[(k + 1) % n] && k < i + n) {
      length += away(balls[k % n]!, balls[(k + 1) % n]!);
      k++;
    }
    if (length > 2 * r) return Math.floor((i + k) / 2) % n;
  }
  return -1;
}

/** Length of a run, mm. */
export function runLength(balls: readonly { x: number; y: number }[]): number {
  let sum = 0;
  for (let i = 1; i < balls.length; i++) {
    const [a, b] = [balls[i - 1]!, balls[i]!];
    sum += Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));
  }
  return sum;
}
