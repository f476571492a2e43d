import type { Inlay } from '../fit/inlay.js';
import type { WoodArtwork } from '../fit/run-under.js';
import { contains, distanceToBoundary, type Region } from '../geometry/region.js';
import { cornerRadius } from '../recipe/recipe.js';
import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import { inspect } from './index.js';
import type { Setup } from './setup.js';

/**
 * The findings of each inlay by itself, as if it were the only one. What is the same for all of them is said once;
 * with several, the rest names its wood.
 */
export function inspectInlays(
  { recipe, outline }: Pick<Setup, 'recipe' | 'outline'>,
  inlays: readonly Inlay[],
  woods: readonly WoodArtwork[],
): Finding[] {
  const [only, ...further] = inlays.map(({ wood, artwork, safe, pair }, k) => {
    const own = wood === recipe.woods.plug ? recipe : { ...recipe, woods: { ...recipe.woods, plug: wood } };
    const setup: Setup = { recipe: own, outline, artwork, safe, pair };
    return inspect(
      woods.length > 1 ? { ...setup, unseen: unseenAt(woods, k, cornerRadius(recipe.cutter)) } : setup,
    );
  });
  if (further.length === 0) return only!;
  const found = [only!, ...further];
  const texts = found.map((list) => new Set(list.map((f) => JSON.stringify(f))));
  const common = (f: Finding): boolean => texts.every((t) => t.has(JSON.stringify(f)));
  return found.flatMap((list, k) =>
    list.flatMap((f) => {
      if (!common(f)) return [{ ...f, do: `${inlays[k]!.wood}: ${f.do}` }];
      return k === 0 ? [f] : [];
    }),
  );
}

/** What another wood was drawn to lie in no one sees; what is taken away shows unless a later one lies there. */
export function unseenAt(woods: readonly WoodArtwork[], k: number, r: number): NonNullable<Setup['unseen']> {
  const regions = woods.map((w) => w.own.map((p) => p.region));
  const later = regions.slice(k + 1).flat();
  const others = regions.flatMap((list, j) => (j === k ? [] : list));
  const within = (region: Region, [x, y]: readonly [number, number]): boolean =>
    contains(region, x, y) || distanceToBoundary(region, x, y) < r;
  return (at, filled) => (filled ? others : later).some((region) => within(region, at));
}

/** Pieces that later woods cover wholly, and gaps between woods too narrow to keep: one finding of each a wood. */
export function betweenWoods(woods: readonly WoodArtwork[], { cutter, units }: Setup['recipe']): Finding[] {
  const width = lengthText(2 * cornerRadius(cutter), units);
  return woods.flatMap(({ wood, hidden, closed }): Finding[] => [
    ...hidden.slice(0, 1).map((first): Finding => {
      const n = hidden.length;
      const which = n === 1 ? `${first.name} lies` : `${n} pieces (the first is ${first.name}) lie`;
      return {
        code: 'hidden-wood',
        severity: 'warn',
        where: null,
        numbers: { pieces: n },
        do: `${wood}: ${which} wholly under later woods and will not show. Woods go in as woods.plugs lists them, what it does not name first: name these pieces there, after those that cover them.`,
      };
    }),
    ...closed.slice(0, 1).map(([a, b]): Finding => {
      const n = closed.length;
      return {
        code: 'gap-between-woods',
        severity: 'warn',
        where: null,
        numbers: { places: n },
        do: `${wood}: ${n === 1 ? 'one piece is' : `${n} pairs of pieces are`} drawn nearer than ${width} to a later wood (${n === 1 ? '' : 'the first is '}${a} beside ${b}): the gap is filled with ${wood}. Draw them ${width} apart to keep the field between them, or touching.`,
      };
    }),
  ]);
}
