import type { Pair } from '../../../fit/pair.js';
import type { Edge } from '../../../geometry/edge.js';
import { nearestPoints } from '../../../geometry/nearest.js';
import {
  type Box,
  bounds,
  contains,
  distanceToBoundary,
  flatten,
  type Region,
} from '../../../geometry/region.js';
import { mirrorX } from '../../../geometry/transform.js';
import type { Outline } from '../../../outline/outline.js';
import { cutterRadius, type Recipe } from '../../../recipe/recipe.js';
import { type Cut, cutsOf, type NamedTool, type ToolName, toolsOf } from './cuts.js';

/**
 * What stands round the cutter, and what it meets. At full depth the underside of a collet is (stickout - depth) above
 * the face, that of a dust shoe (shoeAbove - depth); anything higher than that within its radius of the cutter's axis is
 * hit. Exact for a level machine; a nut is taken as a flat disc of its outside diameter.
 */
export type Round = 'collet' | 'shoe';

/** One cutter at the full depth of one cut. */
export interface Stand extends NamedTool {
  readonly cut: Cut;
  /** Underside of collet or shoe above the face, mm; negative: below it. */
  readonly above: number;
}

/** Room to leave over what must not be met, mm. Common practice, no source. */
export const AIR = 2;

/** Heights that are equal on paper may be off by a last digit. */
const EQUAL = 1e-9;

/** Every cutter at the full depth of every cut. */
export function standsOf(recipe: Recipe, pair: Pair, round: Round): readonly Stand[] {
  const { machine } = recipe;
  return toolsOf(recipe).flatMap(({ name, tool }) =>
    cutsOf(recipe, pair).map((cut) => ({
      name,
      tool,
      cut,
      above: (round === 'collet' ? tool.stickout : machine.shoeAbove) - cut.deep,
    })),
  );
}

/** Those whose collet or shoe is lower than `height` above the face, mm: as high as that is not met. */
export function lowerThan(stands: readonly Stand[], height: number): readonly Stand[] {
  return stands.filter((s) => s.above < height - EQUAL);
}

/** Radius of what stands round the cutter, mm; null: none. */
export function radiusOf({ machine }: Recipe, round: Round): number | null {
  if (round === 'collet') return machine.collet / 2;
  return machine.shoe === null ? null : machine.shoe / 2;
}

/** From the line to the cutter's axis, mm: the roughing cutter leaves the allowance. */
function toAxis(recipe: Recipe, name: ToolName): number {
  return name === 'cutter' || recipe.roughing === null
    ? cutterRadius(recipe.cutter)
    : recipe.roughing.diameter / 2 + recipe.passes.allowance;
}

/** A drawing in the pocket's coordinates: a mirrored plug turned back. */
function asSet(pair: Pair, side: Cut['side']): Region {
  if (side === 'pocket') return pair.pocket;
  return pair.mirrored ? mirrorX(pair.plug) : pair.plug;
}

/**
 * Box of the places the cutter's axis gets to, mm, piece's middle at (0, 0): in the pocket its own box less the cutter's
 * radius, round the plug grown by it. Exact for the finishing cutter, which gets to every wall; the roughing cutter
 * stays within it. Null where it fits nowhere, or nothing is drawn.
 */
export function axisBox(recipe: Recipe, pair: Pair, { name, cut }: Stand): Box | null {
  const drawing = pair[cut.side];
  if (drawing.contours.length === 0) return null;
  const box = boxOf(drawing);
  const out = toAxis(recipe, name) * (cut.side === 'pocket' ? -1 : 1);
  const turned = cut.side === 'plug' && pair.mirrored;
  const grown = {
    minX: (turned ? -box.maxX : box.minX) - out,
    maxX: (turned ? -box.minX : box.maxX) + out,
    minY: box.minY - out,
    maxY: box.maxY + out,
  };
  return grown.maxX < grown.minX || grown.maxY < grown.minY ? null : grown;
}

const boxes = new WeakMap<Region, Box>();

function boxOf(drawing: Region): Box {
  const known = boxes.get(drawing);
  if (known) return known;
  const box = bounds(drawing.contours);
  boxes.set(drawing, box);
  return box;
}

/** Least distances between the middles of neighbouring pieces in one stock, mm. */
export interface Pitch {
  readonly x: number;
  readonly y: number;
  /** What is lower than the neighbour; empty: nothing is, and the pieces' own width decides. */
  readonly met: readonly Stand[];
}

/** The pitch at which a cutter passes between neighbouring pieces, so that each can be cut out, mm. */
export function ownPitch({ cutter }: Recipe, { box }: Outline): { readonly x: number; readonly y: number } {
  const slot = 2 * cutterRadius(cutter);
  return { x: box.maxX - box.minX + slot, y: box.maxY - box.minY + slot };
}

/**
 * The least pitch along x and along y at which collet (or dust shoe) clears an uncut neighbour. The neighbour is taken
 * as wide as the outline's box, and as high above the face as `table.neighbours` says, or as high as the face.
 *
 * Where collet stays above it: box + cutter, so that each piece can be cut out. Else, on whichever side it is more,
 * the axis's furthest reach from the piece's middle + radius of the collet + half the box.
 */
