import { apart } from './apart.js';
import { crossing } from './crossings.js';
import { difference } from './difference.js';
import type { Drawing } from './drawing.js';
import { twice } from './field-agrees.js';
import { gap } from './gap.js';
import { worstJoint } from './joints.js';
import { boxOf, partsOf, placed, select } from './pieces.js';
import { readDxf } from './read-dxf.js';
import { readSvg } from './read-svg.js';

/** What a proof of a layout requires, mm and degrees: a laid part is its part again, turned, to within ALIKE. */
const ALIKE = 0.0005;
/** Rounding of what is written, in inches too. */
const ROUNDING = 1e-4;
const JOINT = 0.1;
const SVG_DXF = 0.0002;

export interface LayoutFiles {
  readonly svg: string;
  readonly dxf: string;
  /** The drawing that the parts come from: plug.svg or pocket.svg. */
  readonly source: string;
}

export interface LayoutAsked {
  readonly part: 'pocket' | 'plug';
  /** The cutter's radius, mm. */
  readonly radius: number;
  /** Between neighbours and from each to the board's edge, mm. */
  readonly spacing: number;
  /** mm; the board's lower left corner stands `border` right and up from the sheet's. */
  readonly board: { readonly length: number; readonly width: number; readonly border: number };
  /** Direction of the grain on the source drawing; on the layout it must run along x, one way or the other. */
  readonly grain: readonly [number, number];
  /** For each thing laid, in the order written, which part of the source it is, from 0. For pockets, the whole source each. */
  readonly laid: readonly number[];
  /** For pockets: the box of the piece's face round the source sheet's middle, turned so that `grain` points along x: minX, minY, maxX, maxY. */
  readonly face?: readonly [number, number, number, number];
}

export interface LayoutProof {
  /** Reach of the laid boundaries, mm, at most twice what is required. */
  readonly reach: number;
  /** The same by the second route, mm. */
  readonly field: number;
  readonly required: number;
  /** How far a laid part strays from the part it is to be, mm. */
  readonly strays: number;
  /** Least distance between neighbours, mm, and to the board's edge; at most twice the spacing is looked for. */
  readonly between: number;
  readonly edge: number;
  readonly joints: { readonly worst: number };
  readonly svgDxf: number;
  readonly holds: boolean;
  readonly failures: readonly string[];
}

/** Reads a layout's drawings back and measures them against the drawing the parts come from. Never throws for what is in them. */
export function proveLayout(files: LayoutFiles, asked: LayoutAsked): LayoutProof {
  const failures: string[] = [];
  const name = `${asked.part}-layout`;
  const read = (file: string, parse: () => Drawing): Drawing | null => {
    try {
      const drawing = parse();
      if (drawing.name !== asked.part) throw new Error(`it holds a ${drawing.name}, not a ${asked.part}`);
      if (drawing.edges.count === 0) throw new Error('nothing is drawn in it');
      return drawing;
    } catch (error) {
      failures.push(`${file} cannot be read back: ${error instanceof Error ? error.message : String(error)}`);
      return null;
    }
  };
  const laid = read(`${name}.svg`, () => readSvg(files.svg));
  const dxf = read(`${name}.dxf`, () => readDxf(files.dxf));
  const source = read(`${asked.part}.svg`, () => readSvg(files.source));
  if (!laid || !dxf || !source) return unread(asked, failures);

  const crossed = crossing(laid);
  if (crossed) failures.push(`${name}: a boundary crosses or touches another at ${place(crossed)}`);
  const things = asked.part === 'plug' ? partsOf(laid) : runs(laid, source.contours);
  const from = asked.part === 'plug' ? partsOf(source) : runs(source, source.contours);
  if (things.length !== asked.laid.length || laid.contours !== sumOf(asked.laid, from)) {
    failures.push(`${name} holds ${things.length} things laid out, and ${asked.laid.length} were asked for`);
    return { ...unread(asked, failures), svgDxf: difference(laid, dxf) };
  }
  const drawn = things.map((c) => select(laid, c));
  const faces: [number, number, number, number][] = [];
  let strays = 0;
  drawn.forEach((d, i) => {
    const found = congruent(select(source, from[asked.laid[i]!]!), d, asked.grain);
    if (!(found.strays <= ALIKE))
      failures.push(
        `${name}: what is laid at ${place(centre(d))} strays by ${fine(found.strays)} mm from part ${asked.laid[i]! + 1} of ${asked.part}.svg laid along the grain; at most ${ALIKE} may be rounding`,
      );
    if (!(found.strays <= strays)) strays = found.strays;
    faces.push(faceOf(found, source, asked.face) ?? boxOf(d));
  });
  const { between, edge } = room(drawn, faces, asked);
  if (!(between >= asked.spacing - ROUNDING))
    failures.push(
      `${name}: neighbours are ${fine(between)} mm apart, and ${fine(asked.spacing)} were stated`,
    );
  if (!(edge >= asked.spacing - ROUNDING))
    failures.push(
      `${name}: only ${fine(edge)} mm to the board's edge, and ${fine(asked.spacing)} were stated`,
    );
  board(laid, asked, name, failures);

  const side = asked.part === 'plug' ? 'outside' : 'inside';
  const measured = twice(laid, side, 2 * asked.radius);
  if (measured.disagree) failures.push(measured.disagree(name, [0, 0]));
  if (!(measured.reach >= asked.radius))
    failures.push(
      `${name}: the reach from ${side} is ${fine(measured.reach)} mm at ${place(measured.at ?? [0, 0])}, and the cutter needs ${fine(asked.radius)}`,
    );
  const worst = worstJoint(laid);
  if (!(worst.degrees <= JOINT))
    failures.push(`${name}: edges meet at ${fine(worst.degrees)} degrees; at most ${JOINT} is smooth`);
  const svgDxf = difference(laid, dxf);
  if (!(svgDxf <= SVG_DXF))
    failures.push(`${name}: SVG and DXF differ by ${fine(svgDxf)} mm; at most ${SVG_DXF} may be rounding`);
  return {
    reach: round(measured.reach),
    field: round(measured.field),
    required: round(asked.radius),
    strays: round(strays),
    between: round(between),
    edge: round(edge),
    joints: { worst: round(worst.degrees) },
    svgDxf: round(svgDxf),
    holds: failures.length === 0,
    failures,
  };
}

