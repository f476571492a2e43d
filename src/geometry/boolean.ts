import { crossings, cutsAlong } from './crossings.js';
import {
  arc,
  chordLength,
  type Edge,
  endTangent,
  midpoint,
  reversed,
  startTangent,
  tangentAt,
  withEnds,
} from './edge.js';
import { EdgesIndex } from './edges-index.js';
import { Undecided } from './fault.js';
import { type Contour, type Region, rayCrossings } from './region.js';
import { ON_EDGE, ONE_NODE } from './tolerances.js';

/** All points in at least one of the regions. */
export function union(regions: readonly Region[]): Region {
  return overlay([regions.flatMap((r) => r.contours)], ([w]) => w! > 0);
}

/** All points in both regions. */
export function intersect(a: Region, b: Region): Region {
  return overlay([a.contours, b.contours], ([v, w]) => v! > 0 && w! > 0);
}

/** All points of a that are not in b. */
export function subtract(a: Region, b: Region): Region {
  return overlay([a.contours, b.contours], ([v, w]) => v! > 0 && w! <= 0);
}

/** The region that contours, drawn in any sense and crossing at will, enclose under a fill rule. */
export function resolve(contours: readonly Contour[], rule: 'nonzero' | 'evenodd'): Region {
  return overlay([contours], rule === 'nonzero' ? ([w]) => w !== 0 : ([w]) => Math.abs(w! % 2) === 1);
}

/** A stretch of boundary with what changes across it: `turns[k]` is how much more set k winds on its left. */
interface Border {
  readonly edge: Edge;
  readonly from: number;
  readonly to: number;
  readonly turns: number[];
}

/**
 * The boolean engine: every contour is cut where it meets another, stretches that coincide become one, the winding
 * numbers of each set are counted on both sides of every stretch, and those with inside on one side alone stay.
 *
 * @param inside says from the winding numbers of the sets whether a place belongs to the result
 */
export function overlay(
  sets: readonly (readonly Contour[])[],
  inside: (windings: readonly number[]) => boolean,
): Region {
  const edges: Edge[] = [];
  const owner: number[] = [];
  sets.forEach((contours, k) => {
    for (const c of contours)
      for (const e of c)
        if (chordLength(e) > ON_EDGE) {
          edges.push(e);
          owner.push(k);
        }
  });
  // Where many edges all but coincide, cuts may lie further apart than they should: each try forgives more of it.
  let within = ONE_NODE;
  for (let attempt = 0; attempt < 4; attempt++) {
    const nodes = new Nodes(within);
    const borders = merged(edges, owner, sets.length, nodes);
    const contours = walk(keepBoundary(borders, nodes.xs.length, sets.length, inside));
    if (contours) return { contours };
    within *= 10;
  }
  throw new Undecided('the boolean found no closed boundary');
}

/** Cells that share a key only cost a comparison more. */
function cellKey(ix: number, iy: number): number {
  return ix * 67108859 + iy;
}

/** A quarter of a cell from its border, with room for rounding. */
const BORDER = 0.24;

/** Points that count as one. */
class Nodes {
  readonly within: number;
  readonly #cells = new Map<number, number[]>();
  readonly xs: number[] = [];
  readonly ys: number[] = [];

  constructor(within: number) {
    this.within = within;
  }

  at(x: number, y: number): number {
    const size = 4 * this.within;
    const ix = Math.round(x / size);
    const iy = Math.round(y / size);
    // A cell is four times as wide as points may lie apart: only one beside whose border the point lies can matter.
    const [px, py] = [x / size - ix, y / size - iy];
    for (let dx = px < -BORDER ? -1 : 0; dx <= (px > BORDER ? 1 : 0); dx++)
      for (let dy = py < -BORDER ? -1 : 0; dy <= (py > BORDER ? 1 : 0); dy++) {
        const cell = this.#cells.get(cellKey(ix + dx, iy + dy));
        if (!cell) continue;
        for (const n of cell)
          if (Math.abs(this.xs[n]! - x) <= this.within && Math.abs(this.ys[n]! - y) <= this.within) return n;
      }
    const n = this.xs.length;
    this.xs.push(x);
    this.ys.push(y);
    const key = cellKey(ix, iy);
    const cell = this.#cells.get(key);
    if (cell) cell.push(n);
    else this.#cells.set(key, [n]);
    return n;
  }
}

