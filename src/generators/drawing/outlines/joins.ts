import Flatbush from 'flatbush';
import { chordLength, type Edge } from '../../../geometry/edge.js';
import { moved, type Stretch } from './chain.js';
import { Points } from './points.js';
import type { Repairs } from './repair.js';

/** Of the ends near an end, so many are looked at. */
const NEIGHBOURS = 12;

/** Lines that meet at less than this (sine of the angle) have no corner to be run on to. */
const SHALLOW = 0.1;

type Place = readonly [number, number];

/** The ends of stretches by number: 2k the start of the k-th, 2k + 1 its end. */
class Ends {
  readonly x: number[] = [];
  readonly y: number[] = [];

  constructor(readonly stretches: readonly Stretch[]) {
    for (const { edge } of stretches) {
      this.x.push(edge.x0, edge.x1);
      this.y.push(edge.y0, edge.y1);
    }
  }

  apart(a: number, b: number): number {
    const dx = this.x[a]! - this.x[b]!;
    const dy = this.y[a]! - this.y[b]!;
    return Math.sqrt(dx * dx + dy * dy);
  }

  edge(end: number): Edge {
    return this.stretches[end >> 1]!.edge;
  }

  /** Ends where no other stretch ends. */
  loose(): number[] {
    const points = new Points();
    const nodes = this.x.map((x, i) => points.at(x, this.y[i]!));
    const degree = new Array<number>(points.xs.length).fill(0);
    for (const n of nodes) degree[n]!++;
    return nodes.flatMap((n, i) => (degree[n] === 1 ? [i] : []));
  }
}

/**
 * Stretches whose loose ends within `join` mm of each other were brought together, nearest pairs first; an end that has
 * no such partner goes to the nearest corner within `join`.
 */
export function joined(stretches: readonly Stretch[], join: number, repairs: Repairs): Stretch[] {
  if (join === 0) return [...stretches];
  const ends = new Ends(stretches);
  const loose = ends.loose();
  const to = new Map<number, Place>();
  for (const [a, b, gap] of pairs(ends, loose, join)) {
    if (to.has(a) || to.has(b)) continue;
    const place = meeting(ends, a, b, join);
    to.set(a, place);
    to.set(b, place);
    const own = stretches[a >> 1]!.origin === stretches[b >> 1]!.origin;
    repairs.add(own ? 'closed' : 'joined', place, gap);
  }
  toCorners(
    ends,
    loose.filter((e) => !to.has(e)),
    join,
    to,
    repairs,
  );
  if (to.size === 0) return [...stretches];
  return stretches.flatMap((s, k) => {
    const [x0, y0] = to.get(2 * k) ?? [s.edge.x0, s.edge.y0];
    const [x1, y1] = to.get(2 * k + 1) ?? [s.edge.x1, s.edge.y1];
    return x0 === x1 && y0 === y1 ? [] : [{ ...s, edge: moved(s.edge, x0, y0, x1, y1) }];
  });
}

/** Pairs of loose ends that may be joined, nearest first. */
function pairs(ends: Ends, loose: readonly number[], join: number): [number, number, number][] {
  if (loose.length < 2) return [];
  const tree = treeOf(ends, loose);
  const out: [number, number, number][] = [];
  for (const a of loose)
    for (const k of tree.neighbors(ends.x[a]!, ends.y[a]!, NEIGHBOURS, join)) {
      const b = loose[k]!;
      // A scrap as short as the gap is not to be closed onto itself.
      if (b <= a || (a >> 1 === b >> 1 && chordLength(ends.edge(a)) < 4 * join && ends.edge(a).r === 0))
        continue;
      out.push([a, b, ends.apart(a, b)]);
    }
  return out.sort((p, q) => p[2] - q[2] || p[0] - q[0] || p[1] - q[1]);
}

function treeOf(ends: Ends, list: readonly number[]): Flatbush {
  const tree = new Flatbush(list.length);
  for (const e of list) tree.add(ends.x[e]!, ends.y[e]!, ends.x[e]!, ends.y[e]!);
  tree.finish();
  return tree;
}

function toCorners(
  ends: Ends,
  loose: readonly number[],
  join: number,
  to: Map<number, Place>,
  repairs: Repairs,
): void {
  if (loose.length === 0) return;
  const still = new Set(loose);
  const others = ends.x.map((_, i) => i);
  const tree = treeOf(ends, others);
  for (const a of loose) {
    const b = tree
      .neighbors(ends.x[a]!, ends.y[a]!, NEIGHBOURS, join)
      .find((k) => k >> 1 !== a >> 1 && (to.has(k) || !still.has(k)));
    if (b === undefined) continue;
    const place = to.get(b) ?? ([ends.x[b]!, ends.y[b]!] as const);
    repairs.add('joined', place, ends.apart(a, b));
    to.set(a, place);
  }
}

/** Where two ends are to meet: where their lines cross if that is near both, else half way. */
function meeting(ends: Ends, a: number, b: number, join: number): Place {
  const half: Place = [(ends.x[a]! + ends.x[b]!) / 2, (ends.y[a]! + ends.y[b]!) / 2];
  const e = ends.edge(a);
  const f = ends.edge(b);
  if (e.r !== 0 || f.r !== 0) return half;
  const [ex, ey, el] = [e.x1 - e.x0, e.y1 - e.y0, chordLength(e)];
  const [fx, fy, fl] = [f.x1 - f.x0, f.y1 - f.y0, chordLength(f)];
  const cross = ex * fy - ey * fx;
  if (Math.abs(cross) < SHALLOW * el * fl) return half;
  const t = ((f.x0 - e.x0) * fy - (f.y0 - e.y0) * fx) / cross;
  const place: Place = [e.x0 + ex * t, e.y0 + ey * t];
  const away = (k: number): number =>
    Math.max(Math.abs(place[0] - ends.x[k]!), Math.abs(place[1] - ends.y[k]!));
  return away(a) <= join && away(b) <= join ? place : half;
}
