import { union } from '../boolean.js';
import { bounds, type Contour, circle, contourArea, type Region } from '../region.js';
import { SPARE } from '../tolerances.js';
import { boundaryOf } from './balls.js';
import { bandOf, radiusOf, type Stretched, stretched } from './band.js';
import { decided } from './decided.js';
import { openedGaps } from './gaps.js';
import { limbs } from './limbs.js';
import { narrowRuns, type Run } from './runs.js';
import { runLength, thinStretches } from './stretches.js';

export type { Stretched } from './band.js';

export interface Thickened {
  readonly region: Region;
  /** Strokes that grew to 2r. */
  readonly grown: readonly Stretched[];
  /** Gaps inside the piece that were opened to 2r. */
  readonly opened: readonly Stretched[];
}

/** cos 150 degrees: sides that close in on each other faster than 30 degrees are a corner or a tip and stay. */
const OPPOSITE = -0.866;

/** Runs shorter than this share of r are noise beside a corner. */
const SHORTEST = 0.25;

/**
 * One piece with its strokes that are thinner than 2r grown to 2r along their own centre lines, and its gaps opened
 * likewise where there is room. Tips, corners and all that is wide enough stay; ends stay where they are.
 * The same contours when nothing is thin. Needs a sound region; r in mm. `only`: one of the two.
 */
export function thickened(region: Region, r: number, only?: 'strokes' | 'gaps'): Thickened {
  const wider = only === 'gaps' ? { region, grown: [] } : grownStrokes(region, r);
  if (only === 'strokes') return { ...wider, opened: [] };
  const gaps = openedGaps(wider.region, r);
  return { region: gaps.region, grown: wider.grown, opened: gaps.opened };
}

function grownStrokes(region: Region, r: number): { region: Region; grown: Stretched[] } {
  const b = boundaryOf(region.contours);
  const { runs, wide } = narrowRuns(b, r, OPPOSITE);
  const thin = thinStretches(runs, r).filter((s) => s.closed || runLength(s.balls) > SHORTEST * r);
  const bands: Band[] = limbs(b, thin, r).map((limb, k) => ({
    contours: (more) => bandOf(limb, radiusOf(r, k) + more),
    grown: stretched(limb.runs.map((i) => thin[i]!)),
  }));
  for (const c of crumbs(region.contours, wide, b.home, b.first, thin)) {
    const box = bounds([c]);
    const at: [number, number] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
    const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
    bands.push({
      contours: (more) => [circle(at[0], at[1], r + SPARE + more)],
      grown: { at, length: Math.max(w, h), width: Math.min(w, h) },
    });
  }
  return joined(region, bands);
}

/** What is to be added along a limb, half its width larger by a hair, and what that does. */
interface Band {
  contours(more: number): readonly Contour[];
  readonly grown: Stretched;
}

/** Hairs by which a band that coincides with too many other boundaries is made wider, mm. */
const HAIRS = [0, 4.1e-4, 9.3e-4, 2.3e-3];

/** The region with its bands: all at once or, where too many boundaries coincide for that, one after the other. */
function joined(region: Region, bands: readonly Band[]): { region: Region; grown: Stretched[] } {
  if (bands.length === 0) return { region, grown: [] };
  const all = decided(() => union([region, ...bands.map((band) => ({ contours: band.contours(0) }))]));
  if (all) return { region: all, grown: bands.map((band) => band.grown) };
  let now = region;
  const grown: Stretched[] = [];
  for (const band of bands)
    for (const more of HAIRS) {
      const wider = decided(() => union([now, { contours: band.contours(more) }]));
      if (!wider) continue;
      now = wider;
      grown.push(band.grown);
      break;
    }
  return { region: now, grown };
}

/** Outer contours that would vanish, as nothing of them is wide enough and they have no axis to speak of. */
function crumbs(
  contours: readonly Contour[],
  wide: readonly boolean[],
  home: readonly number[],
  first: readonly number[],
  runs: readonly Run[],
): Contour[] {
  const busy = new Set<number>();
  for (const run of runs)
    for (const ball of run.balls) {
      busy.add(home[Math.min(home.length - 1, Math.floor(ball.p))]!);
      busy.add(home[Math.min(home.length - 1, Math.floor(ball.q))]!);
    }
  return contours.filter(
    (c, k) => first[k]! < first[k + 1]! && !wide[k] && !busy.has(k) && contourArea(c) > 0,
  );
}
