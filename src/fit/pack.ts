/** A box to be packed, mm: how far it reaches along the board and across it. */
export interface PackBox {
  readonly along: number;
  readonly across: number;
}

/** Where a box's lower corner lies, mm from the packed area's corner; null when there was no room for it. */
export type PackPlace = { readonly x: number; readonly y: number } | null;

export interface Packing {
  readonly places: readonly PackPlace[];
  /** How much of the length is taken up, mm. */
  readonly used: number;
  readonly count: number;
}

/** Rounding that must not push a box out, mm. */
const HAIR = 1e-9;

/** Orders tried, each by what comes first; the best result is kept. */
const ORDERS: readonly ((a: PackBox, b: PackBox) => number)[] = [
  (a, b) => b.along - a.along || b.across - a.across,
  (a, b) => b.across - a.across || b.along - a.along,
  (a, b) => b.along * b.across - a.along * a.across || b.along - a.along,
  (a, b) => Math.max(b.along, b.across) - Math.max(a.along, a.across) || b.along - a.along,
];

/**
 * Packs boxes, never turned, into a strip of the given width from one end, so that what is left over is one piece. The
 * skyline rule (Jylanki 2010, "A thousand ways to pack the bin"): each box goes where it ends nearest to the strip's
 * start. Tried in four orders; most boxes placed wins, then the shortest. What would end beyond `length` is left out.
 */
export function pack(boxes: readonly PackBox[], width: number, length = Number.POSITIVE_INFINITY): Packing {
  let best: Packing | null = null;
  for (const order of ORDERS) {
    const made = packInOrder(boxes, order, width, length);
    if (!best || made.count > best.count || (made.count === best.count && made.used < best.used - HAIR))
      best = made;
  }
  return best!;
}

/** A step of the skyline: from y on, everything up to `x` is taken or lost. */
interface Step {
  y: number;
  x: number;
}

function packInOrder(
  boxes: readonly PackBox[],
  order: (a: PackBox, b: PackBox) => number,
  width: number,
  length: number,
): Packing {
  const places: PackPlace[] = boxes.map(() => null);
  const sorted = boxes.map((box, k) => ({ box, k })).sort((a, b) => order(a.box, b.box) || a.k - b.k);
  let sky: Step[] = [{ y: 0, x: 0 }];
  let used = 0;
  let count = 0;
  for (const { box, k } of sorted) {
    const found = lowest(sky, box.across, width);
    if (!found || found.x + box.along > length + HAIR) continue;
    places[k] = found;
    count++;
    used = Math.max(used, found.x + box.along);
    sky = raised(sky, found.y, box.across, found.x + box.along, width);
  }
  return { places, used, count };
}

/** The place nearest to the strip's start for something so wide; of equal ones the lowest. */
function lowest(sky: readonly Step[], across: number, width: number): { x: number; y: number } | null {
  let best: { x: number; y: number } | null = null;
  for (let i = 0; i < sky.length; i++) {
    const { y } = sky[i]!;
    if (y + across > width + HAIR) break;
    let x = 0;
    for (let j = i; j < sky.length && sky[j]!.y < y + across - HAIR; j++) x = Math.max(x, sky[j]!.x);
    if (!best || x < best.x - HAIR) best = { x, y };
  }
  return best;
}

/** The skyline with everything from y to y + across raised to x. */
function raised(sky: readonly Step[], y: number, across: number, x: number, width: number): Step[] {
  const end = y + across;
  const before = sky.filter((s) => s.y < y - HAIR);
  const after = sky.filter((s) => s.y > end + HAIR);
  const under = sky.filter((s) => s.y <= end + HAIR).at(-1)!;
  const rest = end < width - HAIR ? [{ y: end, x: under.x }] : [];
  return [...before, { y, x }, ...rest, ...after];
}
