import { enforce } from '../cutter/enforce.js';
import type { Artwork, Piece } from '../geometry/artwork.js';
import { type Box, bounds } from '../geometry/region.js';
import { cornerRadius, type Recipe } from '../recipe/recipe.js';
import type { Parameter } from '../schema/parameter.js';
import { MM_PER_INCH, parseLength, toMillimetres, type Units } from '../schema/units.js';

/*
 * What commands share that make a recipe up: a rectangle that just holds the figure, and a depth that the cutter can
 * reach.
 */

/** Sides of the face that a figure is first drawn on, to see how much room it takes, mm: as large as one may be. */
export const WIDE = 3000;

/** Margin when none is given, and the skin. */
export const MARGIN: Readonly<Record<Units, number>> = { mm: 10, in: 0.375 };
export const SKIN: Readonly<Record<Units, number>> = { mm: 1.5, in: 0.0625 };

/** Sizes of the face go up to whole steps of this, depths down; the deepest that is chosen. */
const STEP: Readonly<Record<Units, number>> = { mm: 1, in: 1 / 16 };
const DEPTH_STEP: Readonly<Record<Units, number>> = { mm: 0.5, in: 1 / 16 };
const DEEPEST = 8;

/** Flute that must stand above the work; cutting edges are four diameters long unless the recipe says so. */
const CHIP_ROOM = 1;

/** What widened strokes reach into the margin by their own rounding, mm, is no reason for a larger face. */
const OVERHANG = 0.01;

/** A face for a figure, in the recipe's unit. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** The largest face, in the unit. */
export function widest(units: string): Room {
  const side = units === 'in' ? WIDE / MM_PER_INCH : WIDE;
  return { width: side, height: side };
}

/** The face that just holds something of these extents about its middle, mm, and a margin, in the recipe's unit. */
export function roomFor(x: number, y: number, margin: number, units: Units): Room {
  const side = (half: number): number => {
    const unit = units === 'in' ? MM_PER_INCH : 1;
    const steps = (2 * (half + margin)) / (STEP[units] * unit);
    return Math.ceil(steps - 1e-6) * STEP[units];
  };
  return { width: side(x), height: side(y) };
}

/** The face that just holds what was drawn about its middle, and what the cutter pass makes wider of it. */
export function roomOf(artwork: Artwork, recipe: Recipe): Room {
  const { thin, touch } = recipe.cutter;
  const drawn = boxOf(artwork.pieces);
  let all = drawn;
  if (thin === 'widen') {
    const r = cornerRadius(recipe.cutter);
    // Widened strokes reach beyond the drawn ones, by less than r.
    const outer = artwork.pieces.filter((p) => !isWithin(boxOf([p]), drawn, r));
    const { region } = enforce({ pieces: outer }, { r, thin, touch });
    all = region.contours.length > 0 ? around(drawn, within(bounds(region.contours), OVERHANG)) : drawn;
  }
  return roomFor(
    Math.max(-all.minX, all.maxX),
    Math.max(-all.minY, all.maxY),
    Number(recipe.outline.values.margin),
    recipe.units,
  );
}

/** The box of all pieces, mm. */
export function boxOf(pieces: readonly Piece[]): Box {
  return bounds(pieces.flatMap((p) => p.region.contours));
}

function isWithin(box: Box, room: Box, by: number): boolean {
  return (
    box.minX > room.minX + by &&
    box.maxX < room.maxX - by &&
    box.minY > room.minY + by &&
    box.maxY < room.maxY - by
  );
}

function within({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX + by, minY: minY + by, maxX: maxX - by, maxY: maxY - by };
}

function around(a: Box, b: Box): Box {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

/** What an option gives for a parameter, as a recipe takes it. */
export function optionValue(given: string | boolean, p: Parameter): string | number | boolean {
  if (typeof given === 'boolean' || p.kind === 'text' || p.kind === 'choice' || p.kind === 'flag')
    return given;
  return length(given);
}

/** A bare number is in the recipe's units. */
export function length(given: string): string | number {
  return /^-?(\d+(\.\d*)?|\.\d+)$/.test(given.trim()) ? Number(given) : given;
}

/** As deep as a cutter of usual length reaches with room for the chips; 1 mm when nothing better is known. */
export function depthFor(cutter: string, units: Units): number {
  const bare = length(cutter);
  const diameter = typeof bare === 'number' ? toMillimetres(bare, units) : parseLength(bare);
  const unit = units === 'in' ? MM_PER_INCH : 1;
  const most = typeof diameter === 'number' ? Math.min(DEEPEST, 4 * diameter - CHIP_ROOM) : 1;
  const step = DEPTH_STEP[units];
  return Math.max(1, Math.floor(most / (step * unit) + 1e-6)) * step;
}
