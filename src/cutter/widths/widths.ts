import { stretched } from '../../geometry/thicken/band.js';
import { TIGHT } from '../../geometry/tolerances.js';
import { namesTogether, type Sound } from '../between.js';
import type { Rule } from '../rule.js';
import type { Change, Tight } from '../safe.js';
import { homeOf, leastOf, narrowPlaces, type Side } from './narrow.js';
import { contoursOf, ownersOf, widenPlaces } from './widen.js';

/** The width asked of one side, mm; null where it is no more than the cutter gives. */
export function askedWidth({ r, gap, limb }: Rule, side: Side): number | null {
  const asked = side === 'gap' ? gap : limb;
  return asked === undefined || asked <= 2 * r + TIGHT ? null : asked;
}

/** Where limbs first leaves nearly as much, the pattern looks calmer the other way. */
const MUCH_LESS = 0.6;

/** What came of widening, with what is left. */
interface Widened {
  readonly pieces: readonly Sound[];
  readonly tight: readonly Tight[];
  readonly changes: readonly Change[];
}

/**
 * Sound pieces with their gaps and limbs made as wide as the rule asks beyond 2r. Gaps leave 2r of wood beside them, or
 * as much as is asked of limbs where that can be; limbs grow where the gaps beside them stay wide enough, or can be
 * opened again. Middle lines are the medial axis (Blum 1967), so between straight or round sides both give the same.
 * With both asked, gaps go first, unless limbs first leaves no more narrow gaps and far less that is narrow.
 * What could not be done is in `tight`, measured on the result.
 */
export function withWidths(pieces: readonly Sound[], rule: Rule): Widened {
  const gap = askedWidth(rule, 'gap');
  const limb = askedWidth(rule, 'limb');
  if (gap === null || limb === null) return widened(pieces, rule, gap, limb, false);
  const limbsFirst = widened(pieces, rule, gap, limb, true);
  if (limbsFirst.tight.length === 0) return limbsFirst;
  const gapsFirst = widened(pieces, rule, gap, limb, false);
  const isBetter =
    narrowGaps(limbsFirst) <= narrowGaps(gapsFirst) &&
    narrowLength(limbsFirst) <= MUCH_LESS * narrowLength(gapsFirst);
  return isBetter ? limbsFirst : gapsFirst;
}

function narrowGaps({ tight }: Widened): number {
  return tight.filter((t) => t.kind === 'gap').length;
}

function narrowLength({ tight }: Widened): number {
  return tight.reduce((sum, t) => sum + t.length, 0);
}

function widened(
  pieces: readonly Sound[],
  rule: Rule,
  gap: number | null,
  limb: number | null,
  limbsFirst: boolean,
): Widened {
  const least = 2 * rule.r;
  const changes: Change[] = [];
  let now = pieces;
  if (limb !== null && limbsFirst) {
    const wish = { side: 'limb', width: limb, keeps: [gap ?? least], behind: limb } as const;
    now = widenPlaces(now, wish, rule, changes);
  }
  if (gap !== null) {
    const keeps = limb === null ? [least] : [limb, least];
    now = widenPlaces(now, { side: 'gap', width: gap, keeps }, rule, changes);
  }
  if (limb !== null)
    now = widenPlaces(now, { side: 'limb', width: limb, keeps: [gap ?? least] }, rule, changes);
  const tight = [...stillTight(now, 'gap', gap), ...stillTight(now, 'limb', limb)];
  return { pieces: now, tight, changes };
}

/** Narrow places that are left, the narrowest first. */
function stillTight(pieces: readonly Sound[], kind: Side, asked: number | null): Tight[] {
  if (asked === null) return [];
  const contours = contoursOf(pieces);
  const owners = ownersOf(pieces);
  const { boundary, runs, dots } = narrowPlaces(contours, asked / 2, kind);
  const named = (homes: readonly number[]): string =>
    namesTogether(
      [...new Set(homes.map((k) => owners[k]!))].sort((a, b) => a - b).map((i) => pieces[i]!.name),
    );
  const found = runs.map((run): Tight => {
    const narrowest = run.balls.reduce((a, b) => (b.w < a.w ? b : a));
    const homes = [homeOf(boundary, narrowest.p), homeOf(boundary, narrowest.q)];
    return {
      kind,
      at: [narrowest.x, narrowest.y],
      width: 2 * leastOf(run.balls),
      length: stretched([run]).length,
      asked,
      piece: named(homes),
    };
  });
  for (const { contour, at, w } of dots)
    found.push({ kind, at, width: 2 * w, length: 2 * w, asked, piece: named([contour]) });
  return found.sort((a, b) => a.width - b.width);
}