function merged(edges: readonly Edge[], owner: readonly number[], sets: number, nodes: Nodes): Border[] {
  const index = new EdgesIndex(edges);
  // Flat lists: x, y, x, y ...
  const cuts: (number[] | undefined)[] = new Array(edges.length);
  const cut = (k: number, x: number, y: number): void => {
    const e = edges[k]!;
    // Nothing is cut at its own end, where it meets its neighbours.
    if (!((x === e.x0 && y === e.y0) || (x === e.x1 && y === e.y1))) (cuts[k] ??= []).push(x, y);
  };
  edges.forEach((e, i) => {
    for (const j of index.nearAfter(i, ON_EDGE)) {
      if (meetAtEnds(e, edges[j]!)) continue;
      crossings(e, edges[j]!, (x, y) => {
        cut(i, x, y);
        cut(j, x, y);
      });
    }
  });
  const borders = new Map<number, Border[]>();
  edges.forEach((e, i) => {
    const ends = [nodes.at(e.x0, e.y0)];
    if (cuts[i]) for (const { x, y } of cutsAlong(e, cuts[i])) ends.push(nodes.at(x, y));
    ends.push(nodes.at(e.x1, e.y1));
    for (let k = 0; k + 1 < ends.length; k++) {
      const [from, to] = [ends[k]!, ends[k + 1]!];
      if (from === to) continue;
      addBorder(borders, snapped(e, nodes, from, to), from, to, owner[i]!, sets, 4 * nodes.within);
    }
  });
  return [...borders.values()].flat();
}

/**
 * Are these straight edges with both ends alike, or with one end alike and the others on opposite sides of it? They
 * meet nowhere but there, and nothing is cut at its own end. Many are: sides of polygons, and edges drawn twice.
 */
function meetAtEnds(e: Edge, f: Edge): boolean {
  if (e.r !== 0 || f.r !== 0) return false;
  const startsAtStart = e.x0 === f.x0 && e.y0 === f.y0;
  const startsAtEnd = e.x0 === f.x1 && e.y0 === f.y1;
  const endsAtStart = e.x1 === f.x0 && e.y1 === f.y0;
  const endsAtEnd = e.x1 === f.x1 && e.y1 === f.y1;
  const dot = (e.x1 - e.x0) * (f.x1 - f.x0) + (e.y1 - e.y0) * (f.y1 - f.y0);
  if (startsAtStart || endsAtEnd) return (startsAtStart && endsAtEnd) || dot <= 0;
  return (startsAtEnd && endsAtStart) || ((startsAtEnd || endsAtStart) && dot >= 0);
}

function snapped(e: Edge, nodes: Nodes, from: number, to: number): Edge {
  return withEnds(e, nodes.xs[from]!, nodes.ys[from]!, nodes.xs[to]!, nodes.ys[to]!);
}

/** More than memory holds; a key made with it stays a whole number exactly. */
const MOST_NODES = 0x4000000;

function addBorder(
  borders: Map<number, Border[]>,
  edge: Edge,
  from: number,
  to: number,
  set: number,
  sets: number,
  same: number,
): void {
  const key = from < to ? from * MOST_NODES + to : to * MOST_NODES + from;
  const list = borders.get(key);
  const twin = list && twinOf(edge, list, same);
  if (twin) {
    twin.turns[set]! += twin.from === from ? 1 : -1;
    return;
  }
  const turns = new Array<number>(sets).fill(0);
  turns[set] = 1;
  const border = { edge, from, to, turns };
  if (list) list.push(border);
  else borders.set(key, [border]);
}

/** The border that runs where the edge does: the ends are the same, so the middles tell. */
function twinOf(edge: Edge, list: readonly Border[], same: number): Border | undefined {
  const [mx, my] = midpoint(edge);
  return list.find((b) => {
    const [x, y] = midpoint(b.edge);
    return Math.abs(x - mx) <= same && Math.abs(y - my) <= same;
  });
}

