import type { Contour, Region } from '../../geometry/region.js';
import { boxOf, grown } from './box.js';
import type { Spot } from './spot.js';

/** Runs of at least this share of the longest are as long. */
const AS_LONG = 0.98;

/** Two straight edges are one run when they turn by less than this sine, mm per mm. */
const STRAIGHT = 1e-6;

type Run = readonly [x0: number, y0: number, x1: number, y1: number];

/**
 * The longest straight runs of the boundary. A run longer than `most` mm is shown by a stretch of that length from its
 * middle. Null when nothing straight is at least 2r long.
 */
export function longestRun(region: Region, r: number, most: number): Spot | null {
  const runs = region.contours.flatMap(runsOf);
  const longest = runs.reduce((l, run) => Math.max(l, length(run)), 0);
  if (longest < 2 * r) return null;
  const places = runs
    .filter((run) => length(run) >= AS_LONG * longest)
    .map((run) => {
      const [x0, y0, x1, y1] = run;
      const at = [(x0 + x1) / 2, (y0 + y1) / 2] as const;
      const k = Math.min(1, most / length(run)) / 2;
      const ends = [-k, k].map((s) => [at[0] + (x1 - x0) * s, at[1] + (y1 - y0) * s] as const);
      return { at, box: grown(boxOf(ends), r / 8) };
    });
  return { kind: 'run', size: longest, turn: 0, places };
}

function runsOf(contour: Contour): Run[] {
  const runs: Run[] = [];
  const n = contour.length;
  // Start behind a bend, so that no run is cut by where the contour happens to start.
  const start = contour.findIndex((_, i) => !straightOn(contour, (i + n - 1) % n));
  if (start < 0) return [];
  for (let k = 0; k < n; k++) {
    const i = (start + k) % n;
    const e = contour[i]!;
    if (e.r !== 0) continue;
    const last = runs.at(-1);
    if (last && k > 0 && straightOn(contour, (i + n - 1) % n))
      runs[runs.length - 1] = [last[0], last[1], e.x1, e.y1];
    else runs.push([e.x0, e.y0, e.x1, e.y1]);
  }
  return runs;
}

/** Does edge i go straight on into the next? */
function straightOn(contour: Contour, i: number): boolean {
  const e = contour[i]!;
  const f = contour[(i + 1) % contour.length]!;
  if (e.r !== 0 || f.r !== 0) return false;
  const cross = (e.x1 - e.x0) * (f.y1 - f.y0) - (e.y1 - e.y0) * (f.x1 - f.x0);
  return Math.abs(cross) <= STRAIGHT * length([e.x0, e.y0, e.x1, e.y1]) * length([f.x0, f.y0, f.x1, f.y1]);
}

function length([x0, y0, x1, y1]: Run): number {
  return Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
}
