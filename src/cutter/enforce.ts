import type { Artwork } from '../geometry/artwork.js';
import { eased } from '../geometry/eased.js';
import { bounds, type Contour, contourArea } from '../geometry/region.js';
import { thickened } from '../geometry/thicken/thicken.js';
import { tidied, withoutCrumbs } from '../geometry/tidy.js';
import { oncePerShape } from './alike.js';
import { type Sound, settleBetween } from './between.js';
import { extentOf, middleOf } from './extent.js';
import { filleted } from './fillet.js';
import type { Rule } from './rule.js';
import type { Change, Safe } from './safe.js';
import { settle } from './settle.js';
import { tightPlaces } from './tight.js';
import { askedWidth, withWidths } from './widths/widths.js';

/**
 * The enforcement pass: artwork with every inside corner, of the drawing and of its complement, rounded to r, so that
 * the result has reach r on both sides and a round cutter can cut pocket and plug.
 *
 * Most pieces need nothing but tangent arcs in their corners. Where features interact (edges shorter than their
 * setbacks, limbs and gaps under 2r) the piece is opened and closed by a disc and its narrow places are settled.
 * Throws Refusal ('thin-limb', 'cannot-settle') with the place when the rule forbids what would be needed.
 *
 * With `gap` or `limb` the places that are narrower than these are then widened on their own middle lines.
 *
 * @param rule r: corner radius, mm; thin: what becomes of limbs under 2r; touch: of gaps under 2r between pieces
 */
export function enforce(artwork: Artwork, rule: Rule): Safe {
  const changes: Change[] = [];
  const sound: Sound[] = [];
  const make = oncePerShape(
    (name, contours, own) =>
      (rule.thin === 'widen' ? null : rounded(contours, rule.r)) ?? settled(name, contours, rule, own),
  );
  for (const p of artwork.pieces) {
    const tidy = cleaned(p.name, p.region.contours, changes);
    const contours = make(p.name, tidy, changes);
    if (contours.length > 0) sound.push({ name: p.name, contours });
  }
  const apart = settleBetween(sound, rule, changes);
  if (askedWidth(rule, 'gap') === null && askedWidth(rule, 'limb') === null) return safeOf(apart, changes);
  const wider = withWidths(apart, rule);
  const asked = [...wider.changes];
  const pieces = settleBetween(wider.pieces, rule, asked);
  return { ...safeOf(pieces, [...notAgain(changes, asked), ...asked]), tight: wider.tight };
}

/** Specks this small are left out without a word, mm. */
const SPECK = 0.01;

/** A piece's contours without crumbs; notes what was nothing but a crumb or a line. */
function cleaned(name: string, contours: readonly Contour[], changes: Change[]): Contour[] {
  const out: Contour[] = [];
  for (const c of contours) {
    const clean = tidied(c);
    if (clean.length > 0) {
      out.push(clean);
      continue;
    }
    const box = bounds([c]);
    const size = extentOf(box);
    if (size > SPECK)
      changes.push({
        kind: contourArea(c) < 0 ? 'filled' : 'vanished',
        piece: name,
        at: middleOf(box),
        size,
      });
  }
  return out;
}

function safeOf(sound: readonly Sound[], changes: readonly Change[]): Safe {
  const pieces = sound.map((p) => ({ name: p.name, region: { contours: p.contours } }));
  return { region: { contours: pieces.flatMap((p) => p.region.contours) }, pieces, changes };
}

/** What was made as wide as the cutter, where it was not made wider still afterwards: that is said once. */
function notAgain(first: readonly Change[], then: readonly Change[]): Change[] {
  const wider = new Set(then.filter((c) => c.to !== undefined).map((c) => `${c.kind} ${c.piece}`));
  const made = ['parted', 'opened', 'widened'];
  return first.filter((c) => !(made.includes(c.kind) && wider.has(`${c.kind} ${c.piece}`)));
}

/** The contours with an arc in every corner, or null where that alone does not make them sound. */
function rounded(contours: readonly Contour[], r: number): readonly Contour[] | null {
  const out: Contour[] = [];
  for (const c of contours) {
    const f = filleted(c, r);
    if (!f) return null;
    out.push(withoutCrumbs(f));
  }
  return tightPlaces(out, r, true).length > 0 ? null : out;
}

function settled(name: string, drawn: readonly Contour[], rule: Rule, changes: Change[]): readonly Contour[] {
  const { r, thin } = rule;
  const limbs = thin === 'widen' || askedWidth(rule, 'limb') !== null;
  const gaps = thin === 'widen' || askedWidth(rule, 'gap') !== null;
  if (!limbs && !gaps) return settle(name, drawn, r, thin, changes);
  const wide = widened(name, drawn, r, limbs && gaps ? undefined : limbs ? 'strokes' : 'gaps', changes);
  return rounded(wide, r) ?? settle(name, wide, r, thin, changes);
}

/** The piece with its thin strokes grown to the cutter's width, its narrow gaps opened where there is room, or both. */
function widened(
  name: string,
  contours: readonly Contour[],
  r: number,
  only: 'strokes' | 'gaps' | undefined,
  changes: Change[],
): readonly Contour[] {
  const { region, grown, opened } = thickened({ contours }, r, only);
  for (const g of grown) changes.push({ kind: 'widened', piece: name, at: g.at, size: g.length });
  for (const g of opened) changes.push({ kind: 'opened', piece: name, at: g.at, size: g.length });
  return grown.length + opened.length === 0
    ? contours
    : region.contours.map((c) => eased(tidied(c), r)).filter((c) => c.length > 0);
}
