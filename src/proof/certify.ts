import { crossing } from './crossings.js';
import { Drawing } from './drawing.js';
import type { Edges } from './edges.js';
import { twice } from './field-agrees.js';
import { worstJoint } from './joints.js';
import { boxOf } from './pieces.js';
import { type TightPlace, tightPlaces } from './tight-places.js';

/** A side of a closed outline, mm, y up: straight where r is 0, else an arc about (cx, cy), turning left where r > 0. */
export interface PlainEdge {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
  /** Does it sweep more than 180 degrees? */
  readonly wide?: boolean;
}

export interface CertifyAsked {
  /** The cutter's radius, mm. */
  readonly radius: number;
  /** inside: a pocket's boundary; outside: a plug's. */
  readonly side: 'inside' | 'outside';
  /** How many of the tightest places are wanted. */
  readonly top: number;
}

export interface Certificate {
  readonly required: number;
  readonly side: 'inside' | 'outside';
  /** mm; at most twice what is required is looked for. */
  readonly reach: number;
  /** Is it twice the required or more? */
  readonly capped: boolean;
  /** The reach by the second route, mm. */
  readonly field: number;
  readonly holds: boolean;
  readonly parts: number;
  readonly holes: number;
  readonly joints: { readonly worst: number; readonly at: readonly [number, number] | null };
  /** minX, minY, maxX, maxY, mm. */
  readonly box: readonly [number, number, number, number];
  /** Tightest first; only what is under twice the required. */
  readonly places: readonly TightPlace[];
  /** Plain sentences; empty exactly when it holds. */
  readonly failures: readonly string[];
}

/** A drawing of plain edges, a list for each closed outline. Throws when an outline is not closed or holds no number. */
export function drawingOfEdges(
  outlines: readonly (readonly PlainEdge[])[],
  name: 'pocket' | 'plug',
): Drawing {
  const all = outlines.flat();
  const starts = [0];
  for (const outline of outlines) starts.push(starts[starts.length - 1]! + outline.length);
  outlines.forEach((outline, k) => {
    outline.forEach((e, i) => {
      const next = outline[(i + 1) % outline.length]!;
      const sum = e.x0 + e.y0 + e.x1 + e.y1 + e.cx + e.cy + e.r;
      if (sum - sum !== 0) throw new Error(`edge ${i + 1} of outline ${k + 1} is not made of numbers`);
      if (e.x1 !== next.x0 || e.y1 !== next.y0)
        throw new Error(`outline ${k + 1} is open after edge ${i + 1}`);
    });
  });
  const column = (get: (e: PlainEdge) => number): Float64Array => Float64Array.from(all, get);
  const edges: Edges = {
    count: all.length,
    x0: column((e) => e.x0),
    y0: column((e) => e.y0),
    x1: column((e) => e.x1),
    y1: column((e) => e.y1),
    cx: column((e) => e.cx),
    cy: column((e) => e.cy),
    r: column((e) => e.r),
    wide: Uint8Array.from(all, (e) => (e.wide ? 1 : 0)),
  };
  return new Drawing('mm', null, null, name, edges, Int32Array.from(starts));
}

/** Measures the reach of closed outlines by both routes, and finds the tightest places. Pure; throws for open outlines. */
export function certify(outlines: readonly (readonly PlainEdge[])[], asked: CertifyAsked): Certificate {
  return certifyDrawing(drawingOfEdges(outlines, asked.side === 'inside' ? 'pocket' : 'plug'), asked);
}

/** The same of a drawing that was read. Throws when it is empty. */
export function certifyDrawing(drawing: Drawing, { radius, side, top }: CertifyAsked): Certificate {
  if (drawing.edges.count === 0) throw new Error('nothing is drawn');
  const failures: string[] = [];
  const cap = 2 * radius;
  const { reach, capped, field, disagree, at } = twice(drawing, side, cap);
  const box = boxOf(drawing);
  const corner: [number, number] = [box[0], box[1]];
  const crossed = crossing(drawing);
  if (crossed) failures.push(`the boundary crosses or touches itself at ${place(crossed, corner)}`);
  const { area, parts } = drawing.nesting;
  area.forEach((a, k) => {
    if (a === 0) failures.push(`outline ${k + 1} encloses nothing`);
  });
  if (disagree) failures.push(disagree('drawing', corner));
  if (!(reach >= radius))
    failures.push(
      `the reach is ${fine(reach)} mm at ${place(at ?? corner, corner)}, and the cutter needs ${fine(radius)}`,
    );
  const joint = worstJoint(drawing);
  return {
    required: radius,
    side,
    reach,
    capped,
    field,
    holds: failures.length === 0,
    parts,
    holes: drawing.contours - parts,
    joints: { worst: joint.degrees, at: joint.at },
    box,
    places: tightPlaces(drawing, side, cap, top),
    failures,
  };
}

function place([x, y]: readonly [number, number], [left, low]: readonly [number, number]): string {
  return `(${fine(x - left)}, ${fine(y - low)})`;
}

function fine(x: number): string {
  return x - x === 0 ? String(Math.round(x * 1e4) / 1e4 + 0) : 'an unknown length of';
}
