import type { Lightness, Movement, Strength } from './facts.js';
import { plain, type Wood } from './woods.js';

/** A wood that a recipe describes itself, under any name; what it does not say is unknown. */
export interface OwnWood extends Wood {
  readonly strength: Strength | null;
  readonly movement: Movement | null;
  /** kg/m3 at 12 % moisture content. */
  readonly density: number | null;
  readonly lightness: Lightness | null;
}

/** A recipe's own woods; they go before the tables here. */
export type OwnWoods = readonly OwnWood[];

export function ownWood(name: string, own: OwnWoods): OwnWood | undefined {
  const wanted = plain(name);
  return own.find((w) => plain(w.name) === wanted);
}
