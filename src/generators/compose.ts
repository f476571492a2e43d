import type { Artwork, Piece, Remark } from '../geometry/artwork.js';
import { intersect, subtract, union } from '../geometry/boolean.js';
import { offset } from '../geometry/offset.js';
import { area, type Region } from '../geometry/region.js';
import { placedRegion } from '../geometry/transform.js';
import { makeOutline } from '../outline/index.js';
import type { Outline } from '../outline/outline.js';
import { BadInput, Refusal } from '../schema/fault.js';
import type { Assets, Cut } from './generator.js';
import { findGenerator } from './index.js';
import type { Layer } from './layer.js';
import { recorder } from './recorder.js';
import { mirrored, widened } from './run-on.js';
import { floor, mm } from './values.js';

/** Areas that differ by less differ by rounding, mm2. */
const OVER = 1e-3;

/** The piece's outline as its recipe gives it. */
export interface Face {
  readonly shape: string;
  readonly values: Readonly<Record<string, number | string | boolean>>;
  /** A stave whose pattern runs on over its joints. */
  readonly runsOn?: boolean;
}

/**
 * Draws the layers in order and puts them together. A pattern that is no list is one layer. Throws BadInput for values
 * at odds and Refusal for a layer that draws nothing or leaves nothing, naming the layer.
 */
export function compose(pattern: Layer | readonly Layer[], face: Face, assets: Assets, cut: Cut): Artwork {
  if (!face.runsOn || allBands(pattern)) return composed(pattern, face, assets, cut);
  return mirrored(composed(pattern, widened(face), assets, cut));
}

/** Bands meet their neighbours over a joint as they are drawn. */
export function allBands(pattern: Layer | readonly Layer[]): boolean {
  return [pattern].flat().every((l) => findGenerator(l.generator)?.family === 'bands');
}

function composed(pattern: Layer | readonly Layer[], face: Face, assets: Assets, cut: Cut): Artwork {
  const outline = makeOutline(face.shape, face.values);
  if (!isList(pattern)) return drawn(pattern, 'pattern', face, outline, assets, cut);
  const remarks: Remark[] = [];
  let pieces: readonly Piece[] = [];
  pattern.forEach((layer, k) => {
    const where = `pattern.${k}`;
    const own = drawn(layer, where, face, outline, assets, cut);
    remarks.push(...(own.remarks ?? []));
    pieces = together(pieces, named(own.pieces, k), layer);
    if (pieces.length === 0)
      throw new Refusal(
        'nothing-left',
        `${where}.combine: ${layer.combine} leaves nothing of the layers before; move or resize the layer`,
      );
  });
  return { pieces, remarks };
}

function isList(pattern: Layer | readonly Layer[]): pattern is readonly Layer[] {
  return Array.isArray(pattern);
}

function named(pieces: readonly Piece[], k: number): Piece[] {
  return pieces.map((p) => ({ name: `layer ${k}, ${p.name}`, region: p.region }));
}

function drawn(layer: Layer, where: string, face: Face, outline: Outline, assets: Assets, cut: Cut): Artwork {
  const generator = findGenerator(layer.generator);
  if (!generator) throw new Error(`no generator is called ${layer.generator}`);
  const room = roomOf(layer, where, face, outline);
  const pen = recorder();
  located(where, 'pattern', () => generator.draw(layer.values, room, pen, assets, cut));
  const { pieces, remarks = [] } = pen.artwork();
  if (pieces.length === 0)
    throw new Refusal(
      'nothing-drawn',
      `${where === 'pattern' ? 'the pattern' : where} is empty inside the outline; give it more room or a smaller margin`,
    );
  const { x, y } = layer.within;
  if (x === 0 && y === 0) return { pieces, remarks };
  return {
    pieces: pieces.map((p) => ({ name: p.name, region: placedRegion(p.region, x, y) })),
    remarks: remarks.map((r) => (r.at ? { ...r, at: [r.at[0] + x, r.at[1] + y] } : r)),
  };
}

/** The outline that the layer is drawn in, about its own middle. */
function roomOf({ within, combine }: Layer, where: string, face: Face, outline: Outline): Outline {
  const { shape, inset, x, y } = within;
  if (!shape && inset === 0) return outline;
  if (!shape) return insetOutline(face, inset, where);
  const moved = { ...shape.values, margin: Number(shape.values.margin) + inset };
  const room = located(`${where}.within`, 'outline', () => makeOutline(shape.shape, moved));
  // What is taken away may reach over the edge; what is let in may not.
  if (combine !== 'union') return room;
  const over = area(subtract(placedRegion(room.inner, x, y), outline.inner));
  if (over > OVER)
    throw new BadInput([
      {
        where: `${where}.within`,
        message: "reaches outside the outline's margin; make it smaller or move it",
      },
    ]);
  return room;
}

/** The piece's own outline moved in beyond its margin. */
function insetOutline({ shape, values }: Face, inset: number, where: string): Outline {
  const moved = (by: number): Outline =>
    makeOutline(shape, { ...values, margin: Number(values.margin) + by });
  try {
    return moved(inset);
  } catch (e) {
    if (!(e instanceof BadInput)) throw e;
    let most = 0;
    for (let step = inset / 2; step > 0.001; step /= 2) {
      try {
        moved(most + step);
        most += step;
      } catch {
        // Too far: half as far is tried next.
      }
    }
    const message = `${mm(inset)} leaves nothing of the outline inside its margin; use ${mm(floor(most))} at most`;
    throw new BadInput([{ where: `${where}.within.inset`, message }]);
  }
}

function together(
  before: readonly Piece[],
  layer: readonly Piece[],
  { combine, clear, nearby }: Layer,
): Piece[] {
  if (before.length === 0) return [...layer];
  if (combine === 'union' && clear === 0) return [...before, ...layer];
  const whole = union(layer.map((p) => p.region));
  const room = clear > 0 ? offset(whole, combine === 'intersect' ? -clear : clear) : whole;
  const kept = (p: Piece): Region => (combine === 'intersect' ? intersect : subtract)(p.region, room);
  const left = before.flatMap((p) => {
    const region = kept(p);
    const touched = area(p.region) - area(region) > OVER;
    return region.contours.length === 0 || (touched && nearby === 'drop') ? [] : [{ name: p.name, region }];
  });
  return combine === 'union' ? [...left, ...layer] : left;
}

/** Runs `work`; what it says of `from` is said of `where` instead, which is the path in the recipe. */
function located<T>(where: string, from: string, work: () => T): T {
  if (where === from) return work();
  const path = (text: string): string =>
    text === from || text.startsWith(`${from}.`) ? where + text.slice(from.length) : text;
  try {
    return work();
  } catch (e) {
    if (e instanceof BadInput) throw new BadInput(e.faults.map((f) => ({ ...f, where: path(f.where) })));
    if (e instanceof Refusal) throw new Refusal(e.code, path(e.message), e.at);
    throw e;
  }
}
