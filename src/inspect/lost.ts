import { type Loss, losses } from '../cutter/loss.js';
import type { Change } from '../cutter/safe.js';
import { cornerRadius } from '../recipe/recipe.js';
import type { Finding } from './finding.js';
import { lostDetail } from './lost-detail.js';
import { lostParts } from './lost-part.js';
import type { Setup } from './setup.js';

/** What is filled with plug; the rest is taken away from it. */
const FILLED: ReadonlySet<Loss['kind'] | Change['kind']> = new Set([
  'filled',
  'closed',
  'divided',
  'merged',
  'gap',
  'joined',
  'widened',
]);

/** Whether a loss or change shows in the finished piece. */
export function shows({ kind, at }: Loss | Change, unseen: Setup['unseen']): boolean {
  return !unseen?.(at, FILLED.has(kind));
}

/** What the cutter lost: parts and holes each by its name, and what else it changed gathered by kind. */
export function lost(setup: Setup): Finding[] {
  const { safe, unseen } = setup;
  const seen = (l: Loss | Change): boolean => shows(l, unseen);
  const found = losses(setup.artwork, safe, cornerRadius(setup.recipe.cutter)).filter(seen);
  const shown = unseen ? { ...setup, safe: { ...safe, changes: safe.changes.filter(seen) } } : setup;
  return [...lostParts(shown, found), ...lostDetail(shown, found)];
}
