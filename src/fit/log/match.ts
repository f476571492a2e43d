import type { Setup } from './entry.js';

/** Depth counts in classes, mm: a plug's walls bind all the way down, so a deep fit is another fit. Our own choice. */
const CLASSES = [6, 12, 20] as const;

/**
 * Slots measured this near each other are one cutter, mm: the gap per side changes by as much as the slot, and this is
 * a quarter of what machines commonly repeat.
 */
const SAME_CUTTER = 0.005;

/** The depth class as words: "up to 6 mm", "6 to 12 mm", "over 20 mm". */
export function depthClass(depth: number): string {
  const k = CLASSES.findIndex((most) => depth <= most);
  if (k === 0) return `up to ${CLASSES[0]} mm`;
  return k < 0 ? `over ${CLASSES.at(-1)} mm` : `${CLASSES[k - 1]} to ${CLASSES[k]} mm`;
}

/** Why a result of one setup says nothing about the other, in a word or two; null when it does. */
export function unlike(a: Setup, b: Setup): string | null {
  if (key(a.woods.field) !== key(b.woods.field) || key(a.woods.plug) !== key(b.woods.plug))
    return 'other woods';
  const near = (x: number, y: number): boolean => Math.abs(x - y) <= SAME_CUTTER;
  const { cuts } = a.cutter;
  const other = b.cutter.cuts;
  const slot = cuts === null || other === null ? cuts === other : near(cuts, other);
  if (!near(a.cutter.diameter, b.cutter.diameter) || !slot) return 'another cutter';
  return depthClass(a.depth) === depthClass(b.depth) ? null : 'another depth';
}

function key(name: string): string {
  return name.trim().toLowerCase();
}
