/** Where an entry lies, px. */
export interface Place {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Which entry a key leads to from another: left and right in reading order, up and down to the nearest of the next row
 * as the entries lie, Home and End within the row, with Ctrl to the very first and last. Null: the key leads nowhere.
 */
export function led(places: readonly Place[], from: number, key: string, ctrl = false): number | null {
  const here = places[from];
  if (!here) return null;
  const to = { ArrowLeft: from - 1, ArrowRight: from + 1 }[key];
  if (to !== undefined) return places[to] ? to : null;
  if (key === 'ArrowUp' || key === 'ArrowDown') return rowBeyond(places, here, key === 'ArrowUp');
  if (key !== 'Home' && key !== 'End') return null;
  if (ctrl) return key === 'Home' ? 0 : places.length - 1;
  const row = rowOf(places, here);
  return (key === 'Home' ? row[0] : row.at(-1)) ?? null;
}

/** Entries whose middle lies level with one, in reading order. */
function rowOf(places: readonly Place[], { top, height }: Place): number[] {
  return [...places.keys()].filter((k) => {
    const middle = places[k]!.top + places[k]!.height / 2;
    return middle > top && middle < top + height;
  });
}

/** Of the nearest row above or below, the entry whose middle is nearest sideways; the first of two. */
function rowBeyond(places: readonly Place[], here: Place, up: boolean): number | null {
  let next: Place | null = null;
  for (const p of places) {
    const beyond = up ? p.top + p.height <= here.top + 1 : p.top >= here.top + here.height - 1;
    if (beyond && (!next || (up ? p.top > next.top : p.top < next.top))) next = p;
  }
  if (!next) return null;
  const off = (k: number): number => Math.abs(middleOf(places[k]!) - middleOf(here));
  return rowOf(places, next).reduce((best, k) => (off(k) < off(best) - 0.5 ? k : best));
}

function middleOf({ left, width }: Place): number {
  return left + width / 2;
}
