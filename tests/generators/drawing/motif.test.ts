import { describe, expect, it } from 'vitest';
import { drawingMotif } from '../../../src/generators/drawing/open.js';
import { findGenerator } from '../../../src/generators/index.js';
import { recorder } from '../../../src/generators/recorder.js';
import { motifNamed, unitMotif } from '../../../src/generators/symmetry/motifs.js';
import type { Artwork } from '../../../src/geometry/artwork.js';
import { bulge } from '../../../src/geometry/edge.js';
import { area, distanceToBoundary, flatten, type Region } from '../../../src/geometry/region.js';
import { placedRegion } from '../../../src/geometry/transform.js';
import type { Values } from '../../../src/schema/parameter.js';
import { CUT, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';
import { corpusText, svg } from './support.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

/** A region as the SVG file of a user, y down, in whole arcs and lines. */
function fileOf(region: Region): string {
  const big = placedRegion(region, 50, 50, 0, 90);
  const data = big.contours.map((c) => {
    const legs = c.map((e) => {
      const b = bulge(e);
      const end = `${e.x1} ${100 - e.y1}`;
      return b === 0 ? `L${end}` : `A${Math.abs(e.r)} ${Math.abs(e.r)} 0 0 ${b > 0 ? 0 : 1} ${end}`;
    });
    return `M${c[0].x0} ${100 - c[0].y0}${legs.join('')}Z`;
  });
  return svg(`<path d="${data.join('')}"/>`);
}

function pattern(generator: string, given: Values, file = ''): Artwork {
  const found = findGenerator(generator)!;
  const values = Object.fromEntries(
    found.parameters.map((p) => [p.name, p.kind === 'angle' ? (p.default / 180) * Math.PI : p.default]),
  );
  const pen = recorder();
  const drawings = new Map([['mine.svg', file]]);
  found.draw({ ...values, drawing: 'mine.svg', ...given }, lid, pen, { drawings, fonts: new Map() }, CUT);
  return pen.artwork();
}

function expectSame(a: Region, b: Region, within: number): void {
  for (const [p, q] of [
    [a, b],
    [b, a],
  ])
    for (const [x, y] of p.contours.flatMap((c) => flatten(c, 0.01)))
      expect(distanceToBoundary(q, x, y)).toBeLessThan(within);
}

const whole = ({ pieces }: Artwork): Region => ({ contours: pieces.flatMap((p) => p.region.contours) });

describe('a drawing as the motif of a pattern', () => {
  it.each(['leaf', 'hook', 'drop'])('of the shape of the built-in %s is that motif', (name) => {
    const drawings = new Map([['a.svg', fileOf(motifNamed(name))]]);
    const mine = unitMotif(drawingMotif({ drawings, fonts: new Map() }, 'a.svg', 'pattern.drawing'));
    expectSame(mine, motifNamed(name), 1e-5);
  });

  it.each([
    ['wallpaper', { group: 'p4g' }],
    ['wallpaper', { group: 'p31m', cell: 40, size: 12 }],
    ['frieze', { group: 'p11g' }],
    ['frieze', { group: 'p2', run: 'round' }],
  ])('makes the same %s, %o', (generator, given) => {
    const built = pattern(generator, { ...given, motif: 'leaf' });
    const mine = pattern(generator, { ...given, motif: 'drawing' }, fileOf(motifNamed('leaf')));
    expect(mine.pieces.length).toBe(built.pieces.length);
    expectSame(whole(mine), whole(built), 0.01);
  });

  it('may be in several parts, with holes', () => {
    const { pieces } = pattern('wallpaper', { motif: 'drawing', group: 'p2' }, corpusText('exported'));
    expect(pieces.length).toBeGreaterThan(3);
    for (const p of pieces) {
      expectSound(p.region);
      expect(area(p.region)).toBeGreaterThan(0);
      expect(pokesOut(p.region, lid.inner)).toBeLessThan(1e-5);
    }
  });

  it('is refused when it has too many edges to be compared with its copies', () => {
    const teeth = Array.from({ length: 800 }, (_, k) => `L${k / 10} ${k % 2}`).join('');
    expect(() => pattern('frieze', { motif: 'drawing' }, svg(`<path d="M0 9${teeth}L80 9z"/>`))).not.toThrow(
      /edges/,
    );
    const more = Array.from({ length: 1600 }, (_, k) => `L${k / 20} ${k % 2}`).join('');
    expect(() => pattern('frieze', { motif: 'drawing' }, svg(`<path d="M0 9${more}L80 9z"/>`))).toThrow(
      /^pattern\.drawing: "mine\.svg" has 160[0-9] edges, more than the 1500 that a motif may have; make it simpler/,
    );
  });

  it('is refused, with its parameter, when it was not loaded', () => {
    expect(() => pattern('frieze', { motif: 'drawing', drawing: 'gone.svg' })).toThrow(
      /^pattern\.drawing: "gone\.svg" was not loaded/,
    );
  });
});
