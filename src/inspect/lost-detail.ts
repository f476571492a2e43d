import type { Change } from '../cutter/safe.js';
import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

const WHAT: Readonly<Record<Change['kind'], string>> = {
  vanished: 'was thinner than the cutter and is left out',
  split: 'is cut into several parts where it was thinner than the cutter',
  filled: 'had a gap or hole narrower than the cutter, now solid',
  parted: 'came nearer than the cutter is wide; the gap is opened to it',
  joined: 'came nearer than the cutter is wide; the gap is bridged',
  shortened: 'lost a narrow end',
  merged: 'are now one part',
};

/** Each change the cutter forced beyond rounding corners, one finding a change. */
export function lostDetail({ recipe, safe }: Setup): Finding[] {
  return safe.changes.map((c) => ({
    code: 'lost-detail',
    severity: c.kind === 'vanished' || c.kind === 'split' ? 'warn' : 'note',
    where: c.at,
    numbers: { size: c.size },
    do: `${c.piece} ${WHAT[c.kind]} (${lengthText(c.size, recipe.units)} across). A larger pattern or a smaller cutter keeps it.`,
  }));
}
