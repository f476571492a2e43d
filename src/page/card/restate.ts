import type { Units } from '../../schema/units.js';
import { read, withValue, writtenAt } from '../state/edit.js';
import type { Item } from './items.js';

/** The text in another unit, the piece unchanged: bare lengths keep the unit they were meant in. */
export function restated(text: string, items: readonly Item[], from: Units, to: Units): string {
  if (from === to) return text;
  const tree = read(text);
  let next = text;
  for (const { path, parameter } of items) {
    const written = writtenAt(tree, path);
    if (parameter.kind === 'length' && typeof written === 'number')
      next = withValue(next, path, `${written}${from}`);
  }
  const cutters = writtenAt(tree, ['cutters']);
  if (Array.isArray(cutters))
    next = withValue(
      next,
      ['cutters'],
      cutters.map((d) => (typeof d === 'number' ? `${d}${from}` : d)),
    );
  return withValue(next, ['units'], to);
}
