import type { Change } from '../cutter/safe.js';
import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

const WHAT: Readonly<Record<Change['kind'], string>> = {
  vanished: 'thinner than the cutter and left out',
  split: 'cut into several parts where it was thinner than the cutter',
  filled: 'with a gap or hole narrower than the cutter, now solid',
  parted: 'nearer to each other than the cutter is wide; the gap is opened to it',
  joined: 'nearer to each other than the cutter is wide; the gap is bridged',
  shortened: 'with a narrow end that is cut off',
  merged: 'now one part',
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
      do: `${places} the pattern was ${WHAT[kind]} (largest: ${example}). A larger pattern or a smaller cutter keeps it.`,
    };
  });
}
