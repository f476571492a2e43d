import type { OwnWoods } from '../shop/own.js';
import { findWood, type Wood } from '../shop/woods.js';

/** Stand-ins for woods that are not in the table. */
export const PALE = { colour: '#dcc49c', grain: '#b99a6a' } as const;
export const DARK = { colour: '#6d4c33', grain: '#48301e' } as const;

/** A wood by its name, with the looks of another where it is not in the table. */
export function woodOr(name: string, other: { colour: string; grain: string }, own?: OwnWoods): Wood {
  return (
    findWood(name, own) ?? {
      name,
      also: [],
      ...other,
      pores: 'fine',
      specificGravity: null,
      hardness: null,
      source: '',
    }
  );
}
