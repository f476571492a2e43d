import { fromPsi } from './conversions.js';
import type { Strength } from './facts.js';
import { type Figure, figure } from './figure.js';
import { type OwnWoods, ownWood } from './own.js';
import { findWood } from './woods.js';

const TABLE = 'Wood Handbook FPL-GTR-190 table 5-3a';

function row(compression: number, shear: number, tension: number | null): Strength {
  const known = (kPa: number): Figure => figure(kPa, 'transcribed', TABLE);
  return {
    compression: known(compression),
    shear: known(shear),
    tension: tension === null ? null : known(tension),
  };
}

/** Imported woods, whose table has no strength across the grain. */
function shearOnly(shear: Figure): Strength {
  return { compression: null, shear, tension: null };
}

/** By the wood's name in woods.ts. */
export const strengths: Readonly<Record<string, Strength>> = {
  'American beech': row(7000, 13_900, 7000),
  basswood: row(2600, 6800, 2400),
  'black cherry': row(4800, 11_700, 3900),
  'black walnut': row(7000, 9400, 4800),
  'eastern white pine': row(3000, 6200, 2100),
  mahogany: shearOnly(
    figure(fromPsi(1230), 'transcribed', 'Wood Handbook FPL-GTR-113 table 4-5b, 1,230 psi, quoted'),
  ),
  'northern red oak': row(7000, 12_300, 5500),
  purpleheart: shearOnly(
    figure(fromPsi(2220), 'transcribed', '2,220 psi, transcription that agrees with Wood Handbook table 5-5'),
  ),
  'sugar maple': row(10_100, 16_100, null),
  teak: shearOnly(figure(fromPsi(1890), 'memory', 'Wood Handbook table 5-5, 1,890 psi')),
  'white ash': row(8000, 13_200, 6500),
  'white oak': row(7400, 13_800, 5500),
  'yellow birch': row(6700, 13_000, 6300),
  'yellow-poplar': row(3400, 8200, 3700),
};

/** Strengths of the wood of that name or other name; null where it is not in the table. */
export function strengthOf(name: string, own: OwnWoods = []): Strength | null {
  const mine = ownWood(name, own);
  if (mine) return mine.strength;
  const wood = findWood(name);
  return wood && Object.hasOwn(strengths, wood.name) ? strengths[wood.name]! : null;
}

/**
 * Density at 12 % moisture content, kg/m3: specific gravity x 1000 x 1.12 (Wood Handbook equation 4-12, transcribed).
 * Null where the wood or its specific gravity at 12 % is not known.
 */
export function densityOf(name: string, own: OwnWoods = []): Figure | null {
  const mine = ownWood(name, own);
  if (mine) return mine.density === null ? null : figure(mine.density, 'given', mine.source);
  const wood = findWood(name);
  if (!wood || wood.specificGravity === null) return null;
  return figure(wood.specificGravity * 1120, 'computed', `1120 x specific gravity (${wood.source})`);
}
