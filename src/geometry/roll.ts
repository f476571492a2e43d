import {
  arc,
  chordLength,
  type Edge,
  halfTangent,
  onItsCircle,
  parameterEnd,
  part,
  withEnds,
} from './edge.js';
import { EdgesIndex } from './edges-index.js';
import { Undecided } from './fault.js';
import { type Inset, inset, type Stretch } from './inset.js';
import { link } from './link.js';
import { footOn } from './nearest.js';
import { type Contour, distanceToEdge, reversedContour } from './region.js';
import { GRAZE, GRAZE_STEP, HAIR, jointWithin, SAME_POINT } from './tolerances.js';
import { addNear, beginStretches, betweenStretches, noneNear } from './too-near.js';

/** A ball at rest: it touches the boundary at two feet and can roll no further towards what lies between them. */
export interface Rest {
  readonly centre: readonly [number, number];
  readonly foot0: readonly [number, number];
  readonly foot1: readonly [number, number];
  /** True when both feet lie on one stretch of boundary that the ball cannot reach: a corner, spike or closed slot. */
  readonly corner: boolean;
  /** What the ball cannot reach beside the rest: the boundary dropped between `foot0` and the next place reached. */
  readonly dropped: readonly Edge[];
  /** How many edges and parts of edges that is: sooner told than they are made. */
  readonly droppedCount: number;
}

/** What a rolling ball leaves of a region. */
export interface Rolled {
  readonly contours: readonly Contour[];
  readonly rests: readonly Rest[];
  /** Input contours of which the ball touches nothing. */
  readonly lost: readonly Contour[];
}

/**
 * The opening of a region by a disc of radius r: all that a ball of radius r inside it can cover (Serra 1982). Exact
 * on lines and arcs: boundary the ball can touch is kept as it is, and where it comes to rest an arc of radius r about
 * its centre takes the place of what it cannot reach.
 *
 * With `overlay`, clockwise contours among the input may cross the others and are taken away first (see `inset`).
 * Throws when no consistent boundary comes out even after r is changed by hairs; not known to happen on sound input.
 */
export function roll(contours: readonly Contour[], r: number, overlay = false): Rolled {
  let graze = GRAZE;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const radius = r + attempt * HAIR;
    const shrunk = inset(contours, radius, overlay, graze);
    const rolled = shrunk && back(contours, shrunk, radius, graze);
    graze *= GRAZE_STEP;
    if (rolled && !rolled.contours.some((c) => c.some(backwards))) return rolled;
  }
  throw new Undecided('the rolling ball found no consistent boundary');
}

/** The closing by a disc of radius r: the opening of everything outside. */
export function rollOutside(
  contours: readonly Contour[],
  r: number,
  overlay: readonly Contour[] = [],
): Rolled {
  const outside = roll([...contours.map(reversedContour), ...overlay], r, overlay.length > 0);
  return { ...outside, contours: outside.contours.map(reversedContour) };
}

const ATTEMPTS = 5;

/** Share of the chord that an arc's end may be off its circle for its centre to be moved: it then turns by as much. */
const NO_KINK = 1e-5;

/** The same for the arc of a ball at rest: left as it is it would do worse. */
const MOST_TURN = 0.01;

/** tan(half of 176 degrees): edges sweep less, so an arc that seems to sweep more runs from its end to its start. */
const BACKWARDS = 28;

/** Ends in the wrong order: two decisions about one place that disagree by rounding. */
function backwards(e: Edge): boolean {
  if (e.r === 0) return false;
  const turn = halfTangent(e);
  return !(turn > 0 && turn < BACKWARDS);
}

/** A rest between two stretches of an inset boundary; most are never asked what they dropped. */
class RestBetween implements Rest {
  constructor(
    readonly contours: readonly Contour[],
    readonly before: Stretch,
    readonly after: Stretch,
    readonly follows: Stretch,
    readonly centre: readonly [number, number],
  ) {}

  get foot0(): readonly [number, number] {
    return this.before.foot1;
  }

  get foot1(): readonly [number, number] {
    return this.after.foot0;
  }

  get corner(): boolean {
    return this.follows === this.after;
  }

  get dropped(): readonly Edge[] {
    return droppedBetween(this.contours, this.before, this.follows);
  }

  get droppedCount(): number {
    return countBetween(this.contours, this.before, this.follows);
  }
}

