import { describe, expect, it } from 'vitest';
import { drawing } from '../../../src/generators/drawing/drawing.js';
import { ownSize, scaleRemarks } from '../../../src/generators/drawing/scale.js';
import { recorder } from '../../../src/generators/recorder.js';
import type { Remark } from '../../../src/geometry/artwork.js';
import type { Values } from '../../../src/schema/parameter.js';
import { parseLength } from '../../../src/schema/units.js';
import { CUT, outlineWith } from '../../support/artwork.js';
import { read } from './support.js';

/*
 * Sizes: 1 in = 2.54 cm = 72 pt = 96 px (CSS Values and Units 3, section 6.2); 90 to the inch was the pixel of an older
 * editor's files; of DXF $INSUNITS 0 is "unitless", 1 inches, 4 millimetres. All from memory.
 */

/** A mm-square of `side` in a file with this start tag. */
const square = (tag: string, side: number): string =>
  `<svg ${tag}><rect width="${side}" height="${side / 2}"/></svg>`;

function remarks(text: string, values: Values = {}): readonly Remark[] {
  const defaults = Object.fromEntries(drawing.parameters.map((p) => [p.name, p.default] as const));
  const pen = recorder();
  const assets = { drawings: new Map([['a.svg', text]]), fonts: new Map() };
  const largest = outlineWith('rectangle', { width: 3000, height: 3000, margin: 0 });
  drawing.draw({ ...defaults, file: 'a.svg', ...values }, largest, pen, assets, CUT);
  return pen.artwork().remarks ?? [];
}

/** The width that a remark tells to give, mm. */
function advised({ text }: Remark): number {
  return Number(parseLength(/"([^"]*)"/.exec(text)![1]!));
}

describe('the unit that a file names', () => {
  it.each([
    ['width="100mm" height="50mm"', 'mm'],
    ['width="4in"', 'mm'],
    ['height="288pt"', 'mm'],
    ['width="10cm" height="100%"', 'mm'],
    ['width="100" height="50"', null],
    ['width="100px" height="50px"', null],
    ['width="100%" viewBox="0 0 9 9"', null],
    ['viewBox="0 0 9 9"', null],
  ])('of %s is %s', (tag, unit) => {
    expect(read(square(tag, 9)).unit).toBe(unit);
  });
});

describe('a file that names no unit', () => {
  it('gets a warning with the sizes that it would have as mm, as inches and at 72, 90 and 96 to the inch', () => {
    const [only, ...more] = remarks(square('viewBox="0 0 144 144"', 144));
    expect(more).toEqual([]);
    expect(only).toMatchObject({ code: 'drawing-no-unit', severity: 'warn', at: null });
    const near = (n: number): unknown => expect.closeTo(n, 6);
    expect(only!.numbers).toEqual({
      width: near(38.1),
      height: near(19.05),
      asMm: near(144),
      asInches: near(3657.6),
      at72: near(50.8),
      at90: near(40.64),
      at96: near(38.1),
    });
    expect(only!.text).toMatch(/in mm it should be 144 mm wide, in inches 3657\.6 mm, at 72 .* 50\.8 mm/);
    expect(advised(only!)).toBe(144);
  });

  it('is told a size that a piece may have, where the first is none', () => {
    // 2 units are no 2 mm, but 2 in; 3,000 are no 3 m, but 1,058 mm at 72 is too large as well, 847 mm at 90 is not.
    expect(advised(remarks(square('viewBox="0 0 2 2"', 2))[0]!)).toBe(50.8);
    expect(advised(remarks(square('viewBox="0 0 3000 3000"', 3000))[0]!)).toBeCloseTo((3000 * 25.4) / 90, 2);
  });

  it('is taken in mm where it is a DXF file', () => {
    const figures = read(square('viewBox="0 0 144 144"', 144)).figures(1);
    const dxf = ownSize(null, 'lid.DXF', figures);
    expect(scaleRemarks(dxf)[0]!.numbers.asMm).toBeCloseTo(38.1, 6);
    expect(scaleRemarks(ownSize('in', 'lid.dxf', figures))).toEqual([]);
  });

  it('is told nothing when the recipe sets the size', () => {
    const text = square('viewBox="0 0 144 144"', 144);
    expect(remarks(text, { width: 60 })).toEqual([]);
    expect(remarks(text, { fit: true })).toEqual([]);
  });
});

describe('a size that is implausible', () => {
  const said = (width: number, height = width / 2): Remark[] =>
    scaleRemarks({ width, height, named: true, taken: 1 });

  it.each([
    // A lid of 120 mm whose mm were read as inches, and one drawn in inches that were read as mm.
    [120 * 25.4, 1 / 25.4, 120],
    [120 / 25.4, 25.4, 120],
  ])('of %d mm is told with the likeliest factor and the width to give', (width, factor, meant) => {
    const [only] = said(width);
    expect(only).toMatchObject({ code: 'drawing-scale', severity: 'warn' });
    expect(only!.numbers.factor).toBeCloseTo(factor, 9);
    expect(only!.numbers.likely).toBeCloseTo(meant, 9);
    expect(advised(only!)).toBe(meant);
  });

  it.each([
    // What 96, 72 and 90 units to the inch were read as mm, and the other way round; and one number of them as another.
    [400 * (96 / 25.4), /units of 96 to the inch read as mm \(off by 1\/3\.78: 400 mm wide\)/],
    [400 * (72 / 25.4), /units of 72 to the inch read as mm \(off by 1\/2\.835: 400 mm wide\)/],
    [400 * (90 / 25.4), /units of 90 to the inch read as mm \(off by 1\/3\.543: 400 mm wide\)/],
    [15 * (25.4 / 96), /mm read as units of 96 to the inch \(off by 3\.78: 15 mm wide\)/],
    [12 * (25.4 / 72), /mm read as units of 72 to the inch \(off by 2\.835: 12 mm wide\)/],
    [6 * (72 / 96), /units of 72 to the inch read as 96 \(off by 1\.333: 6 mm wide\)/],
    [900 * (96 / 72), /units of 96 to the inch read as 72 \(off by 1\/1\.333: 900 mm wide\)/],
    [5.25 * (90 / 96), /units of 90 to the inch read as 96 \(off by 1\.067: 5\.25 mm wide\)/],
  ])('of %d mm is told with every other mix-up that explains it too', (width, words) => {
    expect(said(width)[0]!.text).toMatch(words);
  });

  it.each([38_100, 0.06])('of %d mm that no mix-up explains is told without a factor', (width) => {
    const [only] = said(width);
    expect(only!.numbers).toEqual({ width, height: width / 2 });
    expect(only!.text).toMatch(/no usual mix-up .* pattern\.width/);
  });

  it('is judged by the longer side, 5 mm and 1000 mm being plausible', () => {
    expect(said(5)).toEqual([]);
    expect(said(1000)).toEqual([]);
    expect(said(2, 5)).toEqual([]);
    expect(said(4.99)).toHaveLength(1);
    expect(said(2, 1000.1)).toHaveLength(1);
    expect(said(1000.1)[0]!.text).toMatch(/over 1000 mm across.*off by 1\/25\.4/);
  });

  it('is found in a drawing, with its unit', () => {
    const [only] = remarks(square('width="2540mm" height="2540mm" viewBox="0 0 100 100"', 100));
    expect(only).toMatchObject({ code: 'drawing-scale', numbers: { factor: 1 / 25.4 } });
    expect(advised(only!)).toBeCloseTo(100, 2);
    expect(remarks(square('width="100mm" height="100mm" viewBox="0 0 100 100"', 100))).toEqual([]);
  });
});
