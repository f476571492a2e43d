import type { Edge } from '../../geometry/edge.js';
import { bend, type Point, type Strand, type Way } from './strand.js';

/** Cells of a square grid that hold a plait, by column and row. */
export interface Cells {
  readonly columns: number;
  readonly rows: number;
  has(i: number, j: number): boolean;
}

/**
 * What bands do at the middle of a side between two cells: cross, or turn back on either side of a break, which lies
 * along the side or across it. Where a cell has no neighbour there is a break along its side.
 */
export type Meeting = 'cross' | 'along' | 'across';

export interface Plait {
  readonly cells: Cells;
  /** At the side with its middle x, y half cells from the grid's lower left corner; one of them is odd. */
  meeting(x: number, y: number): Meeting;
}

/** Sizes of a plait on the piece, mm. */
export interface PlaitSizes {
  /** The grid's lower left corner. */
  readonly corner: Point;
  readonly cell: number;
  /** From a break to the middle of the bands beside it. */
  readonly off: number;
  /** Whether bands turn by corners, not by arcs. */
  readonly pointed: boolean;
}

/** Sides of a cell counter-clockwise from the right one, by the direction outwards. */
const SIDES: readonly Point[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

/** One way across a cell, from the middle of a side to that of one beside it. */
interface Step {
  readonly i: number;
  readonly j: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The closed strands of a plait. At crossings on level sides the band that rises to the right lies over, at the others
 * the one that falls: so every band goes over and under by turns, whatever the breaks are.
 */
export function plaitStrands(plait: Plait, sizes: PlaitSizes): Strand[] {
  const seen = new Set<string>();
  const strands: Strand[] = [];
  const { columns, rows, has } = plait.cells;
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++)
      for (let from = 0; from < 4; from++) {
        const first = { i, j, from, to: (from + 1) % 4 };
        if (has(i, j) && !seen.has(unordered(first))) strands.push(strand(plait, sizes, first, seen));
      }
  return strands;
}

function strand(plait: Plait, sizes: PlaitSizes, first: Step, seen: Set<string>): Strand {
  const nodes: { crossing: string; over: boolean }[] = [];
  const stretches: Edge[][] = [];
  const lead: Edge[] = [];
  let step = first;
  do {
    seen.add(unordered(step));
    (stretches[stretches.length - 1] ?? lead).push(...edgesOf(plait, sizes, step));
    const [x, y] = middleOf(step, step.to);
    if (meetingAt(plait, step, step.to) === 'cross') {
      const [ux, uy] = SIDES[step.to]!;
      const [vx, vy] = SIDES[step.from]!;
      const rises = (ux - vx) * (uy - vy) > 0;
      nodes.push({ crossing: `${x},${y}`, over: rises === (x % 2 !== 0) });
      stretches.push([]);
    }
    step = next(plait, step);
  } while (step.i !== first.i || step.j !== first.j || step.from !== first.from || step.to !== first.to);
  if (nodes.length === 0) return { nodes, stretches: [lead] };
  stretches[stretches.length - 1]!.push(...lead);
  return { nodes, stretches };
}

/** The step after: across a crossing straight on; at a break back into the same half of the plane beside it. */
function next(plait: Plait, { i, j, from, to }: Step): Step {
  const meeting = meetingAt(plait, { i, j }, to);
  if (meeting === 'along') return { i, j, from: to, to: opposite(from) };
  const [ux, uy] = SIDES[to]!;
  return { i: i + ux, j: j + uy, from: opposite(to), to: meeting === 'cross' ? opposite(from) : from };
}

function edgesOf(plait: Plait, sizes: PlaitSizes, step: Step): Edge[] {
  const start = wayAt(plait, sizes, step, step.from, step.to);
  const back = wayAt(plait, sizes, step, step.to, step.from);
  const end: Way = { at: back.at, along: [-back.along[0], -back.along[1]] };
  return bend(start, end, sizes.pointed);
}

/** Where a band is at the middle of side `a`, and its direction from there towards side `b`. */
function wayAt(plait: Plait, sizes: PlaitSizes, step: { i: number; j: number }, a: number, b: number): Way {
  const { corner, cell, off } = sizes;
  const [ux, uy] = SIDES[a]!;
  const [vx, vy] = SIDES[b]!;
  const h = cell / 2;
  const at = (u: number, v: number): Point => [
    corner[0] + (step.i + 0.5) * cell + u * ux + v * vx,
    corner[1] + (step.j + 0.5) * cell + u * uy + v * vy,
  ];
  const diagonal: Point = [(vx - ux) * Math.SQRT1_2, (vy - uy) * Math.SQRT1_2];
  const meeting = meetingAt(plait, step, a);
  if (meeting === 'cross') return { at: at(h, 0), along: diagonal };
  if (meeting === 'along') return { at: at(h - off, 0), along: [vx, vy] };
  return { at: at(h, off), along: [-ux, -uy] };
}

function meetingAt(plait: Plait, step: { i: number; j: number }, side: number): Meeting {
  const [ux, uy] = SIDES[side]!;
  if (!plait.cells.has(step.i + ux, step.j + uy)) return 'along';
  const [x, y] = middleOf(step, side);
  return plait.meeting(x, y);
}

function middleOf(step: { i: number; j: number }, side: number): Point {
  const [ux, uy] = SIDES[side]!;
  return [2 * step.i + 1 + ux, 2 * step.j + 1 + uy];
}

function opposite(side: number): number {
  return (side + 2) % 4;
}

function unordered({ i, j, from, to }: Step): string {
  return `${i},${j},${from < to ? `${from}${to}` : `${to}${from}`}`;
}
