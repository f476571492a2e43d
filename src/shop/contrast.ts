import type { Lightness } from './facts.js';
import { type OwnWoods, ownWood } from './own.js';
import { findWood } from './woods.js';

const tones: Readonly<Record<string, Lightness>> = {
  'American beech': { fresh: 73, aged: 67 },
  basswood: { fresh: 83, aged: 76 },
  'black cherry': { fresh: 62, aged: 47 },
  'black walnut': { fresh: 37, aged: 44 },
  'eastern white pine': { fresh: 83, aged: 70 },
  mahogany: { fresh: 52, aged: 44 },
  'northern red oak': { fresh: 69, aged: 62 },
  padauk: { fresh: 45, aged: 33 },
  purpleheart: { fresh: 40, aged: 31 },
  'red alder': { fresh: 66, aged: 58 },
  'sugar maple': { fresh: 83, aged: 75 },
  teak: { fresh: 56, aged: 50 },
  'white ash': { fresh: 80, aged: 73 },
  'white oak': { fresh: 67, aged: 60 },
  'yellow birch': { fresh: 77, aged: 69 },
  'yellow-poplar': { fresh: 75, aged: 63 },
};

/** A difference of lightness under this reads weakly from across a room. Our own choice: twice one board's spread. */
export const WEAK_UNDER = 16;

/** Woods whose coloured dust is rubbed or sanded into pale ones. Common practice, no source. */
const DUSTY: ReadonlySet<string> = new Set(['black walnut', 'padauk', 'purpleheart']);

/** Of those, the ones whose dust is red or violet; walnut's merely greys. Common practice, no source. */
const COLOURED: ReadonlySet<string> = new Set(['padauk', 'purpleheart']);

/** A wood as light as this shows it, L* when fresh: maple, ash, basswood, pine, birch, poplar, beech. Our own choice. */
const PALE_FROM = 72;

/** Lightness of the wood of that name or other name, from memory; null where it is not in the table. */
export function lightnessOf(name: string, own: OwnWoods = []): Lightness | null {
  const mine = ownWood(name, own);
  if (mine) return mine.lightness;
  const wood = findWood(name);
  return wood && Object.hasOwn(tones, wood.name) ? tones[wood.name]! : null;
}

export interface Contrast {
  /** Differences of lightness, 0 or more. */
  readonly fresh: number;
  readonly aged: number;
  /** Under `WEAK_UNDER`. */
  readonly weakFresh: boolean;
  readonly weakAged: boolean;
}

/** How far two woods stand apart. Estimate; null where either wood is unknown. */
export function contrast(one: string, other: string, own: OwnWoods = []): Contrast | null {
  const a = lightnessOf(one, own);
  const b = lightnessOf(other, own);
  if (!a || !b) return null;
  const fresh = Math.abs(a.fresh - b.fresh);
  const aged = Math.abs(a.aged - b.aged);
  return { fresh, aged, weakFresh: fresh < WEAK_UNDER, weakAged: aged < WEAK_UNDER };
}

/** Whether the dust of the first wood stains the second when both are sanded together; null where one is unknown. */
export function dustStains(dusty: string, neighbour: string, own: OwnWoods = []): boolean | null {
  const from = findWood(dusty, own);
  const onto = lightnessOf(neighbour, own);
  if (!from || !onto) return null;
  return DUSTY.has(from.name) && onto.fresh >= PALE_FROM;
}

/** Whether a wood's dust has a strong colour of its own. */
export function dustColours(name: string): boolean {
  const wood = findWood(name);
  return wood !== undefined && COLOURED.has(wood.name);
}
