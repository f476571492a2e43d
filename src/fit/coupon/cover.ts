import type { Box } from '../../geometry/region.js';
import { joined } from './box.js';
import type { Place, Spot } from './spot.js';

/** Of more places than this every so many-th is tried. */
const MOST_PLACES = 120;

/**
 * The smallest box found that holds one place of each spot: from every place of the spot with the fewest, the nearest of
 * the others are added one after another, each as cheaply as can be. `room` is added all round when boxes are compared.
 */
export function smallestCover(spots: readonly Spot[], room: number): Box {
  const lists = spots.map((s) => thinned(s.places)).sort((a, b) => a.length - b.length);
  const cost = (b: Box): number => (b.maxX - b.minX + 2 * room) * (b.maxY - b.minY + 2 * room);
  let best: Box | null = null;
  for (const anchor of lists[0]!) {
    let box = anchor.box;
    for (const list of lists.slice(1)) {
      let added: Box | null = null;
      for (const p of list) {
        const both = joined(box, p.box);
        if (!added || cost(both) < cost(added)) added = both;
      }
      box = added!;
      if (best && cost(box) >= cost(best)) break;
    }
    if (!best || cost(box) < cost(best)) best = box;
  }
  return best!;
}

function thinned(places: readonly Place[]): readonly Place[] {
  const step = Math.ceil(places.length / MOST_PLACES);
  return step <= 1 ? places : places.filter((_, k) => k % step === 0);
}
