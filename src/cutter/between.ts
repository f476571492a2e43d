import { union } from '../geometry/boolean.js';
import { crossings, cutsAlong } from '../geometry/crossings.js';
import { type Edge, line, parameterEnd, pointAt, tangentAt } from '../geometry/edge.js';
import { EdgesIndex } from '../geometry/edges-index.js';
import {
  type Box,
  bounds,
  type Contour,
  distanceToEdge,
  edgeBox,
  reversedContour,
  windingNumber,
} from '../geometry/region.js';
import { roll } from '../geometry/roll.js';
import { tidied } from '../geometry/tidy.js';
import { SPARE } from '../geometry/tolerances.js';
import { Refusal } from '../schema/fault.js';
import { type Middle, middles, type Surroundings } from './bisector.js';
import { extentOf, middleOf } from './extent.js';
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
  if (!anyNear(pieces, 2 * rule.r)) return [...pieces];
  let now = mergeOverlapping(pieces, rule, changes);
  for (let round = 0; round < ROUNDS; round++) {
    const gaps = gapsBetween(now, rule.r);
    if (gaps.length === 0) return now;
    now = rule.touch === 'part' ? part(now, gaps, rule, changes) : join(now, gaps, rule, changes);
  }
  const gap = gapsBetween(now, rule.r)[0];
  if (!gap) return now;
  const place = gap.middle.points[0]!;
  throw new Refusal(
    'cannot-settle',
    `the gap between ${now[gap.piece]!.name} and ${now[gap.middle.partner]!.name} near (${place[0].toFixed(2)}, ${place[1].toFixed(2)}) mm cannot be settled: draw them further apart or use a smaller cutter`,
    place,
  );
}

/** Whether any two pieces' boxes come within a distance of each other. Sparse fields need nothing more. */
function anyNear(pieces: readonly Sound[], distance: number): boolean {
  const boxes = pieces.map((p) => bounds(p.contours));
  const index = boxIndex(boxes);
  return boxes.some((box) => index.near(box, distance).length > 1);
}

function boxIndex(boxes: readonly Box[]): EdgesIndex {
  // A box stands in the index as its diagonal.
  return new EdgesIndex(boxes.map((b) => line(b.minX, b.minY, b.maxX, b.maxY)));
}

interface Gap {
  readonly piece: number;
  readonly middle: Middle;
}

function gapsBetween(pieces: readonly Sound[], r: number): Gap[] {
  const around = surroundings(pieces);
  return pieces.flatMap((p, i) => middles(p.contours, i, around, r).map((middle) => ({ piece: i, middle })));
}

function surroundings(pieces: readonly Sound[]): Surroundings {
  const edges: Edge[] = [];
  const owners: number[] = [];
  pieces.forEach((p, i) => {
    for (const c of p.contours)
      for (const e of c) {
        edges.push(e);
        owners.push(i);
      }
  });
  return { edges, owner: Int32Array.from(owners), index: new EdgesIndex(edges) };
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
function mergeOverlapping(pieces: readonly Sound[], rule: Rule, changes: Change[]): Sound[] {
  const pairs = overlapping(pieces);
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

/** Pairs of pieces that lie on or in one another. */
export function overlapping(pieces: readonly Sound[]): [number, number][] {
  const boxes = pieces.map((p) => bounds(p.contours));
  const around = boxIndex(boxes);
  // Most pieces lie in nobody's box.
  const bodies: (Body | undefined)[] = [];
  const bodyOf = (i: number): Body => (bodies[i] ??= makeBody(pieces[i]!, boxes[i]!));
  const pairs: [number, number][] = [];
  boxes.forEach((box, i) => {
    for (const j of around.near(box, 0)) if (j > i && overlap(bodyOf(i), bodyOf(j))) pairs.push([i, j]);
  });
  return pairs;
}

interface Body {
  readonly contours: readonly Contour[];
  readonly edges: readonly Edge[];
  readonly boxes: readonly Box[];
  readonly box: Box;
}

function makeBody({ contours }: Sound, box: Box): Body {
  const edges = contours.flat();
  return { contours, edges, boxes: edges.map(edgeBox), box };
}

/** Just inside a boundary, mm: what is there of one piece is there of another that covers it, and not of one that touches. */
const WITHIN = 1e-4;

/** Whether two pieces share more than their boundaries. */
function overlap(a: Body, b: Body): boolean {
  return reachesInto(a, b) || reachesInto(b, a);
}

/** Whether some stretch of a's boundary, with what lies just within it, is inside b. */
function reachesInto(a: Body, b: Body): boolean {
  const points: number[] = [];
  for (let i = 0; i < a.edges.length; i++) {
    const box = a.boxes[i]!;
    if (!overlaps(box, b.box)) continue;
    const e = a.edges[i]!;
    points.length = 0;
    for (let k = 0; k < b.edges.length; k++)
      if (overlaps(b.boxes[k]!, box)) crossings(e, b.edges[k]!, (x, y) => points.push(x, y));
    const ends = [0, ...cutsAlong(e, points).map((cut) => cut.t), parameterEnd(e)];
    for (let k = 0; k + 1 < ends.length; k++) {
      const [x, y] = pointAt(e, (ends[k]! + ends[k + 1]!) / 2);
      const [tx, ty] = tangentAt(e, x, y);
      const [px, py] = [x - ty * WITHIN, y + tx * WITHIN];
      if (windingNumber(b.contours, px, py) <= 0) continue;
      if (b.edges.every((f) => distanceToEdge(f, px, py) > WITHIN / 2)) return true;
    }
  }
  return false;
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
