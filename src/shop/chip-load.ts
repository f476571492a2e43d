import { MM_PER_INCH } from '../schema/units.js';
import type { OwnWoods } from './own.js';
import { atLeastZero, inRange, overZero } from './range.js';
import { findWood } from './woods.js';

/**
 * Chip load: how far the work moves on between one cutting edge and the next, mm.
 *
 * Two makers of router cutters publish charts by diameter, in inches a tooth, for cuts one diameter deep (read in
 * copies of their own pages). They differ by almost two times at 1/4 in, so what is used here is a range that spans
 * both: from the lesser of the two leasts to the greater of the two mosts.
 *
 * Our own choice, since the charts have four diameters alone: straight lines between them; under 1/8 in in proportion
 * to the diameter; over 1/2 in what holds at 1/2 in. So are two kinds of wood: the charts say hardwood and softwood,
 * and cutters feel hardness, not botany: see HARD_FROM.
 */
export type WoodKind = 'hard' | 'soft';

/** Least and most, mm a tooth. */
export interface ChipRange {
  readonly least: number;
  readonly most: number;
}

/** One publisher's row: diameter, and least and most for either kind, inches. */
export interface ChartRow {
  readonly diameter: number;
  readonly hard: readonly [number, number];
  readonly soft: readonly [number, number];
}

export interface Chart {
  readonly source: string;
  readonly status: 'published';
  readonly rows: readonly ChartRow[];
}

export const charts: readonly Chart[] = [
  {
    source: "a router cutter maker's chart of speeds and feeds, its columns hardwood and softwood",
    status: 'published',
    rows: [
      { diameter: 1 / 8, hard: [0.002, 0.004], soft: [0.003, 0.005] },
      { diameter: 1 / 4, hard: [0.005, 0.007], soft: [0.006, 0.008] },
      { diameter: 3 / 8, hard: [0.013, 0.015], soft: [0.015, 0.017] },
      { diameter: 1 / 2, hard: [0.017, 0.019], soft: [0.019, 0.021] },
    ],
  },
  {
    source: "another cutter seller's chart, its columns hardwood, and softwood with plywood",
    status: 'published',
    rows: [
      { diameter: 1 / 8, hard: [0.003, 0.005], soft: [0.004, 0.006] },
      { diameter: 1 / 4, hard: [0.009, 0.011], soft: [0.011, 0.013] },
      { diameter: 3 / 8, hard: [0.015, 0.018], soft: [0.017, 0.02] },
    ],
  },
];

/** Side hardness from which a wood counts as hard, N. Our own choice: basswood, pine and poplar lie under it. */
export const HARD_FROM = 3000;

/** The kind of a wood by its side hardness; one whose hardness is not known is taken as hard. */
export function woodKind(name: string, own: OwnWoods = []): { kind: WoodKind; known: boolean } {
  const hardness = findWood(name, own)?.hardness ?? null;
  return { kind: hardness === null || hardness >= HARD_FROM ? 'hard' : 'soft', known: hardness !== null };
}

/** Range of chip load one diameter deep for a cutter's diameter, mm. Estimate, see above. BadInput unless over 0. */
export function chipRange(diameter: number, kind: WoodKind): ChipRange {
  overZero('cutter.diameter', diameter, 'mm');
  const points = spans[kind];
  const first = points[0]!;
  if (diameter <= first.diameter) {
    const share = diameter / first.diameter;
    return { least: first.least * share, most: first.most * share };
  }
  const above = points.findIndex((p) => p.diameter >= diameter);
  if (above < 0) {
    const { least, most } = points.at(-1)!;
    return { least, most };
  }
  const [a, b] = [points[above - 1]!, points[above]!];
  const t = (diameter - a.diameter) / (b.diameter - a.diameter);
  return { least: a.least + t * (b.least - a.least), most: a.most + t * (b.most - a.most) };
}

/** What both charts span at each of their diameters, mm. */
const spans: Readonly<Record<WoodKind, readonly (ChipRange & { diameter: number })[]>> = {
  hard: spanned('hard'),
  soft: spanned('soft'),
};

function spanned(kind: WoodKind): (ChipRange & { diameter: number })[] {
  const rows = charts.flatMap((c) => c.rows);
  const diameters = [...new Set(rows.map((r) => r.diameter))].sort((a, b) => a - b);
  return diameters.map((d) => {
    const cells = rows.filter((r) => r.diameter === d).map((r) => r[kind]);
    return {
      diameter: d * MM_PER_INCH,
      least: Math.min(...cells.map((c) => c[0])) * MM_PER_INCH,
      most: Math.max(...cells.map((c) => c[1])) * MM_PER_INCH,
    };
  });
}

/** Depths, in diameters, and the share of the chart's chip load that holds there: the first chart's page, published. */
export const DEPTH_CORRECTION: readonly (readonly [number, number])[] = [
  [1, 1],
  [2, 0.75],
  [3, 0.5],
];

/**
 * Share of the chart's chip load that holds for a pass `depth` deep (mm) with a cutter of that diameter. Published at
 * one, two and three diameters; straight lines between (our own choice). `beyond`: deeper than three diameters, where
 * nothing is published and the last share is used.
 */
export function depthCorrection(depth: number, diameter: number): { share: number; beyond: boolean } {
  inRange('depth', depth, atLeastZero('mm'));
  overZero('cutter.diameter', diameter, 'mm');
  const deep = depth / diameter;
  const above = DEPTH_CORRECTION.findIndex(([d]) => d >= deep);
  if (above === 0) return { share: 1, beyond: false };
  if (above < 0) {
    const [last, share] = DEPTH_CORRECTION.at(-1)!;
    return { share, beyond: deep > last + 1e-9 };
  }
  const [[d0, s0], [d1, s1]] = [DEPTH_CORRECTION[above - 1]!, DEPTH_CORRECTION[above]!];
  return { share: s0 + ((deep - d0) / (d1 - d0)) * (s1 - s0), beyond: false };
}
