import { clusters, namesTogether } from '../cutter/between.js';
import type { Artwork, Piece } from '../geometry/artwork.js';
import { subtract, union } from '../geometry/boolean.js';
import { comeNear, Indexed } from '../geometry/near.js';
import { nearestPoints } from '../geometry/nearest.js';
import { area, circle } from '../geometry/region.js';
import type { WoodPieces } from './by-wood.js';

/** Gaps that differ from 2r by less differ by rounding, mm. */
const ROUNDING = 1e-6;

/** Pieces drawn nearer to each other than this were meant to touch, mm. */
const APART = 0.01;

/** Areas that differ by less differ by rounding, mm2. */
const NOTHING = 1e-3;

/** A wood's artwork as it is cut. */
export interface WoodArtwork {
  readonly wood: string;
  readonly artwork: Artwork;
  /** Its own pieces, as drawn. */
  readonly own: readonly Piece[];
  /** Pairs of an own piece and one of a later wood that are drawn apart, by less than 2r: the gap is filled with this wood. */
  readonly closed: readonly (readonly [string, string])[];
  /** Pieces that lie wholly under later woods: nothing of them will show. */
  readonly hidden: readonly Piece[];
}

interface Body {
  readonly shape: Indexed;
  readonly piece: Piece;
  /** Place of its wood in the order. */
  readonly k: number;
}

/**
 * Each wood's artwork, so that no sliver of field shows where woods touch: a piece with pieces of later woods nearer
 * than 2r is drawn as one with them, and the later pockets are cut into it. Gaps between them are inside one piece
 * then, which the cutter pass fills.
 */
export function runUnder(
  groups: readonly WoodPieces[],
  r: number,
  remarks: Artwork['remarks'] = [],
): WoodArtwork[] {
  const bodies = groups.flatMap(({ pieces }, k) =>
    pieces.map((piece): Body => ({ shape: new Indexed(piece.region), piece, k })),
  );
  const touching = touchingPairs(bodies, 2 * r - ROUNDING);
  return groups.map(({ wood, pieces: own }, k) => {
    const overs = touching.filter(([a, b]) => a.k === k && b.k > k);
    const bodiesHere = new Set([...bodies.filter((b) => b.k === k), ...overs.map(([, b]) => b)]);
    const members = [...bodiesHere];
    const place = new Map(members.map((b, n) => [b, n]));
    const pairs = touching.flatMap(([a, b]): [number, number][] => {
      const [m, n] = [place.get(a), place.get(b)];
      return m !== undefined && n !== undefined ? [[m, n]] : [];
    });
    const pieces = clusters(members.length, pairs).map((c) => oneOf(c.map((n) => members[n]!.piece)));
    const closed = overs.filter(([a, b]) => fieldBetween(a, b, bodies));
    return {
      wood,
      artwork: { pieces, remarks },
      own,
      closed: closed.map(([a, b]): [string, string] => [a.piece.name, b.piece.name]),
      hidden: own.filter((piece) =>
        covered(
          piece,
          overs.filter(([a]) => a.piece === piece).map(([, b]) => b.piece),
        ),
      ),
    };
  });
}

/** Pairs of pieces of different woods nearer than a distance, the earlier wood's first. */
function touchingPairs(bodies: readonly Body[], distance: number): [Body, Body][] {
  return bodies.flatMap((a, i) =>
    bodies
      .slice(i + 1)
      .flatMap((b): [Body, Body][] => (a.k < b.k && comeNear(a.shape, b.shape, distance) ? [[a, b]] : [])),
  );
}

/** Whether there is field between two pieces at their nearest, and no third piece. */
function fieldBetween(a: Body, b: Body, bodies: readonly Body[]): boolean {
  if (comeNear(a.shape, b.shape, APART)) return false;
  const { p, q } = nearestPoints(a.shape.edges, b.shape.edges)!;
  const [x, y] = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
  const dot = new Indexed({ contours: [circle(x, y, APART)] });
  return !bodies.some((c) => comeNear(c.shape, dot, APART));
}

function oneOf(pieces: readonly Piece[]): Piece {
  if (pieces.length === 1) return pieces[0]!;
  return { name: namesTogether(pieces.map((p) => p.name)), region: union(pieces.map((p) => p.region)) };
}

function covered({ region }: Piece, over: readonly Piece[]): boolean {
  return over.length > 0 && area(subtract(region, union(over.map((o) => o.region)))) < NOTHING;
}
