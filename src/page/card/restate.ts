import type { Units } from '../../schema/units.js';
import { read, type Written, withValue, writtenAt } from '../state/edit.js';
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
  if (Array.isArray(cutters)) next = withValue(next, ['cutters'], sized(cutters, from));
  for (const face of ['outside', 'inside']) {
    const path = ['bowl', face, 'points'];
    const points = writtenAt(tree, path);
    if (Array.isArray(points))
      next = withValue(
        next,
        path,
        points.map((p) => sized(p, from)),
      );
  }
  return withValue(next, ['units'], to);
}

/** Bare numbers of a list, with the unit they were meant in. */
function sized(list: Written, units: Units): Written {
  return Array.isArray(list) ? list.map((d) => (typeof d === 'number' ? `${d}${units}` : d)) : list;
}