/** Contours in runs of n, as they are written. */
function runs(drawing: Drawing, n: number): number[][] {
  const out: number[][] = [];
  for (let k = 0; k < drawing.contours; k += n)
    out.push(Array.from({ length: Math.min(n, drawing.contours - k) }, (_, i) => k + i));
  return out;
}

function sumOf(laid: readonly number[], from: readonly number[][]): number {
  return laid.reduce((sum, k) => sum + (from[k]?.length ?? Number.NaN), 0);
}

interface Congruence {
  readonly strays: number;
  /** +1: turned so that the stated direction points along x; -1: the other way round. */
  readonly sign: number;
  /** The turn and the move that lay the source's part where the laid one is. */
  readonly c: number;
  readonly s: number;
  readonly dx: number;
  readonly dy: number;
}

/** Lays a part of the source along the grain, either way round, box on box with the laid one; how far do they stray at best? */
function congruent(part: Drawing, laid: Drawing, [gx, gy]: readonly [number, number]): Congruence {
  const l = Math.sqrt(gx * gx + gy * gy);
  let best: Congruence = { strays: Infinity, sign: 1, c: 1, s: 0, dx: 0, dy: 0 };
  for (const sign of [1, -1]) {
    const [c, s] = [(sign * gx) / l, (-sign * gy) / l];
    const [px, py] = centre(placed(part, c, s, 0, 0));
    const [qx, qy] = centre(laid);
    const [dx, dy] = [qx - px, qy - py];
    const { least, most } = gap(placed(part, c, s, dx, dy), laid);
    const strays = Math.max(Math.abs(least), Math.abs(most));
    if (strays < best.strays) best = { strays, sign, c, s, dx, dy };
  }
  return best;
}

/** Where the face of a laid piece lies, from where its pocket does. */
function faceOf(
  { sign, c, s, dx, dy }: Congruence,
  source: Drawing,
  face: LayoutAsked['face'],
): [number, number, number, number] | null {
  if (!face) return null;
  const [mx, my] = [source.width! / 2, source.height! / 2];
  const x = mx * c - my * s + dx;
  const y = mx * s + my * c + dy;
  const [x0, y0, x1, y1] = face;
  return sign > 0 ? [x + x0, y + y0, x + x1, y + y1] : [x - x1, y - y1, x - x0, y - y0];
}

/** The room between neighbours and to the board's edges: of pieces between the boxes of their faces. */
function room(
  drawn: readonly Drawing[],
  boxes: readonly (readonly [number, number, number, number])[],
  { spacing, board, face }: LayoutAsked,
): { between: number; edge: number } {
  let between = 2 * spacing;
  let edge = Infinity;
  boxes.forEach(([x0, y0, x1, y1], i) => {
    const { length, width, border } = board;
    edge = Math.min(edge, x0 - border, y0 - border, border + length - x1, border + width - y1);
    if (!face) return;
    for (const [u0, v0, u1, v1] of boxes.slice(i + 1))
      between = Math.min(between, Math.max(u0 - x1, x0 - u1, v0 - y1, y0 - v1));
  });
  if (!face) between = apart(drawn, 2 * spacing).least;
  return { between, edge: Math.min(edge, 2 * spacing) };
}

/** The sheet must be the board and its border. */
function board(laid: Drawing, { board: b }: LayoutAsked, name: string, failures: string[]): void {
  const off = Math.max(
    Math.abs(laid.width! - b.length - 2 * b.border),
    Math.abs(laid.height! - b.width - 2 * b.border),
  );
  if (!(off <= ROUNDING)) failures.push(`${name}: the sheet is ${fine(off)} mm off the board and its border`);
}

function centre(drawing: Drawing): [number, number] {
  const [x0, y0, x1, y1] = boxOf(drawing);
  return [(x0 + x1) / 2, (y0 + y1) / 2];
}

function unread({ radius }: LayoutAsked, failures: readonly string[]): LayoutProof {
  return {
    reach: Number.NaN,
    field: Number.NaN,
    required: round(radius),
    strays: Number.NaN,
    between: Number.NaN,
    edge: Number.NaN,
    joints: { worst: Number.NaN },
    svgDxf: Number.NaN,
    holds: false,
    failures,
  };
}

function place([x, y]: readonly [number, number]): string {
  return `(${fine(x)}, ${fine(y)})`;
}

/** Six decimals; never -0. */
function round(x: number): number {
  return x - x === 0 ? Math.round(x * 1e6) / 1e6 + 0 : x;
}

function fine(x: number): string {
  return x - x === 0 ? String(Math.round(x * 1e4) / 1e4 + 0) : 'an unknown length of';
}
