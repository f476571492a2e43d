import { area, bounds, contains, flatten, type Region } from '../geometry/region.js';
import { cos } from '../geometry/trig.js';
import { fromFace } from './face.js';
import { depthOf, halfWidth, toVessel } from './stave.js';
import type { Vessel } from './vessel.js';

/** A place on the drawn face, and a figure of it. */
export interface AtPlace {
  readonly mm: number;
  readonly at: readonly [u: number, v: number];
}

/** How the figure comes out on one face of the finished wall. */
export interface OnFace {
  /** Share of the figure that lies on wood which is still there on that face. */
  readonly survives: number;
  /** Share of that which shows: where the plug reaches the face. */
  readonly shows: number;
  /** Where it does not show though the wood is there, at its deepest; null: it shows wherever it survives. */
  readonly missing: AtPlace | null;
}

export interface FigureShown {
  readonly outside: OnFace;
  readonly inside: OnFace;
  /** The least pocket with which the figure shows through everywhere it survives on both faces; null: nowhere does it. */
  readonly leastDepth: AtPlace | null;
  /** The most of the skin under the pocket that the finished wall leaves standing in the figure; null: none. */
  readonly skinLeft: AtPlace | null;
  /** From the outside to the inside: how far the figure moves up, and how wide it becomes, least and most. */
  readonly shift: { readonly rise: AtPlace; readonly narrowest: number; readonly widest: number } | null;
}

/** What the plug fills: from the drawn face down to its foot, mm. */
export interface Inlaid {
  readonly depth: number;
  /** Between the plug's foot and the pocket's floor. */
  readonly glueGap: number;
}

/** Samples over a figure: enough that a share is true to a percent. */
const SAMPLES = 6000;
/** Chords of its edge, where depths are greatest. */
const CHORD = 0.05;

/** How a figure of the drawn face shows on the finished wall. Shares are by area, from samples. */
export function figureShown(vessel: Vessel, figure: Region, { depth, glueGap }: Inlaid): FigureShown {
  const foot = depth - glueGap;
  const near = vessel.setup.face;
  const edge = edgeOf(figure);
  // What runs on over a joint is meant to be sawn there: only what lies between the joints is counted.
  const over = edge.some((at) => !between(vessel, at, 0));
  const inner = samplesOf(figure).filter((at) => !over || (between(vessel, at, 0) && between(vessel, at, 1)));
  const both = [...inner, ...edge];
  const faces = {
    outside: onFace(vessel, inner, both, 'outside', foot),
    inside: onFace(vessel, inner, both, 'inside', foot),
  };
  const far = near === 'outside' ? 'inside' : 'outside';
  const through = both.flatMap(([u, v]) => {
    const [a, b] = [under(vessel, near, u, v), under(vessel, far, u, v)];
    return a === null || b === null ? [] : [{ at: [u, v] as const, a, b }];
  });
  const deepest = most(through.map(({ at, b }) => ({ mm: b, at })));
  const skin = most(through.map(({ at, b }) => ({ mm: b - depth, at })));
  return {
    ...faces,
    leastDepth: deepest && { mm: deepest.mm + glueGap, at: deepest.at },
    skinLeft: skin && skin.mm > 1e-6 ? skin : null,
    shift: shiftOf(vessel, through),
  };
}

/** Does a point lie between the joints, at the stave's outer (0) or inner (1) face? */
function between(vessel: Vessel, [u, v]: Place, face: 0 | 1): boolean {
  const { x, y } = fromFace(vessel, u, v, 0);
  return Math.abs(x) < halfWidth(vessel.stave, y, face * vessel.stave.thickness);
}

/** Depth of the finished wall's face under a point of the drawn one; null where it is not there on this stave. */
export function under(vessel: Vessel, face: 'outside' | 'inside', u: number, v: number): number | null {
  const { stave, wall, setup } = vessel;
  const { x, y } = fromFace(vessel, u, v, 0);
  const deep = depthOf(stave, wall[face], x, y);
  if (deep === null || Math.abs(x) > halfWidth(stave, y, deep) + 1e-9) return null;
  return setup.face === 'outside' ? deep : stave.thickness - deep;
}

function onFace(
  vessel: Vessel,
  inner: readonly Place[],
  both: readonly Place[],
  face: 'outside' | 'inside',
  foot: number,
): OnFace {
  const depths = inner.map(([u, v]) => under(vessel, face, u, v));
  const there = depths.filter((d) => d !== null);
  const all = both.flatMap(([u, v]) => {
    const d = under(vessel, face, u, v);
    return d === null ? [] : [{ mm: d - foot, at: [u, v] as const }];
  });
  const deepest = most(all);
  return {
    survives: inner.length === 0 ? 0 : there.length / inner.length,
    shows: there.length === 0 ? 0 : there.filter((d) => d <= foot + 1e-9).length / there.length,
    missing: deepest && deepest.mm > 1e-6 ? deepest : null,
  };
}

function shiftOf(
  vessel: Vessel,
  through: readonly { readonly at: Place; readonly a: number; readonly b: number }[],
): FigureShown['shift'] {
  if (through.length === 0) return null;
  const near = vessel.setup.face === 'outside';
  let rise: AtPlace = { mm: 0, at: [0, 0] };
  let [narrowest, widest] = [Number.POSITIVE_INFINITY, 0];
  for (const { at, a, b } of through) {
    const on = (depth: number) => toVessel(vessel.stave, fromFace(vessel, at[0], at[1], depth));
    const [outer, within] = near ? [on(a), on(b)] : [on(b), on(a)];
    const up = within.z - outer.z;
    if (Math.abs(up) >= Math.abs(rise.mm)) rise = { mm: up, at };
    // Round a level wall x is r sin(angle): a millimetre across the stave is 1 / cos(angle) along it.
    const ratio = cos(outer.angle) / cos(within.angle);
    narrowest = Math.min(narrowest, ratio);
    widest = Math.max(widest, ratio);
  }
  return { rise, narrowest, widest };
}

type Place = readonly [number, number];

/** Points within a figure on an even grid; at least a few hundred however small it is. */
function samplesOf(figure: Region): Place[] {
  if (figure.contours.length === 0) return [];
  const box = bounds(figure.contours);
  const step = Math.sqrt(Math.max(area(figure), 1e-6) / SAMPLES);
  const out: Place[] = [];
  for (let v = box.minY + step / 2; v < box.maxY; v += step)
    for (let u = box.minX + step / 2; u < box.maxX; u += step) if (contains(figure, u, v)) out.push([u, v]);
  return out;
}

function edgeOf(figure: Region): Place[] {
  return figure.contours.flatMap((c) => flatten(c, CHORD));
}

function most(all: readonly AtPlace[]): AtPlace | null {
  return all.reduce<AtPlace | null>((best, one) => (best && best.mm >= one.mm ? best : one), null);
}
