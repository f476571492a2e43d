import Flatbush from 'flatbush';
import type { Fault } from '../../../schema/fault.js';
import type { Stretch } from './chain.js';
import type { Graph } from './graph.js';

/** So many open places are named one by one. */
const MOST_NAMED = 8;

/** Of the loose ends near one, so many are looked at for one of another line. */
const NEIGHBOURS = 4;

/** The most that `join` may be, mm: ends further apart are another's to draw. */
export const MOST_JOIN = 5;

/** How places are told: in the file's own coordinates, and sizes in mm as drawn. */
export interface Telling {
  readonly source: string;
  /** A place, mm as drawn, in words. */
  place(x: number, y: number): string;
}

interface Loose {
  readonly x: number;
  readonly y: number;
  readonly stretch: Stretch;
  readonly k: number;
}

/** The loose ends of stretches, as faults: where, how large the gap is, and what to do. Each gap is named once. */
export function gapFaults(
  graph: Graph,
  components: readonly (readonly number[])[],
  join: number,
  telling: Telling,
): Fault[] {
  const loose = components.flatMap((list) => list.flatMap((k) => looseEnds(graph, k)));
  const tree = new Flatbush(loose.length);
  for (const { x, y } of loose) tree.add(x, y, x, y);
  tree.finish();
  const faults: Fault[] = [];
  const told = new Set<number>();
  let gaps = 0;
  loose.forEach((end, i) => {
    if (told.has(i)) return;
    told.add(i);
    gaps++;
    const other = tree
      .neighbors(end.x, end.y, NEIGHBOURS)
      .find((j) => j !== i && distance(end, loose[j]!) > 0);
    if (other !== undefined) told.add(other);
    if (faults.length < MOST_NAMED)
      faults.push(faultOf(end, other === undefined ? null : loose[other]!, join, telling));
  });
  if (gaps > faults.length)
    faults.push({
      source: telling.source,
      where: '',
      message: `and ${gaps - faults.length} more open ${gaps - faults.length === 1 ? 'place' : 'places'}`,
    });
  return faults;
}

function looseEnds(graph: Graph, k: number): Loose[] {
  const stretch = graph.stretches[k]!;
  const { edge } = stretch;
  const ends = [
    { x: edge.x0, y: edge.y0, way: 2 * k },
    { x: edge.x1, y: edge.y1, way: 2 * k + 1 },
  ];
  return ends.flatMap(({ x, y, way }) =>
    graph.leaving[graph.from[way]!]!.length === 1 ? [{ x, y, stretch, k }] : [],
  );
}

function distance(a: Loose, b: Loose): number {
  return Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));
}

function faultOf(end: Loose, other: Loose | null, join: number, telling: Telling): Fault {
  const { origin } = end.stretch;
  const start = `ends open at ${telling.place(end.x, end.y)}`;
  const fault = (message: string): Fault => ({
    source: `${telling.source}:${origin.line}`,
    where: origin.name,
    message,
  });
  if (!other) return fault(`${start}; close the outline there, or take the line out`);
  const gap = distance(end, other);
  const what = other.stretch.origin;
  const own = other.stretch.origin === origin;
  const next = own ? 'its own other end' : `the nearest other end, of the ${what.name} on line ${what.line}`;
  const least = Math.ceil(gap * 1000 + 0.5) / 1000;
  const advice =
    least <= MOST_JOIN
      ? `close the gap, or set join to ${least} mm or more`
      : 'close the outline there, or take the line out';
  const why = gap <= join ? '' : `, more than join, ${Number(join.toFixed(3))} mm`;
  return fault(`${start}: ${next}, is ${gap.toFixed(3)} mm away${why}; ${advice}`);
}
