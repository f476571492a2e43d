import type { Artwork, Piece } from '../geometry/artwork.js';
import { union } from '../geometry/boolean.js';
import { Indexed } from '../geometry/near.js';
import { bounds, type Contour, polygon } from '../geometry/region.js';
import { clusters, namesTogether } from './between.js';
import type { Drawn, Family, Loss } from './family.js';
import { type Body, bodiesOf, kinOf } from './kin.js';
import { lossesOf, lossesOfDepth } from './lost.js';
import { overlapping } from './overlapping.js';
import type { Safe } from './safe.js';

export type { Loss } from './family.js';

/**
 * What the cutter lost of a drawing, largest first.
 *
 * Parts and gaps are matched by place before and after the pass, piece by piece: any part or hole that has none or
 * several of its own kind after it, or shares one, is a loss. With `ends`, so are ends and gaps that keep their part
 * but lose much of their length (2r of an end, r of a gap): a serif gone, a slot closed. What a corner loses of its tip by its angle alone
 * does not count, however far its point reached: it loses it at every size.
 *
 * @param safe what the pass made of the artwork, whatever its rule
 * @param r the corner radius it was made with, mm
 */
export function losses(artwork: Artwork, safe: Safe, r: number, ends = false): Loss[] {
  const { drawn, left } = changed(artwork, safe);
  const found = families(together(drawn), left, r).flatMap((family) => {
    const lost = lossesOf(family, r);
    return ends ? [...lost, ...lossesOfDepth(family, lost, r)] : lost;
  });
  return found.sort((a, b) => b.size - a.size);
}

/** The pieces that may have lost something. The pass leaves no note of the others, and they have as many contours. */
function changed(artwork: Artwork, safe: Safe): { drawn: readonly Piece[]; left: readonly Piece[] } {
  const noted = safe.changes.map((c) => c.piece).join('\n');
  const before = named(artwork.pieces);
  const after = named(safe.pieces);
  const same = new Set<string>();
  for (const [name, p] of before) {
    const q = after.get(name);
    if (p && q && !noted.includes(name) && p.region.contours.length === q.region.contours.length)
      same.add(name);
  }
  return {
    drawn: artwork.pieces.filter((p) => !same.has(p.name)),
    left: safe.pieces.filter((p) => !same.has(p.name)),
  };
}

/** Pieces by name; null for a name that several have. */
function named(pieces: readonly Piece[]): Map<string, Piece | null> {
  const out = new Map<string, Piece | null>();
  for (const p of pieces) out.set(p.name, out.has(p.name) ? null : p);
  return out;
}

function together(pieces: readonly Piece[]): Drawn[] {
  const pairs = overlapping(pieces.map((p) => new Indexed(p.region)));
  return clusters(pieces.length, pairs).map((members) => {
    const own = members.map((i) => pieces[i]!);
    const region = own.length === 1 ? own[0]!.region : union(own.map((p) => p.region));
    return { name: namesTogether(own.map((p) => p.name)), pieces: own, contours: region.contours };
  });
}

/** Groups drawn pieces and what is left of them so that nothing of one group has to do with another. */
function families(drawn: readonly Drawn[], left: readonly Piece[], r: number): Family[] {
  const before: { home: number; body: Body }[] = [];
  drawn.forEach((d, home) => {
    for (const body of bodiesOf(d.contours)) before.push({ home, body });
  });
  const after: { home: number; body: Body }[] = [];
  left.forEach((p, k) => {
    for (const body of bodiesOf(p.region.contours)) after.push({ home: drawn.length + k, body });
  });
  const kin = kinOf(
    before.map((b) => b.body),
    after.map((b) => b.body),
    r,
  );
  const pairs = kin.after.flatMap((set, i) =>
    [...set].map((j): [number, number] => [before[i]!.home, after[j]!.home]),
  );
  return clusters(drawn.length + left.length, pairs).map((members) => {
    const within = new Set(members);
    const own = <T extends { home: number }>(list: readonly T[]): number[] =>
      list.flatMap((b, i) => (within.has(b.home) ? [i] : []));
    const was = own(before);
    const is = own(after);
    const place = new Map(is.map((j, k) => [j, k]));
    return {
      drawn: members.filter((m) => m < drawn.length).map((m) => drawn[m]!),
      before: was.map((i) => ({ body: before[i]!.body, of: drawn[before[i]!.home]! })),
      after: is.map((j) => after[j]!.body),
      kin: was.map((i) => new Set([...kin.after[i]!].map((j) => place.get(j)!))),
      frame: frameOf([...was.map((i) => before[i]!.body), ...is.map((j) => after[j]!.body)], r),
    };
  });
}

/** A frame well outside all bodies. */
function frameOf(bodies: readonly Body[], r: number): Contour {
  const { minX, minY, maxX, maxY } = bounds(bodies.flatMap((b) => b.contours));
  const room = 4 * r;
  return polygon([
    [minX - room, minY - room],
    [maxX + room, minY - room],
    [maxX + room, maxY + room],
    [minX - room, maxY + room],
  ]);
}
