import { crossing } from './crossings.js';
import { difference } from './difference.js';
import { type Drawing, mirrored } from './drawing.js';
import { twice } from './field-agrees.js';
import { gap } from './gap.js';
import { worstJoint } from './joints.js';
import { readDxf } from './read-dxf.js';
import { readSvg } from './read-svg.js';

/** What a proof requires (design: Numbers): degrees, then mm. */
const JOINT = 0.1;
const GAP = 0.002;
const SVG_DXF = 0.0002;

/** No circle is drawn so large, mm: its arcs are straight to the last digit. */
const FLAT = 1e11;

/** Reach is measured up to this many times what is required; more is reported as this much. */
const CAP = 2;

export interface SideProof {
  /** mm; no more than twice what is required is ever reported. */
  readonly reach: number;
  readonly side: 'inside' | 'outside';
  /** Where the reach is taken on, mm from the middle of the sheet, y up; [0, 0] when it is twice the required or more. */
  readonly at: readonly [number, number];
  readonly holds: boolean;
  /** The reach by the second route (see field-reach.ts), mm: a proof fails when the two differ by more than 0.005. */
  readonly field: number;
}

/** job.json's proof, and whether it holds. What could not be measured is NaN; drawings that do not pair off differ by Infinity. */
export interface Proof {
  readonly required: number;
  readonly pocket: SideProof;
  readonly plug: SideProof;
  readonly joints: { readonly worst: number };
  readonly gap: { readonly least: number; readonly most: number };
  readonly svgDxf: number;
  readonly holds: boolean;
  /** Plain sentences; empty exactly when the proof holds. */
  readonly failures: readonly string[];
}

export interface ProofFiles {
  readonly pocketSvg: string;
  readonly plugSvg: string;
  readonly pocketDxf: string;
  readonly plugDxf: string;
}

export interface Asked {
  /** The cutter's radius, mm: the reach required of both boundaries. */
  readonly radius: number;
  /** Gap per side, mm. */
  readonly clearance: number;
  /** Is the plug cut on a carrier, so drawn mirrored? */
  readonly carrier: boolean;
}

/**
 * Reads the four written drawings back and measures them. A plug on a carrier is turned back over first, so every
 * place is one of the pocket's drawing. Never throws for what is in the files: faults are failures of the proof.
 */
export function prove(files: ProofFiles, asked: Asked): Proof {
  const failures: string[] = [];
  const drawings = readFour(files, failures);
  if (!(asked.radius > 0 && asked.radius < Infinity))
    failures.push('the cutter has no radius to prove against');
  if (failures.length > 0 || !drawings) return unread(asked, failures);
  return measured(drawings, asked);
}

/** The four drawings of a pair as read back, the plug as cut. */
export interface Four {
  readonly pocket: Drawing;
  readonly plugAsCut: Drawing;
  readonly pocketDxf: Drawing;
  readonly plugDxf: Drawing;
}

/** Reads the four drawings back; null, and why, when one cannot be read. */
export function readFour(files: ProofFiles, failures: string[]): Four | null {
  const read = (name: string, parse: () => Drawing): Drawing | null => {
    try {
      return parse();
    } catch (error) {
      failures.push(`${name} cannot be read back: ${error instanceof Error ? error.message : String(error)}`);
      return null;
    }
  };
  const pocket = read('pocket.svg', () => expect('pocket', readSvg(files.pocketSvg)));
  const plugAsCut = read('plug.svg', () => expect('plug', readSvg(files.plugSvg)));
  const pocketDxf = read('pocket.dxf', () => expect('pocket', readDxf(files.pocketDxf)));
  const plugDxf = read('plug.dxf', () => expect('plug', readDxf(files.plugDxf)));
  return pocket && plugAsCut && pocketDxf && plugDxf ? { pocket, plugAsCut, pocketDxf, plugDxf } : null;
}

