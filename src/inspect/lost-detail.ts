import type { Change } from '../cutter/safe.js';
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
};

const LOST: ReadonlySet<Change['kind']> = new Set(['vanished', 'split', 'filled', 'shortened']);

/** What the cutter forced beyond rounding corners: one finding a kind of change, placed where it is largest. */
export function lostDetail({ recipe, safe }: Setup): Finding[] {
  const kinds = [...new Set(safe.changes.map((c) => c.kind))];
  return kinds.map((kind) => {
    const changes = safe.changes.filter((c) => c.kind === kind);
    const largest = changes.reduce((a, b) => (b.size > a.size ? b : a));
    const places = changes.length === 1 ? 'At one place' : `At ${changes.length} places`;
    const example = `${largest.piece}, ${lengthText(largest.size, recipe.units)} across`;
    return {
      code: 'lost-detail',
      severity: LOST.has(kind) ? 'warn' : 'note',
      where: largest.at,
      numbers: { places: changes.length, largest: largest.size },
      do: `${places} ${WHAT[kind]} (largest: ${example}). A larger pattern or a smaller cutter keeps it.`,
    };
  });
}
