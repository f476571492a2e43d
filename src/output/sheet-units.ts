import type { Recipe } from '../recipe/recipe.js';
import { NEWTONS_PER_POUND, toPsi, toTons } from '../shop/conversions.js';
import { decimal, type Units } from './format.js';

export function volumeText(mm3: number, units: Units): string {
  return units === 'mm' ? `${decimal(mm3 / 1000, 2)} cm³` : `${decimal(mm3 / 25.4 / 25.4 / 25.4, 3)} in³`;
}

export function pressureText(kPa: number, units: Units): string {
  return units === 'mm' ? `${decimal(kPa, 0)} kPa` : `${decimal(toPsi(kPa), 0)} psi`;
}

/** Kilonewtons or pounds-force, and the tons of the press that is named, else US tons. */
export function loadText(newtons: number, { press, units }: Recipe): string {
  const kind = press?.kind ?? 'us';
  const plain =
    units === 'mm' ? `${decimal(newtons / 1000, 1)} kN` : `${decimal(newtons / NEWTONS_PER_POUND, 0)} lbf`;
  return `${plain} (${decimal(toTons(newtons, kind), 2)} ${tonWord(kind)})`;
}

export function tonWord(kind: 'us' | 'metric'): string {
  return kind === 'us' ? 'US tons' : 'metric tons';
}
