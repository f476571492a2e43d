import type { Artwork, Piece } from '../geometry/artwork.js';
import type { PlugWood, WoodSetup } from '../recipe/recipe.js';
import { BadInput, type Fault } from '../schema/fault.js';

/** The pieces of one plug wood, in the order drawn. */
export interface WoodPieces {
  readonly wood: string;
  readonly pieces: readonly Piece[];
}

/** More kinds than this are not listed in a message. */
const MOST_KINDS = 24;

/**
 * The pieces by wood, in the order the woods go in: what no key of `woods.plugs` names first, then the keys' woods as
 * listed; a wood named again joins its first place. A piece that several keys name belongs to the first of them.
 * Throws BadInput for keys that name no piece.
 */
export function byWood({ pieces }: Artwork, { plug, plugs = [] }: WoodSetup): WoodPieces[] {
  if (plugs.length === 0) return [{ wood: plug, pieces }];
  const owner = pieces.map((p) => plugs.findIndex((k) => names(k, p.name)));
  const faults = plugs.flatMap((key, k) => (owner.includes(k) ? [] : [fault(key, k, plugs, pieces)]));
  if (faults.length > 0) throw new BadInput(faults);
  const groups = new Map<string, Piece[]>();
  for (const k of [-1, ...plugs.keys()]) {
    const own = pieces.filter((_, i) => owner[i] === k);
    if (own.length === 0) continue;
    const wood = plugs[k]?.wood ?? plug;
    groups.set(wood, [...(groups.get(wood) ?? []), ...own]);
  }
  return [...groups].map(([wood, own]) => ({ wood, pieces: own }));
}

const LAYER = /^layer \d+, /;

/** Whether a piece's name, with or without its layer, begins with the key's words. */
function names({ pieces: words }: PlugWood, name: string): boolean {
  return begins(name, words) || begins(name.replace(LAYER, ''), words);
}

function begins(name: string, words: string): boolean {
  return name.startsWith(words) && !/^[\p{L}\p{N}]/u.test(name.slice(words.length));
}

function fault(key: PlugWood, k: number, plugs: readonly PlugWood[], pieces: readonly Piece[]): Fault {
  const where = `woods.plugs.${key.pieces}`;
  const earlier = plugs.slice(0, k).find((e) => pieces.some((p) => names(key, p.name) && names(e, p.name)));
  if (earlier)
    return {
      where,
      message: `names only pieces that ${JSON.stringify(earlier.pieces)} before it has taken: list it first, or leave it out`,
    };
  return { where, message: `names no piece of the pattern; there are ${kindsOf(pieces).join(', ')}` };
}

/** What the pieces are called, without their numbers: "layer 0", "hexagon", "letter". */
export function kindsOf(pieces: readonly Piece[]): string[] {
  const layers = pieces.flatMap((p) => LAYER.exec(p.name)?.[0].slice(0, -2) ?? []);
  const kinds = pieces.map((p) => {
    const name = p.name.replace(LAYER, '');
    return /^[^\d'"(]*[^\s\d'"(,-]/.exec(name)?.[0] ?? name;
  });
  const all = [...new Set([...layers, ...kinds])];
  return all.length > MOST_KINDS ? [...all.slice(0, MOST_KINDS), `${all.length - MOST_KINDS} more`] : all;
}
