import type { Pair } from '../../../fit/pair.js';
import { intersect, subtract } from '../../../geometry/boolean.js';
import { crossings } from '../../../geometry/crossings.js';
import { EdgesIndex } from '../../../geometry/edges-index.js';
import { movedLeft } from '../../../geometry/inset.js';
import { offset } from '../../../geometry/offset.js';
import { area, type Contour, contains, type Region, reversedContour } from '../../../geometry/region.js';
import { mirrorX } from '../../../geometry/transform.js';
import type { Outline } from '../../../outline/outline.js';
import { cornerRadius, type Recipe } from '../../../recipe/recipe.js';
import { type Sweep, sweepBeside } from './sweep.js';

export type Part = 'pocket' | 'plug';

/** What a cutter gets to of the wood that a part wants taken away. Regions lie as the pocket does. */
export interface Reach {
  /** The pocket itself; or the face less the plug. */
  readonly waste: Region;
  /** All that the cutter can sweep and stay the allowance off the walls. */
  readonly reached: Region;
  /** What stands after that besides the allowance. */
  readonly left: Region;
  readonly areas: ReachAreas;
  /** Reached, of all that lies further from the walls than the allowance; 1 where there is nothing to cut at all. */
  readonly share: number;
}

/** mm2. */
export interface ReachAreas {
  readonly waste: number;
  readonly reached: number;
  readonly left: number;
  /** All that the cutter that finishes has to take: `left`, and the allowance along the walls. */
  readonly finishing: number;
}

interface Memory {
  readonly sweeps: Map<string, Sweep>;
  readonly reaches: Map<string, Reach>;
  back: Region | null;
}

/** Findings, table and sheet all ask; the answer for one drawing is one. */
const known = new WeakMap<Region, Memory>();

function memory(region: Region): Memory {
  let m = known.get(region);
  if (!m) {
    m = { sweeps: new Map(), reaches: new Map(), back: null };
    known.set(region, m);
  }
  return m;
}

function once<T>(all: Map<string, T>, key: string, make: () => T): T {
  let found = all.get(key);
  if (found === undefined) {
    found = make();
    all.set(key, found);
  }
  return found;
}

/** A part as the pocket lies: a mirrored plug turned back. */
export function laid(pair: Pair, part: Part): Region {
  if (part === 'pocket') return pair.pocket;
  if (!pair.mirrored) return pair.plug;
  const m = memory(pair.plug);
  m.back ??= mirrorX(pair.plug);
  return m.back;
}

/** The cutter's sweep beside a part's walls, whatever the face: beside the plug it may leave the face sideways. */
export function sweepOf(pair: Pair, part: Part, radius: number, allowance: number): Sweep {
  const { contours } = laid(pair, part);
  const { sweeps } = memory(laid(pair, part));
  return once(sweeps, `${part} ${radius} ${allowance}`, () =>
    sweepBeside(part === 'pocket' ? contours : contours.map(reversedContour), radius, allowance),
  );
}

/**
 * What a cutter of a radius gets to of the waste of one part, with an allowance left on its walls (mm). Regions are
 * made when they are asked for; shares and areas alone are cheap. Throws Undecided where the kernel finds no
 * consistent boundary; not known to happen on sound parts.
 */
export function reachOf(
  recipe: Pick<Recipe, 'cutter'>,
  outline: Outline,
  pair: Pair,
  part: Part,
  radius: number,
  allowance: number,
): Reach {
  const { reaches } = memory(laid(pair, part));
  return once(reaches, `${part} ${radius} ${allowance}`, () => {
    const sweep = sweepOf(pair, part, radius, allowance);
    // Walls made for the cutter turn no more tightly towards the waste than its corner radius: then nothing collides.
    const collides = allowance >= cornerRadius(recipe.cutter);
    const region = laid(pair, part);
    if (part === 'pocket') {
      return pocketReach(region, sweep, collides ? offset(region, -allowance) : parallel(region, allowance));
    }
    return plugReach(
      outline,
      region,
      sweep,
      collides ? offset(region, allowance) : parallel(region, -allowance),
    );
  });
}

/** Every edge moved to its left; of a region whose edges then neither meet nor vanish. */
function parallel(region: Region, d: number): Region {
  if (d === 0) return region;
  const contours: Contour[] = [];
  for (const c of region.contours) {
    const moved = c.flatMap((e) => movedLeft(e, d) ?? []);
    if (moved.length < c.length) return offset(region, -d);
    contours.push(moved);
  }
  return { contours };
}

function pocketReach(pocket: Region, { edge, left }: Sweep, inner: Region): Reach {
  const reached = { contours: edge };
  return reachFrom({
    waste: () => pocket,
    reached: () => reached,
    left: () => left ?? subtract(inner, reached),
    areas: areasOf(area(pocket), area(inner), area(reached)),
  });
}

function plugReach({ face }: Outline, plug: Region, { edge, left }: Sweep, outer: Region): Reach {
  // All that is not reached, the plug in it. What of it lies on the face counts.
  const closed = { contours: edge.map(reversedContour) };
  const onFace = (region: Region): Region => (within(region, face) ? region : intersect(region, face));
  const size = area(face);
  const less = (region: Region): number => size - area(onFace(region));
  return reachFrom({
    waste: () => subtract(face, plug),
    reached: () => subtract(face, closed),
    left: () => onFace(left ?? subtract(closed, outer)),
    areas: areasOf(less(plug), less(outer), less(closed)),
  });
}

/** From the areas of waste, of what of it is further from the walls than the allowance, and of what is reached. */
function areasOf(waste: number, inner: number, reached: number): ReachAreas {
  return { waste, reached, left: Math.max(0, inner - reached), finishing: waste - reached };
}

/** Areas under this are nothing, mm2. */
const NOTHING = 1e-9;

interface Asked {
  readonly waste: () => Region;
  readonly reached: () => Region;
  readonly left: () => Region;
  readonly areas: ReachAreas;
}

function reachFrom({ waste, reached, left, areas }: Asked): Reach {
  const wanted = areas.reached + areas.left;
  const made = new Map<string, Region>();
  return {
    get waste() {
      return once(made, 'waste', waste);
    },
    get reached() {
      return once(made, 'reached', reached);
    },
    get left() {
      return once(made, 'left', left);
    },
    areas,
    share: wanted > NOTHING ? areas.reached / wanted : areas.waste > NOTHING ? 0 : 1,
  };
}

/** Whether a region lies on the face as a whole: its boundaries do not cross, and each contour begins on the face. */
function within(region: Region, face: Region): boolean {
  const edges = region.contours.flat();
  const index = new EdgesIndex(edges);
  let met = false;
  for (const e of face.contours.flat())
    for (const j of index.around(e, 0))
      crossings(e, edges[j]!, () => {
        met = true;
      });
  return !met && region.contours.every((c) => contains(face, c[0]!.x0, c[0]!.y0));
}
