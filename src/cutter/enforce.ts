import type { Artwork } from '../geometry/artwork.js';
import type { Contour } from '../geometry/region.js';
import { tidied, withoutCrumbs } from '../geometry/tidy.js';
import { type Sound, settleBetween } from './between.js';
import { filleted } from './fillet.js';
import type { Rule } from './rule.js';
import type { Change, Safe } from './safe.js';
import { settle } from './settle.js';
import { tightPlaces } from './tight.js';

/**
 * The enforcement pass: artwork with every inside corner, of the drawing and of its complement, rounded to r, so that
 * the result has reach r on both sides and a round cutter can cut pocket and plug.
 *
 * Most pieces need nothing but tangent arcs in their corners. Where features interact (edges shorter than their
 * setbacks, limbs and gaps under 2r) the piece is opened and closed by a disc and its narrow places are settled.
 * Throws Refusal ('thin-limb', 'cannot-settle') with the place when the rule forbids what would be needed.
 *
 * @param rule r: corner radius, mm; thin: what becomes of limbs under 2r; touch: of gaps under 2r between pieces
 */
export function enforce(artwork: Artwork, rule: Rule): Safe {
  const changes: Change[] = [];
  const sound: Sound[] = [];
  for (const p of artwork.pieces) {
    const contours = soundContours(p.name, p.region.contours, rule, changes);
    if (contours.length > 0) sound.push({ name: p.name, contours });
  }
  const pieces = settleBetween(sound, rule, changes).map((p) => ({
    name: p.name,
    region: { contours: p.contours },
  }));
  return { region: { contours: pieces.flatMap((p) => p.region.contours) }, pieces, changes };
}

function soundContours(
  name: string,
  contours: readonly Contour[],
  rule: Rule,
  changes: Change[],
): readonly Contour[] {
  const tidy = contours.map(tidied).filter((c) => c.length > 0);
  const rounded: Contour[] = [];
  for (const c of tidy) {
    const f = filleted(c, rule.r);
    if (!f) return settle(name, tidy, rule.r, rule.thin, changes);
    rounded.push(withoutCrumbs(f));
  }
  if (tightPlaces(rounded, rule.r, true).length > 0) return settle(name, tidy, rule.r, rule.thin, changes);
  return rounded;
}
