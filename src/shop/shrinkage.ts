import type { Movement } from './facts.js';
import { figure, type Status } from './figure.js';
import { type OwnWoods, ownWood } from './own.js';
import { findWood } from './woods.js';

/**
 * The dimensional-change coefficient that belongs to a total shrinkage S (%): C = 1 / (3000/S - 20), a straight line
 * on which shrinkage starts at 30 % moisture content, for a size taken at 10 %. It gives the coefficients of most
 * single species of table 13-5 to five decimals; not those of the commercial oak groups, nor teak's. Computed.
 */
export function coefficientFromShrinkage(shrinkage: number): number {
  return 1 / (3000 / shrinkage - 20);
}

const HANDBOOK = 'Wood Handbook FPL-GTR-190';
const S = `${HANDBOOK} table 4-3`;
const I = `${HANDBOOK} table 4-4`;
const C = `${HANDBOOK} table 13-5`;
const SHEET = 'Forest Products Laboratory fact sheet';
const IDENTITY = 'worked out from the shrinkage: C = 1 / (3000/S - 20)';

type Pair = readonly [radial: number, tangential: number];
type From = readonly [status: Status, source: string];

const SEEN_S: From = ['published', S];
const SEEN_C: From = ['published', C];

function pair([radial, tangential]: Pair, [status, source]: From) {
  return { radial: figure(radial, status, source), tangential: figure(tangential, status, source) };
}

function row(shrinkage: Pair, change: Pair, ofShrinkage: From = SEEN_S, ofChange: From = SEEN_C): Movement {
  return { shrinkage: pair(shrinkage, ofShrinkage), change: pair(change, ofChange) };
}

/** A wood whose radial coefficient the table lacks. */
function imported(shrinkage: Pair, tangential: number, ofShrinkage: From): Movement {
  return {
    shrinkage: pair(shrinkage, ofShrinkage),
    change: {
      radial: figure(coefficientFromShrinkage(shrinkage[0]), 'computed', IDENTITY),
      tangential: figure(tangential, 'transcribed', `${C}, quoted by flooring charts`),
    },
  };
}

/** By the wood's name in woods.ts. */
export const movements: Readonly<Record<string, Movement>> = {
  'American beech': row([5.5, 11.9], [0.0019, 0.00431]),
  basswood: row([6.6, 9.3], [0.0023, 0.0033]),
  'black cherry': row([3.7, 7.1], [0.00126, 0.00248]),
  'black walnut': row([5.5, 7.8], [0.0019, 0.00274]),
  'eastern white pine': row([2.1, 6.1], [0.00071, 0.00212], ['memory', S], ['transcribed', C]),
  // The coefficients that circulate for mahogany (0.00172, 0.00238) do not go with its shrinkage, and may be another
  // wood's; so they are worked out.
  mahogany: row(
    [3.0, 4.1],
    [coefficientFromShrinkage(3.0), coefficientFromShrinkage(4.1)],
    ['published', `${SHEET} on Swietenia macrophylla`],
    ['computed', IDENTITY],
  ),
  // Table 13-5 has no row of its own for northern red oak that was seen: that of the commercial group stands in.
  'northern red oak': row(
    [4.0, 8.6],
    [0.00158, 0.00369],
    ['memory', S],
    ['published', `${C}, red oak, commercial`],
  ),
  padauk: imported([3.3, 5.2], 0.0018, ['published', `${SHEET} on Pterocarpus soyauxii`]),
  purpleheart: imported([3.2, 6.1], 0.00212, ['memory', I]),
  'red alder': row([4.4, 7.3], [0.00151, 0.00256]),
  'sugar maple': row([4.8, 9.9], [0.00165, 0.00353], ['transcribed', S]),
  teak: {
    shrinkage: pair([2.5, 5.8], ['memory', I]),
    change: {
      radial: figure(0.00101, 'memory', C),
      tangential: figure(0.00186, 'transcribed', `${C}, quoted by flooring charts`),
    },
  },
  'white ash': row([4.9, 7.8], [0.00169, 0.00274]),
  'white oak': row([5.6, 10.5], [0.0018, 0.00365], SEEN_S, ['published', `${C}, white oak, commercial`]),
  'yellow birch': row([7.3, 9.5], [0.00256, 0.00338]),
  'yellow-poplar': row([4.6, 8.2], [0.00158, 0.00289], SEEN_S, ['memory', C]),
};

/** Shrinkage and coefficients of the wood of that name or other name; null where it is not in the table. */
export function movementOf(name: string, own: OwnWoods = []): Movement | null {
  const mine = ownWood(name, own);
  if (mine) return mine.movement;
  const wood = findWood(name);
  return wood && Object.hasOwn(movements, wood.name) ? movements[wood.name]! : null;
}
