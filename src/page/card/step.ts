import { shownIn } from '../state/card.js';
import type { Item } from './items.js';
import { nudge, standing, units } from './on-card.js';
import { ruleOf, stepped } from './rule.js';
import { bareText, writtenSize } from './values.js';

/** Moves a size along its rule; false where it is none. */
export function stepItem(item: Item, steps: number): boolean {
  const p = item.parameter;
  if (!('min' in p)) return false;
  const { held: now } = standing(item);
  const from = typeof now === 'number' ? now : p.default;
  const rule = ruleOf(p, from, shownIn.value);
  const size = Number(bareText(p, from, shownIn.value));
  nudge(item, writtenSize(p, stepped(p, rule, size, steps, shownIn.value), shownIn.value, units()));
  return true;
}
