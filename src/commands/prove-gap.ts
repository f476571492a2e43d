import { type Drawing, type GapRun, gap, gapRuns, mirrored } from '../proof/index.js';
import { count } from './count.js';
import type { ProveFile } from './prove-read.js';

/** The gap is what was asked within this, mm (design: Numbers). */
const TOLERANCE = 0.002;

/** An overlap of less than this, mm, is rounding. */
const ROUNDING = 0.0002;

/** Places listed. */
const TOP = 10;

/** What is measured of a plug lying in its pocket. mm, places on the pocket's drawing. */
export interface Assembly {
  readonly least: number;
  readonly most: number;
  readonly leastAt: readonly [number, number];
  readonly mostAt: readonly [number, number];
  /** Where the plug's boundary is outside the pocket, deepest first; `gap` is negative. */
  readonly overlaps: readonly { readonly at: readonly [number, number]; readonly gap: number }[];
  readonly asked: number | null;
  readonly tolerance: number;
  readonly holds: boolean;
  readonly failures: readonly string[];
  /** How the plug was laid in where the files do not tell; else null. */
  readonly aligned: string | null;
  /** Lower left corner of the pocket's box. */
  readonly corner: readonly [number, number];
  readonly plug: Drawing;
  readonly runs: readonly GapRun[];
}

/** Lays the plug into the pocket, turned over when it is drawn mirrored, and measures the gap all round. */
export function assemble(
  pocket: ProveFile,
  file: ProveFile,
  asked: number | null,
  turned: boolean,
): Assembly {
  const { plug, aligned } = laid(pocket, file, turned);
  const found = gap(pocket.drawing, plug);
  const { minX, minY, maxX, maxY } = pocket.drawing.index.tree!;
  const size = Math.max(maxX - minX, maxY - minY);
  const runs = gapRuns(pocket.drawing, plug, size / 400);
  const failures: string[] = [];
  const [a, b] = [pocket.drawing, plug];
  if (a.nesting.parts !== b.nesting.parts || a.contours !== b.contours)
    failures.push(`the pocket has ${partsOf(a)}, the plug ${partsOf(b)}`);
  const fits =
    asked === null
      ? found.least >= -ROUNDING
      : found.least >= asked - TOLERANCE && found.most <= asked + TOLERANCE;
  return {
    ...found,
    overlaps: found.least < -ROUNDING ? overlaps(runs, found, size / 50) : [],
    asked,
    tolerance: TOLERANCE,
    holds: fits && failures.length === 0,
    failures,
    aligned,
    corner: [minX, minY],
    plug,
    runs,
  };
}

function partsOf({ nesting, contours }: Drawing): string {
  return `${count(nesting.parts, 'part')} and ${count(contours - nesting.parts, 'hole')}`;
}

/** The plug in the pocket's place. */
function laid(
  pocket: ProveFile,
  file: ProveFile,
  turned: boolean,
): { plug: Drawing; aligned: string | null } {
  if (!turned) return { plug: file.drawing, aligned: null };
  const width = pocket.sheet ?? file.sheet;
  if (width !== null) return { plug: mirrored(file.drawing, width), aligned: null };
  const p = pocket.drawing.index.tree!;
  const q = file.drawing.index.tree!;
  // Where neither has a sheet, turning over keeps the middle of the figure in its place.
  return {
    plug: mirrored(file.drawing, (p.minX + p.maxX + q.minX + q.maxX) / 2),
    aligned: 'The files have no sheet, so the plug is turned over about the middle of the two figures.',
  };
}

/** The deepest places where the plug stands out of the pocket, no two nearer than `apart`. */
function overlaps(
  runs: readonly GapRun[],
  deepest: { readonly least: number; readonly leastAt: readonly [number, number] },
  apart: number,
): Assembly['overlaps'] {
  const all = [
    { at: deepest.leastAt, gap: deepest.least },
    ...runs.filter((r) => r.gap < -ROUNDING).map((r) => ({ at: r.middle, gap: r.gap })),
  ].sort((a, b) => a.gap - b.gap);
  const out: { at: readonly [number, number]; gap: number }[] = [];
  for (const o of all) {
    if (out.length === TOP) break;
    const far = (u: readonly [number, number]): boolean =>
      (u[0] - o.at[0]) * (u[0] - o.at[0]) + (u[1] - o.at[1]) * (u[1] - o.at[1]) >= apart * apart;
    if (out.every(({ at }) => far(at))) out.push(o);
  }
  return out;
}
