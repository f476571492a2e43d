import { losses } from '../cutter/loss.js';
import { cornerRadius } from '../recipe/recipe.js';
import type { Finding } from './finding.js';
import { lostDetail } from './lost-detail.js';
import { lostParts } from './lost-part.js';
import type { Setup } from './setup.js';

/** What the cutter lost: parts and holes each by its name, and what else it changed gathered by kind. */
export function lost(setup: Setup): Finding[] {
  const found = losses(setup.artwork, setup.safe, cornerRadius(setup.recipe.cutter));
  return [...lostParts(setup, found), ...lostDetail(setup, found)];
}
