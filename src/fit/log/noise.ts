import { exp } from '../../geometry/power.js';

/*
 * How surely a fit of clearance c comes out looser than a border t: a logistic step of spread sigma round t. It stands
 * for the machine's scatter and for the maker's hand and eye.
 */

/** With this factor the logistic step lies within 0.01 of the normal one everywhere (Haley 1952, from memory). */
const LIKE_NORMAL = 1.702;
/** Distances are rounded to this, mm: a fortieth of the finest spread used. */
const GRAIN = 1 / 4000;
const REACH = 4000;

const tables = new Map<number, Float64Array>();

/** The chance that a fit `over` mm wider than a border shows as beyond it, 0 to 1, for a spread of `sigma` mm. */
export function beyond(sigma: number): (over: number) => number {
  const t = table(sigma);
  return (over) => {
    const k = Math.round(over / GRAIN);
    return k <= -REACH ? 0 : k >= REACH ? 1 : t[k + REACH]!;
  };
}

function table(sigma: number): Float64Array {
  let t = tables.get(sigma);
  if (!t) {
    t = new Float64Array(2 * REACH + 1);
    for (let k = -REACH; k <= REACH; k++) t[k + REACH] = 1 / (1 + exp(-LIKE_NORMAL * ((k * GRAIN) / sigma)));
    tables.set(sigma, t);
  }
  return t;
}