function back(contours: readonly Contour[], shrunk: Inset, r: number, graze: number): Rolled | null {
  const within = jointWithin(r, graze);
  const { stretches, next, follows } = shrunk;
  const edges: Edge[] = [];
  // Where in `edges` the pieces of each stretch begin, so that loops can be read off when nothing interferes.
  const starts: number[] = [];
  const rests: Rest[] = [];
  let index: EdgesIndex | null = null;
  let interfered = false;
  for (let i = 0; i < stretches.length; i++) {
    starts[i] = edges.length;
    const s = stretches[i]!;
    if (s.source) pushReturned(s, edges);
    const n = next[i]!;
    const to = stretches[n]!;
    if (apart(s.foot1, to.foot0) <= within) continue;
    const cx = (s.edge.x1 + to.edge.x0) / 2;
    const cy = (s.edge.y1 + to.edge.y0) / 2;
    rests.push(new RestBetween(contours, s, to, stretches[follows[i]!]!, [cx, cy]));
    index ??= new EdgesIndex(stretches.map((t) => t.edge));
    for (const a of arcAbout(cx, cy, s.foot1, to.foot0, r).map(throughItsFeet)) {
      const kept = outsideOthers(a, cx, cy, i, n, r, graze, stretches, index);
      if (kept.length !== 1 || kept[0] !== a) interfered = true;
      edges.push(...kept);
    }
  }
  starts[stretches.length] = edges.length;
  const lost = shrunk.lost.map((c) => contours[c]!);
  const loops = interfered ? relinked(edges, within) : readLoops(edges, starts, next);
  return loops && { contours: loops, rests, lost };
}

function apart(p: readonly [number, number], q: readonly [number, number]): number {
  const dx = p[0] - q[0];
  const dy = p[1] - q[1];
  return Math.sqrt(dx * dx + dy * dy);
}

function pushReturned(s: Stretch, edges: Edge[]): void {
  const [x0, y0] = s.foot0;
  const [x1, y1] = s.foot1;
  const returned = withEnds(s.source!, x0, y0, x1, y1);
  if (chordLength(returned) > SAME_POINT) edges.push(returned);
}

/** The counter-clockwise arc about a centre from one foot to another, under half a turn; in two where it nears that. */
function arcAbout(
  cx: number,
  cy: number,
  p: readonly [number, number],
  q: readonly [number, number],
  r: number,
): Edge[] {
  const ux = p[0] - cx;
  const uy = p[1] - cy;
  const vx = q[0] - cx;
  const vy = q[1] - cy;
  if (ux * vx + uy * vy > -0.98 * r * r) return [arc(p[0], p[1], q[0], q[1], cx, cy, r)];
  // The middle lies to the right of the chord's direction from p to q, seen from the centre.
  const dx = vx - ux;
  const dy = vy - uy;
  const l = Math.sqrt(dx * dx + dy * dy);
  const mx = cx + (dy / l) * r;
  const my = cy - (dx / l) * r;
  return [arc(p[0], p[1], mx, my, cx, cy, r), arc(mx, my, q[0], q[1], cx, cy, r)];
}

/**
 * An arc of a resting ball with its centre moved to where the feet say it is. The ends of the two stretches it lies between
 * may be a joint's width apart, and whatever rolls along an arc whose ends are off its circle finds no way on.
 */
function throughItsFeet(a: Edge): Edge {
  const off = Math.max(offCircle(a, a.x0, a.y0), offCircle(a, a.x1, a.y1));
  return off < SAME_POINT ? a : onItsCircle(a, MOST_TURN);
}

function offCircle(a: Edge, x: number, y: number): number {
  return Math.abs(Math.sqrt((x - a.cx) * (x - a.cx) + (y - a.cy) * (y - a.cy)) - Math.abs(a.r));
}

/** What of a rest's arc no other resting or rolling ball covers: two rests nearer than 2r to each other overlap. */
function outsideOthers(
  a: Edge,
  cx: number,
  cy: number,
  before: number,
  after: number,
  r: number,
  graze: number,
  stretches: readonly Stretch[],
  index: EdgesIndex,
): Edge[] {
  beginStretches(a);
  for (const j of index.around(a, r)) {
    if (j === before || j === after) continue;
    const other = stretches[j]!.edge;
    if (distanceToEdge(other, cx, cy) < 2 * r) addNear(other, r, graze);
  }
  if (noneNear()) return [a];
  const out: Edge[] = [];
  betweenStretches((from, to) => {
    const piece = part(a, from, to);
    if (chordLength(piece) > SAME_POINT) out.push(piece);
  });
  return out;
}

