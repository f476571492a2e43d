import { union } from '../../geometry/boolean.js';
import type { Edge } from '../../geometry/edge.js';
import { type Box, bounds, edgeBox, flatten, type Region } from '../../geometry/region.js';
import { placedRegion } from '../../geometry/transform.js';
import type { Font } from './open-font.js';
import type { Cluster } from './set.js';

/** A cluster's ink about the middle of its advance on the base line, mm; what is measured and drawn. */
export interface Shape {
  readonly key: string;
  readonly region: Region;
  /** What must keep clear of others: the region, or what the cutter pass will make of it. */
  readonly kept: Region;
  readonly edges: readonly Edge[];
  readonly boxes: readonly Box[];
  readonly box: Box;
  /** No point lies further from the origin along either axis, however the shape is turned, mm. */
  readonly size: number;
  /** Points along the kept region's boundary, whose chords stray from it by under a hundredth, mm. */
  readonly points: readonly (readonly [number, number])[];
}

/** Gives the shape of a cluster; null for one without ink. Each distinct glyph is drawn, and each cluster put together, once. */
export type Shapes = (cluster: Cluster) => Shape | null;

const CHORD = 0.005;

/**
 * @param scale mm a font unit
 * @param kept what the cutter pass makes of a letter: only that counts when letters are kept apart
 */
export function shapesAt(font: Font, scale: number, kept: (region: Region) => Region): Shapes {
  const glyphs = new Map<string, Region>();
  const shapes = new Map<string, Shape | null>();
  const glyph = (file: number, id: number): Region => {
    const key = `${file}.${id}`;
    const known = glyphs.get(key) ?? font.region(file, id, scale);
    glyphs.set(key, known);
    return known;
  };
  return ({ key: own, parts, advance }) => {
    // The shape lies about the middle of the advance, which kerning changes.
    const key = `${own} ${advance}`;
    const known = shapes.get(key);
    if (known !== undefined) return known;
    const inked = parts
      .map((p) => placedRegion(glyph(p.file, p.glyph), (p.dx - advance / 2) * scale, p.dy * scale))
      .filter((r) => r.contours.length > 0);
    const shape =
      inked.length === 0 ? null : shapeOf(key, inked.length === 1 ? inked[0]! : union(inked), kept);
    shapes.set(key, shape);
    return shape;
  };
}

/** The same letters `k` times as large, without drawing them anew: true enough to find a height by. */
export function scaledShapes(shapes: Shapes, k: number, kept: (region: Region) => Region): Shapes {
  const known = new Map<Shape, Shape>();
  return (cluster) => {
    const whole = shapes(cluster);
    if (!whole) return null;
    const shape = known.get(whole) ?? shapeOf(whole.key, placedRegion(whole.region, 0, 0, 0, k), kept);
    known.set(whole, shape);
    return shape;
  };
}

function shapeOf(key: string, region: Region, keep: (region: Region) => Region): Shape {
  const kept = keep(region);
  const edges = kept.contours.flat();
  const box = bounds(kept.contours);
  const x = Math.max(-box.minX, box.maxX);
  const y = Math.max(-box.minY, box.maxY);
  return {
    key,
    region,
    kept,
    edges,
    boxes: edges.map(edgeBox),
    box,
    size: Math.sqrt(x * x + y * y),
    points: kept.contours.flatMap((c) => flatten(c, CHORD)),
  };
}
