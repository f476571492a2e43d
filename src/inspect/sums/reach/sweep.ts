import { chordLength, type Edge, edgeLength, parameterEnd, part } from '../../../geometry/edge.js';
import { Undecided } from '../../../geometry/fault.js';
import { type Inset, inset, movedLeft } from '../../../geometry/inset.js';
import { link } from '../../../geometry/link.js';
import { type Contour, type Region, reversedContour } from '../../../geometry/region.js';
import { chains } from '../../../geometry/roll.js';
import { GRAZE, GRAZE_STEP, HAIR, jointWithin } from '../../../geometry/tolerances.js';

/** Stretches of wall and arcs shorter than this are rounding, mm. */
const HAIRLINE = 1e-5;

/** Walls may turn by 0.1 degree where edges meet, radians: lines at a distance from them then part by as much of it. */
const KINK = 0.00175;

/** A stretch of wall that the cutter cannot come up to. */
export interface Stretch {
  readonly edges: readonly Edge[];
  /** It is a whole contour. */
  readonly closed: boolean;
}

/** Where a cutter gets to beside walls. All mm. */
export interface Sweep {
  /** The walls, with the waste on their left. */
  readonly walls: readonly Contour[];
  /** The boundary of what the cutter sweeps, that on its left. */
  readonly edge: readonly Contour[];
  /** Walls beside which more than the allowance is left. */
  readonly missed: readonly Stretch[];
  /** What is left besides the allowance; null when its boundary has to be found by a boolean. */
  readonly left: Region | null;
}

/**
 * Where a cutter of a radius gets to when it stays radius + allowance off the walls with its middle: the waste shrunk
 * by both and grown again by the radius (an opening: Serra 1982). Exact on lines and arcs; the walls need the waste on
 * their left, which may go on without end outside them. Throws Undecided as geometry/offset does.
 */
export function sweepBeside(walls: readonly Contour[], radius: number, allowance: number): Sweep {
  const middles = decided(walls, radius + allowance);
  const swept = decided(loops(middles).map(reversedContour), radius);
  const edge = loops(swept).map(reversedContour);
  const missed = missedOf(walls, middles);
  return { walls, edge, missed, left: leftOf(missed, swept, allowance, radius) };
}

/** The inset, tried again with the radius larger by hairs, as geometry/offset does. */
function decided(contours: readonly Contour[], r: number): Inset {
  if (contours.length === 0) return { stretches: [], next: [], follows: [], lost: [] };
  let graze = GRAZE;
  for (let attempt = 0; attempt < 5; attempt++) {
    const moved = inset(contours, r + attempt * HAIR, false, graze);
    if (moved) return moved;
    graze *= GRAZE_STEP;
  }
  throw new Undecided('the sweep of a cutter found no consistent boundary');
}

function loops({ stretches, next }: Inset): Contour[] {
  return chains(
    stretches.map((s) => s.edge),
    next,
  );
}

/** What the stretches of middles leave of the walls they are parallel to. */
function missedOf(walls: readonly Contour[], { stretches }: Inset): Stretch[] {
  const touched = new Map<Edge, [number, number][]>();
  for (const { source, from, to } of stretches) {
    if (!source) continue;
    const known = touched.get(source);
    if (known) known.push([from, to]);
    else touched.set(source, [[from, to]]);
  }
  return walls.flatMap((wall) => {
    const chainsOf: Edge[][] = [];
    // Whether the stretch before goes on into the next piece.
    let open = false;
    for (const e of wall) {
      const end = parameterEnd(e);
      let at = 0;
      const add = (from: number, to: number): void => {
        if (from > 0) open = false;
        const piece = part(e, from, to);
        if (edgeLength(piece) < HAIRLINE) return;
        if (open) chainsOf.at(-1)!.push(piece);
        else chainsOf.push([piece]);
        open = true;
      };
      for (const [from, to] of (touched.get(e) ?? []).sort((p, q) => p[0] - q[0])) {
        if (from > at) add(at, from);
        open = false;
        at = Math.max(at, to);
      }
      if (at < end) add(at, end);
    }
    return joinedRound(wall, chainsOf, open);
  });
}

/** The last stretch of a contour goes on in its first where neither ends at the seam. */
function joinedRound(wall: Contour, list: readonly Edge[][], open: boolean): Stretch[] {
  const first = list[0];
  const last = list.at(-1);
  const seam = wall[0]!;
  const goesOn = first && last && open && first[0]!.x0 === seam.x0 && first[0]!.y0 === seam.y0;
  if (!goesOn) return list.map((edges) => ({ edges, closed: false }));
  if (list.length === 1) return [{ edges: first, closed: true }];
  return [[...last, ...first], ...list.slice(1, -1)].map((edges) => ({ edges, closed: false }));
}

/** Bounded by missed walls, the allowance off them, and by arcs of the cutter where it comes to rest. */
function leftOf(missed: readonly Stretch[], swept: Inset, allowance: number, radius: number): Region | null {
  const edges: Edge[] = [];
  for (const { edges: wall } of missed)
    for (const e of wall) {
      const moved = movedLeft(e, allowance);
      // Walls that turn more tightly than the allowance have no line at that distance.
      if (!moved) return null;
      edges.push(moved);
    }
  // Round corners of the line of middles the cutter rests, and its own arc is the boundary. It runs with what the cutter
  // does not reach on its left.
  for (const s of swept.stretches) if (!s.source && chordLength(s.edge) > HAIRLINE) edges.push(s.edge);
  const next = link(edges, jointWithin(radius, GRAZE) + allowance * KINK);
  return next && { contours: chains(edges, next) };
}
