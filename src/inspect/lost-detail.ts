import type { Loss } from '../cutter/loss.js';
import type { Change } from '../cutter/safe.js';
import { cornerRadius } from '../recipe/recipe.js';
import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

const WHAT: Readonly<Record<Change['kind'], string>> = {
  vanished: 'the pattern is thinner than the cutter and was left out',
  split: 'a part is thinner than the cutter and was cut in two',
  filled: 'a gap or hole is narrower than the cutter and was filled',
  parted: 'two pieces come nearer than the cutter is wide and were parted',
  joined: 'two pieces come nearer than the cutter is wide and were joined',
  shortened: 'a narrow end was cut off',
  merged: 'several parts became one',
  widened: 'a stroke thinner than the cutter was grown to its width',
  opened: 'a gap inside a piece was opened to the width of the cutter',
};

const LOST: ReadonlySet<Change['kind']> = new Set(['vanished', 'split', 'filled', 'shortened']);

/** The losses that say the same as a change of each kind. */
const SAID: Readonly<Record<Change['kind'], readonly Loss['kind'][]>> = {
  vanished: ['vanished'],
  split: ['split', 'opened', 'vanished'],
  filled: ['filled', 'closed', 'divided', 'merged'],
  parted: [],
  joined: ['merged'],
  shortened: ['vanished', 'split'],
  merged: ['merged'],
  widened: [],
  opened: [],
};

/**
 * What the cutter forced beyond rounding corners: one finding a kind of change, placed where it is largest. Changes
 * that a loss names are left out: the same piece, a kind that means the same, and the same place (a part that was cut
 * in two or is gone, and pieces that became one, count as one place).
 */
export function lostDetail({ recipe, safe }: Setup, losses: readonly Loss[] = []): Finding[] {
  const r = cornerRadius(recipe.cutter);
  // What was asked for is no loss.
  const rest = safe.changes.filter((c) => c.to === undefined && !losses.some((l) => says(l, c, r)));
  const kinds = [...new Set(rest.map((c) => c.kind))];
  return kinds.map((kind) => {
    const changes = rest.filter((c) => c.kind === kind);
    const largest = changes.reduce((a, b) => (b.size > a.size ? b : a));
    const places = changes.length === 1 ? 'At one place' : `At ${changes.length} places`;
    const example = `${largest.piece}, ${lengthText(largest.size, recipe.units)} across`;
    return {
      code: 'lost-detail',
      severity: LOST.has(kind) ? 'warn' : 'note',
      where: largest.at,
      numbers: { places: changes.length, largest: largest.size },
      do: `${places} ${WHAT[kind]} (largest: ${example}). A larger pattern or a smaller cutter ${kind === 'widened' || kind === 'opened' ? 'leaves it as drawn' : 'keeps it'}.`,
    };
  });
}

function says(l: Loss, c: Change, r: number): boolean {
  if (!SAID[c.kind].includes(l.kind)) return false;
  if (c.piece !== l.piece && !l.of.some((p) => c.piece.includes(p.name))) return false;
  if (l.kind === 'split' || (l.kind === 'merged' && c.kind !== 'filled')) return true;
  const dx = l.at[0] - c.at[0];
  const dy = l.at[1] - c.at[1];
  return Math.sqrt(dx * dx + dy * dy) < l.size + c.size + 4 * r;
}