export function leastPitch(recipe: Recipe, outline: Outline, pair: Pair, round: Round = 'collet'): Pitch {
  const { minX, maxX, minY, maxY } = outline.box;
  const width = maxX - minX;
  const height = maxY - minY;
  let { x, y } = ownPitch(recipe, outline);
  const radius = radiusOf(recipe, round);
  if (radius === null) return { x, y, met: [] };
  const met: Stand[] = [];
  for (const stand of lowerThan(standsOf(recipe, pair, round), recipe.table.neighbours ?? 0)) {
    const axis = axisBox(recipe, pair, stand);
    if (!axis) continue;
    met.push(stand);
    x = Math.max(x, Math.max(axis.maxX, -axis.minX) + radius + width / 2);
    y = Math.max(y, Math.max(axis.maxY, -axis.minY) + radius + height / 2);
  }
  return { x, y, met };
}

/** How near a drawing comes to the outline. */
export interface ToEdge {
  /** mm; negative: so far it runs over the edge. */
  readonly distance: number;
  /** Where on the drawing, pocket's coordinates. */
  readonly at: readonly [number, number];
}

const near = new WeakMap<Region, ToEdge | null>();

/** How far points may lie from arcs that run over the edge, mm. */
const CHORD = 0.05;

/** Least distance of a drawing to the outline; null with nothing drawn. Beyond the edge it is found to 0.05 mm. */
export function toEdge({ face }: Outline, pair: Pair, side: Cut['side']): ToEdge | null {
  const key = pair[side];
  const known = near.get(key);
  if (known !== undefined) return known;
  const drawing = asSet(pair, side);
  const rim = face.contours.flat();
  const found = over(face, drawing) ?? nearestOf(drawing, rim);
  near.set(key, found);
  return found;
}

function nearestOf(drawing: Region, rim: readonly Edge[]): ToEdge | null {
  const nearest = nearestPoints(drawing.contours.flat(), rim);
  return nearest && { distance: nearest.distance, at: nearest.p };
}

function over(face: Region, drawing: Region): ToEdge | null {
  let worst: ToEdge | null = null;
  for (const c of drawing.contours)
    for (const [x, y] of flatten(c, CHORD)) {
      if (contains(face, x, y)) continue;
      const distance = -distanceToBoundary(face, x, y);
      if (!worst || distance < worst.distance) worst = { distance, at: [x, y] };
    }
  return worst;
}

/** What meets a clamp. */
export interface ClampHit extends Stand {
  /** Axis to outline, mm, at the nearest; negative: beyond it. */
  readonly toOutline: number;
  readonly at: readonly [number, number];
  /** How far clamps must stay away from the outline, mm. */
  readonly away: number;
  /** Walls nearer than this to the outline bring it there, mm. */
  readonly within: number;
}

/**
 * Cutters whose collet (or dust shoe) meets clamps of `table.clamps` above the face that stand `table.clampsAway` from
 * the outline, anywhere round it. In the pocket the axis is the cutter's radius further inside than the nearest wall,
 * round the plug that much nearer to the outline, so the distance is exact.
 */
export function clampHits(recipe: Recipe, outline: Outline, pair: Pair, round: Round): readonly ClampHit[] {
  const { clamps, clampsAway } = recipe.table;
  const radius = radiusOf(recipe, round);
  if (clamps === 0 || radius === null) return [];
  return lowerThan(standsOf(recipe, pair, round), clamps).flatMap((stand): ClampHit[] => {
    if (!axisBox(recipe, pair, stand)) return [];
    const edge = toEdge(outline, pair, stand.cut.side);
    if (!edge) return [];
    const inside = toAxis(recipe, stand.name) * (stand.cut.side === 'pocket' ? 1 : -1);
    const toOutline = edge.distance + inside;
    const away = radius - toOutline;
    if (clampsAway >= away - EQUAL) return [];
    return [{ ...stand, toOutline, at: edge.at, away, within: radius - inside - clampsAway }];
  });
}

/** The walls that bring a collet or shoe to the clamps, as open stretches in the pocket's coordinates. */
export function wallsNearClamps(outline: Outline, pair: Pair, hit: ClampHit): (readonly Edge[])[] {
  return edgesNearOutline(outline, asSet(pair, hit.cut.side), hit.within);
}

/** Height of the highest thing that stands above the face beside the piece, mm. */
export function obstacleHeight({ table }: Recipe): number {
  return Math.max(table.clamps, table.neighbours ?? 0);
}

/** Edges of a drawing that come nearer to the outline than this, mm. */
function edgesNearOutline({ face }: Outline, drawing: Region, within: number): (readonly Edge[])[] {
  const rim = face.contours.flat();
  return drawing.contours.flatMap((c) =>
    c
      .filter((e) => {
        const nearest = nearestPoints([e], rim);
        return (nearest && nearest.distance < within) || !contains(face, e.x0, e.y0);
      })
      .map((e) => [e]),
  );
}