function readLoops(edges: readonly Edge[], starts: readonly number[], next: readonly number[]): Contour[] {
  const done = new Array<boolean>(next.length).fill(false);
  const loops: Contour[] = [];
  for (let first = 0; first < next.length; first++) {
    if (done[first]) continue;
    const loop: Edge[] = [];
    for (let i = first; !done[i]; i = next[i]!) {
      done[i] = true;
      for (let k = starts[i]!; k < starts[i + 1]!; k++) loop.push(edges[k]!);
    }
    pushLoop(loop, loops);
  }
  return loops;
}

function relinked(edges: readonly Edge[], within: number): Contour[] | null {
  const next = link(edges, within);
  return next && chains(edges, next);
}

/** Reads closed chains off a successor table. */
export function chains(edges: readonly Edge[], next: readonly number[]): Contour[] {
  const starts = Array.from({ length: edges.length + 1 }, (_, i) => i);
  return readLoops(edges, starts, next);
}

function pushLoop(loop: readonly Edge[], loops: Contour[]): void {
  if (loop.length < 2) return;
  const n = loop.length;
  const joints = loop.map((e, i) => joint(loop[i > 0 ? i - 1 : n - 1]!, e));
  loops.push(
    loop.map((e, i) => {
      const [x0, y0] = joints[i]!;
      const [x1, y1] = joints[i + 1 < n ? i + 1 : 0]!;
      const same = e.x0 === x0 && e.y0 === y0 && e.x1 === x1 && e.y1 === y1;
      return same ? e : onItsCircle(withEnds(e, x0, y0, x1, y1), NO_KINK);
    }),
  );
}

/** Where one edge passes to the next: ends that overlap along the way are trimmed, so that both stay on their curves. */
function joint(before: Edge, e: Edge): readonly [number, number] {
  const dx = e.x0 - before.x1;
  const dy = e.y0 - before.y1;
  return dx * dx + dy * dy < 1e-18 ? [before.x1, before.y1] : footOn(e, before.x1, before.y1);
}

/** The boundary between the end of one stretch and the start of the next reached on the same contour. */
function droppedBetween(contours: readonly Contour[], s: Stretch, t: Stretch): Edge[] {
  const way = wayBetween(contours, s, t);
  if (!way) return [];
  const { home, i, j } = way;
  if (s.source && t.source && i === j && t.from >= s.to) return [part(s.source, s.to, t.from)];
  const out: Edge[] = [];
  if (isCut(s)) out.push(part(s.source!, s.to, parameterEnd(s.source!)));
  for (let n = 1; n <= stepsBetween(home, i, j); n++) out.push(home[(i + n) % home.length]!);
  if (t.source && t.from > 0) out.push(part(t.source, 0, t.from));
  else if (!t.source) out.push(home[j]!);
  return out;
}

function countBetween(contours: readonly Contour[], s: Stretch, t: Stretch): number {
  const way = wayBetween(contours, s, t);
  if (!way) return 0;
  const { home, i, j } = way;
  if (s.source && t.source && i === j && t.from >= s.to) return 1;
  return (isCut(s) ? 1 : 0) + stepsBetween(home, i, j) + (t.source && t.from <= 0 ? 0 : 1);
}

/** The contour that two stretches lie on, and the positions of their edges there. */
function wayBetween(
  contours: readonly Contour[],
  s: Stretch,
  t: Stretch,
): { home: Contour; i: number; j: number } | null {
  const home = contours.find((c) => holdsStretch(c, s));
  return home ? { home, i: positionOf(home, s), j: positionOf(home, t) } : null;
}

/** Whether something of its edge follows a stretch. */
function isCut(s: Stretch): boolean {
  return s.source !== null && s.to < parameterEnd(s.source);
}

/** Edges of a contour between two of them; all the others where these are one. */
function stepsBetween(home: Contour, i: number, j: number): number {
  return (j - i - 1 + home.length) % home.length;
}

function holdsStretch(c: Contour, s: Stretch): boolean {
  return s.source ? c.includes(s.source) : c.some((e) => e.x1 === s.foot0[0] && e.y1 === s.foot0[1]);
}

function positionOf(c: Contour, s: Stretch): number {
  return s.source ? c.indexOf(s.source) : c.findIndex((e) => e.x1 === s.foot0[0] && e.y1 === s.foot0[1]);
}
