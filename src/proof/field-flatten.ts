import type { Edges } from './edges.js';

/** Chords stay within this of their arc, mm. */
const CHORD = 0.0002;

/** But every arc gets at least this many, so that they stray by no more than 1/2300 of its depth: a shallow arc bounds a reach by its depth. */
const LEAST = 24;

/** An arc that shallow, mm, bounds no reach, since a ball may press in farther. */
const SHALLOW = 0.0001;

/** No arc is ever cut into more chords than this. */
const MOST = 4096;

/**
 * Boundaries as chords. Edge i has the vertices first[i] up to, not including, first[i + 1], of which the last is the
 * first one of the edge after it again. A chord is known by the vertex it starts at.
 */
export interface Chords {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly first: Int32Array;
  /** First edge of every contour, and one past the last edge. */
  readonly starts: Int32Array;
}

/** Flattens the edges: arcs within 0.0002 mm / fine^2. */
export function flatten(edges: Edges, starts: Int32Array, fine = 1): Chords {
  const n = edges.count;
  const first = new Int32Array(n + 1);
  const turns = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    turns[i] = edges.r[i] === 0 ? 0 : turnOf(edges, i);
    first[i + 1] = first[i]! + 1 + chordCount(Math.abs(edges.r[i]!), turns[i]!, fine);
  }
  const x = new Float64Array(first[n]!);
  const y = new Float64Array(first[n]!);
  for (let i = 0; i < n; i++) {
    const at = first[i]!;
    const count = first[i + 1]! - at - 1;
    x[at] = edges.x0[i]!;
    y[at] = edges.y0[i]!;
    if (count > 1) {
      const angle = (edges.r[i]! > 0 ? 1 : -1) * (turns[i]! / count);
      turnAlong(x, y, at, count, edges.cx[i]!, edges.cy[i]!, angle);
    }
    x[at + count] = edges.x1[i]!;
    y[at + count] = edges.y1[i]!;
  }
  return { x, y, first, starts };
}

function chordCount(radius: number, turn: number, fine: number): number {
  if (radius === 0) return 1;
  // A chord that turns by a is r (1 - cos(a / 2)), about r a a / 8, off its arc.
  const depth = radius * Math.min(turn * turn * 0.5, 2);
  const needed = turn * Math.sqrt(radius / (8 * CHORD));
  const least = depth < SHALLOW ? 2 : LEAST;
  return Math.min(MOST, Math.max(least, Math.ceil(needed)) * fine);
}

/** Fills in the vertices between, turning from the first one about the centre. */
function turnAlong(
  x: Float64Array,
  y: Float64Array,
  at: number,
  count: number,
  cx: number,
  cy: number,
  angle: number,
): void {
  const [c, s] = cosSin(angle);
  let [u, v] = [x[at]! - cx, y[at]! - cy];
  for (let k = 1; k < count; k++) {
    [u, v] = [u * c - v * s, u * s + v * c];
    x[at + k] = cx + u;
    y[at + k] = cy + v;
  }
}

/** How far arc i turns, radians, from its chord and radius: 2 asin(chord / 2r), by halving until a series serves. */
function turnOf(e: Edges, i: number): number {
  const dx = e.x1[i]! - e.x0[i]!;
  const dy = e.y1[i]! - e.y0[i]!;
  const radius = Math.abs(e.r[i]!);
  let sine = Math.min(1, Math.sqrt(dx * dx + dy * dy) / (2 * radius));
  let cosine = Math.sqrt((1 - sine) * (1 + sine)) * (e.wide[i] === 1 ? -1 : 1);
  let times = 2;
  for (; sine > 0.05 || cosine < 0; times *= 2) {
    // sin(a/2) = sin a / (2 cos(a/2)); past a right angle the other form keeps its digits.
    const half = Math.sqrt((1 + cosine) / 2);
    sine = cosine > 0 ? sine / (2 * half) : Math.sqrt((1 - cosine) / 2);
    cosine = half;
  }
  const z = sine * sine;
  return times * sine * (1 + z * (1 / 6 + z * (3 / 40 + z * (15 / 336 + z * (105 / 3456)))));
}

/** Cosine and sine of a small angle, by their series. */
function cosSin(a: number): [number, number] {
  const z = a * a;
  return [
    1 - (z / 2) * (1 - (z / 12) * (1 - (z / 30) * (1 - (z / 56) * (1 - z / 90)))),
    a * (1 - (z / 6) * (1 - (z / 20) * (1 - (z / 42) * (1 - (z / 72) * (1 - z / 110))))),
  ];
}