function keepBoundary(
  borders: readonly Border[],
  nodes: number,
  sets: number,
  inside: (windings: readonly number[]) => boolean,
): Border[] {
  const live = borders.filter((b) => b.turns.some((t) => t !== 0));
  // Two views: rays run along +x, or along +y by turning the plane, whichever crosses the stretch more squarely.
  const flat = live.map((b) => b.edge);
  const turned = flat.map(quarterTurn);
  const flatIndex = new EdgesIndex(flat);
  const turnedIndex = new EdgesIndex(turned);
  const kept: Border[] = [];
  for (const run of runs(live, nodes)) {
    const i = run[0]!;
    const b = live[i]!;
    const [mx, my] = midpoint(b.edge);
    const [tx, ty] = tangentAt(b.edge, mx, my);
    const steep = Math.abs(ty) >= Math.abs(tx);
    const [x, y] = steep ? [mx, my] : [my, -mx];
    const view = steep ? flat : turned;
    const index = steep ? flatIndex : turnedIndex;
    const ahead = new Array<number>(sets).fill(0);
    for (const j of index.alongRay(x, y)) {
      if (j === i) continue;
      const c = rayCrossings(view[j]!, x, y);
      if (c !== 0) for (let k = 0; k < sets; k++) ahead[k]! += c * live[j]!.turns[k]!;
    }
    // The ray leaves towards +x of the view: the right of a stretch that climbs there, the left of one that falls.
    const climbs = steep ? ty > 0 : -tx > 0;
    const left = ahead.map((w, k) => (climbs ? w + b.turns[k]! : w));
    const right = ahead.map((w, k) => (climbs ? w : w - b.turns[k]!));
    const inLeft = inside(left);
    if (inLeft === inside(right)) continue;
    for (const k of run) {
      const c = live[k]!;
      kept.push(inLeft ? c : { edge: reversed(c.edge), from: c.to, to: c.from, turns: c.turns });
    }
  }
  return kept;
}

/**
 * Borders in runs with the same windings along them: nothing else ends at the points between. Longest border first.
 * Runs are lists of positions in `borders`.
 */
function runs(borders: readonly Border[], nodes: number): number[][] {
  const ends = new Int32Array(nodes);
  const starting = new Int32Array(nodes);
  borders.forEach(({ from, to }, i) => {
    ends[from]!++;
    ends[to]!++;
    starting[from] = i;
  });
  const NONE = -1;
  const follows = Int32Array.from(borders, ({ to, turns }) => {
    // Where nothing starts the list says 0, which starts elsewhere.
    const next = starting[to]!;
    const joined = ends[to] === 2 && borders[next]!.from === to;
    return joined && borders[next]!.turns.every((t, k) => t === turns[k]) ? next : NONE;
  });
  const hasBefore = new Uint8Array(borders.length);
  for (const next of follows) if (next !== NONE) hasBefore[next] = 1;
  const done = new Uint8Array(borders.length);
  const out: number[][] = [];
  // Open runs from their first borders, then what is left: closed rings.
  for (const pass of [false, true])
    for (let first = 0; first < borders.length; first++) {
      if (done[first] || (!pass && hasBefore[first])) continue;
      const run: number[] = [];
      for (let i = first; i !== NONE && !done[i]; i = follows[i]!) {
        done[i] = 1;
        run.push(i);
      }
      out.push(longestFirst(run, borders));
    }
  return out;
}

function longestFirst(run: number[], borders: readonly Border[]): number[] {
  let longest = 0;
  let most = Number.NEGATIVE_INFINITY;
  run.forEach((i, k) => {
    const length = chordLength(borders[i]!.edge);
    if (length <= most) return;
    longest = k;
    most = length;
  });
  if (longest > 0) run.unshift(...run.splice(longest, 1));
  return run;
}

function quarterTurn(e: Edge): Edge {
  return arc(e.y0, -e.x0, e.y1, -e.x1, e.cy, -e.cx, e.r);
}

/**
 * Joins stretches into contours, taking the leftmost way out of every crossing so that touching parts stay apart. Null
 * when a contour does not close.
 */
function walk(borders: readonly Border[]): Contour[] | null {
  const out = new Map<number, Border[]>();
  for (const b of borders) {
    const list = out.get(b.from);
    if (list) list.push(b);
    else out.set(b.from, [b]);
  }
  const used = new Set<Border>();
  const contours: Contour[] = [];
  for (const first of borders) {
    if (used.has(first)) continue;
    const loop: Edge[] = [];
    let b: Border | undefined = first;
    do {
      used.add(b);
      loop.push(b.edge);
      b = leftmost(
        b,
        (out.get(b.to) ?? []).filter((w) => w === first || !used.has(w)),
      );
    } while (b && b !== first);
    if (!b) return null;
    if (loop.length > 1) contours.push(loop);
  }
  return contours;
}

function leftmost(b: Border, ways: readonly Border[]): Border | undefined {
  let best: Border | undefined;
  let bestTurn = Number.NEGATIVE_INFINITY;
  const [tx, ty] = endTangent(b.edge);
  for (const w of ways) {
    const [ux, uy] = startTangent(w.edge);
    const cross = tx * uy - ty * ux;
    const dot = tx * ux + ty * uy;
    // Rises with the turn from sharp right (-2) over straight on (0) to sharp left (2); no angle is needed.
    const turn = cross >= 0 ? 1 - dot : dot - 1;
    if (turn > bestTurn) {
      bestTurn = turn;
      best = w;
    }
  }
  return best;
}
