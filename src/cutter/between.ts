import { union } from '../geometry/boolean.js';
import { Indexed } from '../geometry/near.js';
import { type Box, bounds, type Contour, reversedContour } from '../geometry/region.js';
import { roll } from '../geometry/roll.js';
import { tidied } from '../geometry/tidy.js';
import { SPARE } from '../geometry/tolerances.js';
import { Refusal } from '../schema/fault.js';
import { type Middle, middles } from './bisector.js';
import { extentOf, middleOf } from './extent.js';
import { neighboursOf, overlapping } from './overlapping.js';
import type { Rule } from './rule.js';
import type { Change } from './safe.js';
import { settle } from './settle.js';
import { swept } from './sweep.js';
import { tightPlaces } from './tight.js';

/** A piece on its way through the pass: sound by itself (reach r on both sides). */
export interface Sound {
  readonly name: string;
  readonly contours: readonly Contour[];
}

const ROUNDS = 12;

/**
 * Settles the gaps under 2r between different pieces: opened to 2r, each side giving up the same (`part`), or the
 * pieces made one and bridged (`join`). Pieces that overlap are one piece either way.
 */
export function settleBetween(pieces: readonly Sound[], rule: Rule, changes: Change[]): Sound[] {
  const bodyOf = bodiesKept();
  // Sparse fields need nothing more.
  if (neighboursOf(pieces.map(bodyOf), 2 * rule.r).every((near) => near.length === 0)) return [...pieces];
  let now = mergeOverlapping(pieces, bodyOf, rule, changes);
  for (let round = 0; round < ROUNDS; round++) {
    const gaps = gapsBetween(now.map(bodyOf), rule.r);
    if (gaps.length === 0) return now;
    now = rule.touch === 'part' ? part(now, gaps, rule, changes) : join(now, gaps, rule, changes);
  }
  const gap = gapsBetween(now.map(bodyOf), rule.r)[0];
  if (!gap) return now;
  const place = gap.middle.points[0]!;
  throw new Refusal(
    'cannot-settle',
    `the gap between ${now[gap.piece]!.name} and ${now[gap.middle.partner]!.name} near (${place[0].toFixed(2)}, ${place[1].toFixed(2)}) mm cannot be settled: draw them further apart or use a smaller cutter`,
    place,
  );
}

/** Pieces that a round leaves as they are keep their bodies. */
function bodiesKept(): (piece: Sound) => Indexed {
  const kept = new Map<Sound, Indexed>();
  return (piece) => {
    let body = kept.get(piece);
    if (!body) kept.set(piece, (body = new Indexed(piece)));
    return body;
  };
}

interface Gap {
  readonly piece: number;
  readonly middle: Middle;
}

function gapsBetween(bodies: readonly Indexed[], r: number): Gap[] {
  const neighbours = neighboursOf(bodies, 2 * r);
  return bodies.flatMap((_, i) =>
    middles(i, bodies, neighbours[i]!, r).map((middle) => ({ piece: i, middle })),
  );
}

function part(pieces: readonly Sound[], gaps: readonly Gap[], rule: Rule, changes: Change[]): Sound[] {
  const sweeps: { box: Box; contour: Contour }[] = [];
  for (const { piece, middle } of gaps) {
    const names = `${pieces[piece]!.name} / ${pieces[middle.partner]!.name}`;
    // One gap at a time first: the sweeps of a gap overlap each other far more than those of others.
    for (const contour of union([{ contours: swept(middle.points, rule.r + SPARE) }]).contours)
      sweeps.push({ box: bounds([contour]), contour });
    changes.push({ kind: 'parted', piece: names, at: pointOf(middle), size: lengthOf(middle) });
  }
  return pieces.flatMap((p) => {
    const box = bounds(p.contours);
    const near = sweeps.filter((s) => overlaps(s.box, box)).map((s) => s.contour);
    if (near.length === 0) return [p];
    // Sweeps that meet share their end circles; made one region first, no two boundaries coincide. Only those that
    // reach the piece count: in a dense field all of them hang together.
    const discs = union([{ contours: near }]).contours.map(reversedContour);
    const rolled = roll([...p.contours, ...discs], rule.r, true);
    const contours = rolled.contours.map(tidied).filter((c) => c.length > 0);
    if (contours.length === 0) {
      changes.push({ kind: 'vanished', piece: p.name, at: middleOf(box), size: extentOf(box) });
      return [];
    }
    if (tightPlaces(contours, rule.r, true).length === 0) return [{ name: p.name, contours }];
    return [{ name: p.name, contours: settle(p.name, contours, rule.r, rule.thin, changes) }];
  });
}

