/**
 * Woods by name: colours for the picture (our own choice) and the properties known here.
 *
 * Specific gravity (ovendry weight over volume at 12 % moisture content) and side hardness at 12 % are those of the
 * Wood Handbook, FPL-GTR-190, table 5-3a, read in a transcription, unless `source` says otherwise.
 *
 * More of the same woods, by name: shrinkage.ts (movement), strength.ts (strengths, density), contrast.ts (lightness,
 * dust).
 */
export interface Wood {
  readonly name: string;
  /** Other names a maker may write. */
  readonly also: readonly string[];
  /** Colour of the face, and of the darker lines of its grain, as #rrggbb. */
  readonly colour: string;
  readonly grain: string;
  /** Open-pored woods show short dark flecks along the grain. */
  readonly pores: 'open' | 'fine';
  /** At 12 % moisture content; null where only a green value or none is known. */
  readonly specificGravity: number | null;
  /** Side hardness at 12 % moisture content, N; null where none is known. */
  readonly hardness: number | null;
  /** Where gravity and hardness come from, and how sure that is. */
  readonly source: string;
}

const TABLE = 'Wood Handbook FPL-GTR-190 table 5-3a, read in a transcription';
const NONE = 'no checked figures';

function wood(
  name: string,
  also: readonly string[],
  [colour, grain]: readonly [string, string],
  pores: 'open' | 'fine',
  specificGravity: number | null,
  hardness: number | null,
  source: string,
): Wood {
  return { name, also, colour, grain, pores, specificGravity, hardness, source };
}

export const woods: readonly Wood[] = [
  wood('American beech', ['beech'], ['#d9b48c', '#b98a5e'], 'fine', 0.64, 5800, TABLE),
  wood('basswood', ['american basswood'], ['#ead9b9', '#d2ba92'], 'fine', 0.37, 1800, TABLE),
  wood('black cherry', ['cherry', 'american cherry'], ['#b4703f', '#8a4c27'], 'fine', 0.5, 4200, TABLE),
  wood('black walnut', ['walnut', 'american walnut'], ['#5f422c', '#3a2617'], 'open', 0.55, 4500, TABLE),
  wood('eastern white pine', ['white pine', 'pine'], ['#eed6a4', '#cfa465'], 'fine', 0.35, 1700, TABLE),
  wood(
    'mahogany',
    ['true mahogany', 'honduran mahogany'],
    ['#93502f', '#6b341c'],
    'open',
    null,
    3560,
    'Hardness 800 lbf dry: FPL fact sheet on Swietenia macrophylla; gravity known only green (0.45)',
  ),
  wood('northern red oak', ['red oak'], ['#c79a6b', '#94683d'], 'open', 0.63, 5700, TABLE),
  wood(
    'padauk',
    ['african padauk', 'padouk'],
    ['#a8431f', '#742712'],
    'open',
    null,
    7670,
    'Hardness 1,725 lbf: flooring trade figure, not the handbook',
  ),
  wood(
    'purpleheart',
    ['amaranth'],
    ['#71385c', '#4b2140'],
    'fine',
    null,
    8270,
    'Hardness 1,860 lbf: transcription agreeing with Wood Handbook table 5-5 from memory; gravity known only green (0.67)',
  ),
  wood('red alder', ['alder'], ['#c48f66', '#9e6a43'], 'fine', null, null, NONE),
  wood(
    'sugar maple',
    ['maple', 'hard maple', 'rock maple'],
    ['#ecd6b0', '#d0ae7c'],
    'fine',
    0.63,
    6400,
    TABLE,
  ),
  wood(
    'teak',
    [],
    ['#a57644', '#74502b'],
    'open',
    null,
    4450,
    'Hardness 1,000 lbf: Wood Handbook table 5-5 from memory; gravity known only green (0.55)',
  ),
  wood('white ash', ['ash', 'american ash'], ['#e3caa0', '#b8925c'], 'open', 0.6, 5900, TABLE),
  wood('white oak', ['oak'], ['#c2a173', '#8f6c41'], 'open', 0.68, 6000, TABLE),
  wood('yellow birch', ['birch'], ['#e2c296', '#c29763'], 'fine', 0.62, 5600, TABLE),
  wood('yellow-poplar', ['poplar', 'tulip poplar'], ['#cfc48f', '#a39a62'], 'fine', 0.42, 2400, TABLE),
];

/** The wood of that name or other name, upper and lower case and hyphens alike; undefined when it is in neither table. `own`: the recipe's. */
export function findWood(name: string, own: readonly Wood[] = []): Wood | undefined {
  const wanted = plain(name);
  const all = [...own, ...woods];
  return all.find((w) => plain(w.name) === wanted || w.also.some((a) => plain(a) === wanted));
}

/** A name as it is compared. */
export function plain(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, ' ');
}