/** Measures a pair's drawings. */
export function measured({ pocket, plugAsCut, pocketDxf, plugDxf }: Four, asked: Asked): Proof {
  const failures: string[] = [];
  const plug = asked.carrier ? mirrored(plugAsCut, plugAsCut.width!) : plugAsCut;
  const middle: [number, number] = [pocket.width! / 2, pocket.height! / 2];
  const where = (at: readonly [number, number]) =>
    `(${fine(at[0] - middle[0])}, ${fine(at[1] - middle[1])}) from the middle`;

  sound('pocket', pocket, where, failures);
  sound('plug', plug, where, failures);
  // What bounds no region has no reach and no gap, and looking for them could take for ever.
  if (failures.length > 0) return unread(asked, failures);
  matching(pocket, plug, failures);
  const sides = {
    pocket: sideProof('pocket', pocket, 'inside', asked.radius, middle, failures),
    plug: sideProof('plug', plug, 'outside', asked.radius, middle, failures),
  };
  for (const [name, side] of Object.entries(sides)) {
    if (side.holds) continue;
    failures.push(
      `the ${name}'s reach from ${side.side} is ${fine(side.reach)} mm at (${fine(side.at[0])}, ${fine(side.at[1])}) from the middle, and the cutter needs ${fine(asked.radius)}`,
    );
  }
  const joints = [worstJoint(pocket), worstJoint(plug)] as const;
  const worst = joints[0].degrees > joints[1].degrees ? joints[0] : joints[1];
  if (!(worst.degrees <= JOINT)) {
    failures.push(
      `edges meet at ${fine(worst.degrees)} degrees at ${where(worst.at ?? middle)}; at most ${JOINT} is smooth`,
    );
  }
  const between = gap(pocket, plug);
  if (!(between.least >= asked.clearance - GAP)) {
    failures.push(
      `the gap is only ${fine(between.least)} mm at ${where(between.leastAt)} where ${fine(asked.clearance)} was asked`,
    );
  }
  if (!(between.most <= asked.clearance + GAP)) {
    failures.push(
      `the gap is ${fine(between.most)} mm at ${where(between.mostAt)} where ${fine(asked.clearance)} was asked`,
    );
  }
  const svgDxf = Math.max(difference(pocket, pocketDxf), difference(plugAsCut, plugDxf));
  if (!(svgDxf <= SVG_DXF))
    failures.push(`SVG and DXF differ by ${fine(svgDxf)} mm; at most ${SVG_DXF} may be rounding`);
  return {
    required: round(asked.radius),
    ...sides,
    joints: { worst: round(worst.degrees) },
    gap: { least: round(between.least), most: round(between.most) },
    svgDxf: round(svgDxf),
    holds: failures.length === 0,
    failures,
  };
}

function expect(name: 'pocket' | 'plug', drawing: Drawing): Drawing {
  if (drawing.name !== name) throw new Error(`it holds a ${drawing.name}, not a ${name}`);
  if (drawing.edges.count === 0) throw new Error('nothing is drawn in it');
  const { x0, y0, cx, cy, r, count } = drawing.edges;
  const far = drawing.width === null ? Infinity : 2 * Math.max(drawing.width, drawing.height!);
  for (let i = 0; i < count; i++)
    if (!(Math.abs(x0[i]!) <= far && Math.abs(y0[i]!) <= far))
      throw new Error('a point lies far off the sheet');
    else if (!(Math.abs(r[i]!) < FLAT && Math.abs(cx[i]!) < FLAT && Math.abs(cy[i]!) < FLAT))
      throw new Error('an arc has no circle');
  return drawing;
}

/** A drawing with nothing in it, or whose boundary crosses itself, bounds no region, so no measure of it means anything. */
function sound(
  name: string,
  drawing: Drawing,
  where: (at: readonly [number, number]) => string,
  failures: string[],
): void {
  const crossed = crossing(drawing);
  if (crossed) failures.push(`the ${name}'s boundary crosses or touches itself at ${where(crossed)}`);
  const { area } = drawing.nesting;
  for (let k = 0; k < area.length; k++) {
    if (area[k] === 0) failures.push(`contour ${k + 1} of the ${name} encloses nothing`);
  }
}

/** Both must have the same parts and holes on the same sheet. */
function matching(pocket: Drawing, plug: Drawing, failures: string[]): void {
  const [a, b] = [pocket.nesting.parts, plug.nesting.parts];
  if (a !== b) failures.push(`the pocket has ${a} parts and the plug ${b}`);
  const [c, d] = [pocket.contours - a, plug.contours - b];
  if (c !== d) failures.push(`the pocket has ${c} holes and the plug ${d}`);
  if (pocket.unit !== plug.unit || pocket.width !== plug.width || pocket.height !== plug.height) {
    failures.push('pocket and plug are drawn on sheets of different size or unit');
  }
}

function sideProof(
  name: string,
  drawing: Drawing,
  side: 'inside' | 'outside',
  required: number,
  middle: readonly [number, number],
  failures: string[],
): SideProof {
  const { reach: value, at, field, disagree } = twice(drawing, side, CAP * required);
  if (disagree) failures.push(disagree(name, middle));
  const place: [number, number] = at ? [round(at[0] - middle[0]), round(at[1] - middle[1])] : [0, 0];
  return { reach: round(value), side, at: place, holds: value >= required, field: round(field) };
}

export function unread(asked: Asked, failures: readonly string[]): Proof {
  const side = (name: 'inside' | 'outside'): SideProof => ({
    reach: Number.NaN,
    side: name,
    at: [0, 0],
    holds: false,
    field: Number.NaN,
  });
  return {
    required: round(asked.radius),
    pocket: side('inside'),
    plug: side('outside'),
    joints: { worst: Number.NaN },
    gap: { least: Number.NaN, most: Number.NaN },
    svgDxf: Number.NaN,
    holds: false,
    failures,
  };
}

/** Six decimals; never -0. */
function round(x: number): number {
  return x - x === 0 ? Math.round(x * 1e6) / 1e6 + 0 : x;
}

function fine(x: number): string {
  return x - x === 0 ? String(Math.round(x * 1e4) / 1e4 + 0) : String(x);
}
