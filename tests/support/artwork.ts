import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect } from 'vitest';
import type { Assets, Cut } from '../../src/generators/generator.js';
import { findGenerator } from '../../src/generators/index.js';
import { makeShaper } from '../../src/generators/lettering/shaper.js';
import { recorder } from '../../src/generators/recorder.js';
import type { Artwork } from '../../src/geometry/artwork.js';
import { contains, distanceToBoundary, flatten, type Region } from '../../src/geometry/region.js';
import { makeOutline, outlineShapes } from '../../src/outline/index.js';
import type { Outline } from '../../src/outline/outline.js';
import type { Parameter, Values } from '../../src/schema/parameter.js';

/** The bundled font's bytes, straight from its package. */
export const fontBytes: Buffer = readFileSync(
  createRequire(import.meta.url).resolve(
    '@expo-google-fonts/varela-round/400Regular/VarelaRound_400Regular.ttf',
  ),
);

/** The drawings that ship, as the recipes beside them name them; the generators name one at their defaults. */
const drawingFolder = new URL('../../patterns/drawings/', import.meta.url);
const drawings = readdirSync(drawingFolder).map(
  (file) => [`drawings/${file}`, readFileSync(new URL(file, drawingFolder), 'utf8')] as const,
);

export const assets: Assets = {
  drawings: new Map(drawings),
  fonts: new Map([['varela-round', new Uint8Array(fontBytes).buffer as ArrayBuffer]]),
  shaper: makeShaper(readFileSync(createRequire(import.meta.url).resolve('harfbuzzjs/dist/harfbuzz.wasm'))),
};

/** A 1/8 in cutter with a tenth of its diameter as ease, mm. */
export const CUT: Cut = { r: 1.905, widen: false };

function withDefaults(parameters: readonly Parameter[], given: Values): Values {
  const values: Record<string, number | string | boolean> = {};
  for (const p of parameters) values[p.name] = p.kind === 'angle' ? (p.default / 180) * Math.PI : p.default;
  for (const name of Object.keys(given)) if (!(name in values)) throw new Error(`no parameter ${name}`);
  return { ...values, ...given };
}

/** An outline with the shape's defaults under the given values (mm, radians). */
export function outlineWith(shape: string, given: Values = {}): Outline {
  return makeOutline(shape, withDefaults(outlineShapes.find((s) => s.name === shape)!.parameters, given));
}

/** What a generator draws with its defaults under the given values (mm, radians). */
export function artworkWith(name: string, given: Values, outline: Outline): Artwork {
  const generator = findGenerator(name)!;
  const pen = recorder();
  generator.draw(withDefaults(generator.parameters, given), outline, pen, assets, CUT);
  return pen.artwork();
}

/** Every contour is closed and none crosses itself or another of its region. */
export function expectSound(region: Region): void {
  const sides: [number, number, number, number][] = [];
  for (const c of region.contours) {
    c.forEach((e, i) => {
      const next = c[(i + 1) % c.length];
      expect([e.x1, e.y1]).toEqual([next.x0, next.y0]);
    });
    const points = flatten(c, 0.01);
    points.forEach(([x, y], i) => {
      const [u, v] = points[(i + 1) % points.length];
      sides.push([x, y, u, v]);
    });
  }
  const crossed: unknown[] = [];
  for (let i = 0; i < sides.length; i++)
    for (let j = i + 1; j < sides.length; j++)
      if (cross(sides[i], sides[j])) crossed.push([sides[i], sides[j]]);
  expect(crossed).toEqual([]);
}

function cross(a: readonly number[], b: readonly number[]): boolean {
  if (Math.max(a[0], a[2]) < Math.min(b[0], b[2]) || Math.max(b[0], b[2]) < Math.min(a[0], a[2]))
    return false;
  if (Math.max(a[1], a[3]) < Math.min(b[1], b[3]) || Math.max(b[1], b[3]) < Math.min(a[1], a[3]))
    return false;
  const side = (p: readonly number[], x: number, y: number): number =>
    (p[2] - p[0]) * (y - p[1]) - (p[3] - p[1]) * (x - p[0]);
  const apart = 1e-7;
  const s = [side(a, b[0], b[1]), side(a, b[2], b[3]), side(b, a[0], a[1]), side(b, a[2], a[3])];
  return (
    ((s[0] > apart && s[1] < -apart) || (s[0] < -apart && s[1] > apart)) &&
    ((s[2] > apart && s[3] < -apart) || (s[2] < -apart && s[3] > apart))
  );
}

/** Largest distance by which points of a region lie outside another, mm. */
export function pokesOut(region: Region, field: Region): number {
  let worst = 0;
  for (const c of region.contours)
    for (const [x, y] of flatten(c, 0.01))
      if (!contains(field, x, y)) worst = Math.max(worst, distanceToBoundary(field, x, y));
  return worst;
}

/** Smallest distance between two regions that do not meet, mm. */
export function distanceBetween(a: Region, b: Region): number {
  let best = Number.POSITIVE_INFINITY;
  for (const [p, q] of [
    [a, b],
    [b, a],
  ])
    for (const c of p.contours)
      for (const [x, y] of flatten(c, 0.0005)) best = Math.min(best, distanceToBoundary(q, x, y));
  return best;
}
