import { type Box, bounds, type Contour } from '../../geometry/region.js';
import { boundaryOf } from '../../geometry/thicken/balls.js';
import { clearance } from '../../geometry/thicken/ends.js';
import { TIGHT } from '../../geometry/tolerances.js';
import { namesTogether, type Sound } from '../between.js';
import type { Rule } from '../rule.js';
import type { Change } from '../safe.js';
import { type Band, bandsFor } from './bands.js';
import { NEARLY, narrowPlaces, type Side } from './narrow.js';
import { type Tried, tried } from './piece.js';

type Point = readonly [number, number];

/** Bands that do harm are left out and the others tried again, this often. */
const TRIES = 8;

/** What one side's narrow places are to become. */
export interface Asked {
  readonly side: Side;
  /** mm. */
  readonly width: number;
  /** Widths to be left beside them, mm: the one wished for, then the least. */
  readonly keeps: readonly number[];
  /** Where gaps beside limbs are opened afterwards: the width of what lies behind them that has to stay, mm. */
  readonly behind?: number;
}

/**
 * Sound pieces with the narrow places of one side made as wide as asked wherever there is room. First all places at
 * once, each counting on its neighbours to take their share; then those that were left for it.
 */
export function widenPlaces(
  pieces: readonly Sound[],
  asked: Asked,
  rule: Rule,
  changes: Change[],
): readonly Sound[] {
  let now = pieces;
  for (const shared of [true, false]) {
    const bands = bandsFor(contoursOf(now), { ...asked, h: asked.width / 2, shared, rounding: rule.r });
    now = withBands(now, bands, asked, rule, changes);
  }
  return now;
}

export function contoursOf(pieces: readonly Sound[]): Contour[] {
  return pieces.flatMap((p) => p.contours);
}

/** For each contour of all pieces in turn, the number of its piece. */
export function ownersOf(pieces: readonly Sound[]): number[] {
  return pieces.flatMap((p, i) => p.contours.map(() => i));
}

function withBands(
  pieces: readonly Sound[],
  bands: readonly Band[],
  asked: Asked,
  rule: Rule,
  changes: Change[],
): readonly Sound[] {
  const { side } = asked;
  const owners = ownersOf(pieces);
  const boxes = pieces.map((p) => bounds(p.contours));
  const known = new Map<string, Tried>();
  let left = [...bands];
  for (let k = 0; k < TRIES && left.length > 0; k++) {
    const own = pieces.map((_, i) =>
      left.filter((band) => (side === 'limb' ? owners[band.homes[0]!] === i : meet(band.box, boxes[i]!))),
    );
    const made = pieces.map((piece, i): Tried => {
      if (own[i]!.length === 0) return { piece, harm: [] };
      const key = `${i}:${own[i]!.map((band) => bands.indexOf(band)).join()}`;
      const before = known.get(key) ?? tried(piece, own[i]!, side, rule);
      known.set(key, before);
      return before;
    });
    const now = made.map((m) => m.piece);
    const culprits = new Set(made.flatMap((m, i) => m.harm.flatMap((at) => culpritsOf(own[i]!, at, asked))));
    if (side === 'limb')
      for (const at of closer(pieces, now, keepOf(asked, rule)))
        for (const band of culpritsOf(left, at, asked)) culprits.add(band);
    if (culprits.size === 0) {
      for (const band of left) changes.push(changeOf(band, pieces, owners, asked));
      return now;
    }
    left = left.filter((band) => !culprits.has(band));
  }
  return pieces;
}

/** Least gap beside limbs, mm: of gaps that are opened again afterwards enough to stay a gap. */
function keepOf({ behind, keeps }: Asked, { r }: Rule): number {
  return behind === undefined ? keeps[keeps.length - 1]! : r;
}

/** Places where a gap is narrower than is to be kept and one of its sides was not there before. */
function closer(before: readonly Sound[], after: readonly Sound[], keep: number): Point[] {
  const was = boundaryOf(contoursOf(before));
  const { runs } = narrowPlaces(contoursOf(after), keep / 2 + NEARLY - TIGHT, 'gap');
  return runs.flatMap(({ balls }): Point[] => {
    const { x, y, px, py, qx, qy } = balls.reduce((a, b) => (b.w < a.w ? b : a));
    const moved = Math.max(clearance(was, px, py, keep), clearance(was, qx, qy, keep)) > NEARLY;
    return moved ? [[x, y]] : [];
  });
}

/** The bands nearest to a place where they do harm, all that are as near; without a place all of them. */
function culpritsOf(bands: readonly Band[], at: Point | null, { width }: Asked): readonly Band[] {
  if (!at) return bands;
  const far = bands.map((band) =>
    band.middle.reduce((least, [x, y]) => {
      const d2 = (x - at[0]) * (x - at[0]) + (y - at[1]) * (y - at[1]);
      return Math.min(least, d2);
    }, Number.POSITIVE_INFINITY),
  );
  const nearest = Math.sqrt(Math.min(...far));
  return bands.filter((_, i) => Math.sqrt(far[i]!) <= nearest + 0.15 * width);
}

function changeOf(band: Band, pieces: readonly Sound[], owners: readonly number[], asked: Asked): Change {
  const own = [...new Set(band.homes.map((k) => owners[k]!))].sort((a, b) => a - b);
  return {
    kind: asked.side === 'limb' ? 'widened' : own.length > 1 ? 'parted' : 'opened',
    piece: namesTogether(own.map((i) => pieces[i]!.name)),
    at: band.what.at,
    size: band.what.length,
    to: asked.width,
  };
}

function meet(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && a.maxX >= b.minX && a.minY <= b.maxY && a.maxY >= b.minY;
}