function join(pieces: readonly Sound[], gaps: readonly Gap[], rule: Rule, changes: Change[]): Sound[] {
  const pairs = gaps.map((g): [number, number] => [g.piece, g.middle.partner]);
  for (const g of gaps) {
    const names = `${pieces[g.piece]!.name} / ${pieces[g.middle.partner]!.name}`;
    changes.push({ kind: 'joined', piece: names, at: pointOf(g.middle), size: lengthOf(g.middle) });
  }
  return clusters(pieces.length, pairs).map((members) => {
    if (members.length === 1) return pieces[members[0]!]!;
    const name = namesTogether(members.map((i) => pieces[i]!.name));
    const united = union(members.map((i) => ({ contours: pieces[i]!.contours })));
    return { name, contours: settle(name, united.contours, rule.r, rule.thin, changes) };
  });
}

/** Names of pieces that became one; of many, the first two and how many more. */
export function namesTogether(names: readonly string[]): string {
  return names.length <= 3 ? names.join(' / ') : `${names[0]} / ${names[1]} and ${names.length - 2} more`;
}

/** Pieces that lie on or in one another are the same wood: one piece. */
function mergeOverlapping(
  pieces: readonly Sound[],
  bodyOf: (piece: Sound) => Indexed,
  rule: Rule,
  changes: Change[],
): Sound[] {
  const pairs = overlapping(pieces.map(bodyOf));
  if (pairs.length === 0) return [...pieces];
  return clusters(pieces.length, pairs).map((members) => {
    if (members.length === 1) return pieces[members[0]!]!;
    const name = namesTogether(members.map((i) => pieces[i]!.name));
    const united = union(members.map((i) => ({ contours: pieces[i]!.contours })));
    const [first] = pieces[members[0]!]!.contours;
    changes.push({
      kind: 'merged',
      piece: name,
      at: middleOf(bounds([first!])),
      size: extentOf(bounds(united.contours)),
    });
    return { name, contours: settle(name, united.contours, rule.r, rule.thin, changes) };
  });
}

/** Groups 0..n-1 by pairs that belong together, in order of their first members. */
export function clusters(n: number, pairs: readonly (readonly [number, number])[]): number[][] {
  const home = Array.from({ length: n }, (_, i) => i);
  const find = (i: number): number => {
    let k = i;
    while (home[k] !== k) k = home[k] = home[home[k]!]!;
    return k;
  };
  for (const [a, b] of pairs) {
    const p = find(a);
    const q = find(b);
    home[Math.max(p, q)] = Math.min(p, q);
  }
  const groups = new Map<number, number[]>();
  for (let i = 0; i < n; i++) {
    const k = find(i);
    const group = groups.get(k);
    if (group) group.push(i);
    else groups.set(k, [i]);
  }
  return [...groups.values()];
}

function overlaps(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && a.maxX >= b.minX && a.minY <= b.maxY && a.maxY >= b.minY;
}

function pointOf(m: Middle): readonly [number, number] {
  return m.points[m.points.length >> 1]!;
}

function lengthOf(m: Middle): number {
  let sum = 0;
  m.points.forEach((p, i) => {
    const q = m.points[i + 1] ?? p;
    sum += Math.sqrt((q[0] - p[0]) * (q[0] - p[0]) + (q[1] - p[1]) * (q[1] - p[1]));
  });
  return sum;
}
