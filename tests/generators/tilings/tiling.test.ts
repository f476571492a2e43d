import { describe, expect, it } from 'vitest';
import { uniformTilings } from '../../../src/generators/tilings/uniform.js';
import { area, perimeter } from '../../../src/geometry/region.js';
import { BadInput, Refusal } from '../../../src/schema/fault.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';

const outlines = [
  outlineWith('circle', { diameter: 130 }),
  outlineWith('rectangle', { width: 140, height: 90, corner: 15, margin: 7 }),
  outlineWith('stave', { bottom: 80, top: 120, height: 110, margin: 5 }),
  outlineWith('ring', { diameter: 170, bore: 80, margin: 4 }),
];

describe('tiling', () => {
  const ways: Values[] = [
    { plug: 'straps', fill: 'clip', frame: true },
    { plug: 'straps', fill: 'clip', frame: false },
    { plug: 'straps', fill: 'whole' },
    { plug: 'tiles', fill: 'clip' },
    { plug: 'tiles', fill: 'whole' },
  ];
  for (const { name } of uniformTilings)
    for (const way of ways)
      it(`${name} ${Object.values(way).join(' ')}: sound, inside the margin, the same every time`, () => {
        outlines.forEach((outline, i) => {
          const values = {
            tiling: name,
            edge: name.startsWith('3^') ? 22 : 12,
            strap: 3,
            wall: 3,
            turn: 0.1 * i,
            ...way,
          };
          const art = artworkWith('tiling', values, outline);
          expect(art.pieces.length).toBeGreaterThan(way.plug === 'tiles' ? 3 : 0);
          for (const p of art.pieces) {
            expectSound(p.region);
            expect(area(p.region)).toBeGreaterThan(0);
            expect(pokesOut(p.region, outline.inner)).toBeLessThan(1e-5);
          }
          expect(artworkWith('tiling', values, outline)).toEqual(art);
        });
      });

  it('straps with a frame have the area and the edge length of the closed form', () => {
    // 4^4, five by three squares of edge 20 that fill the field to the middle of the frame: openings of 16.
    const field = outlineWith('rectangle', { width: 104, height: 64, margin: 0 });
    const { pieces } = artworkWith('tiling', { tiling: '4^4', edge: 20, strap: 4, turn: 0 }, field);
    expect(pieces.map((p) => p.name)).toEqual(['straps']);
    expect(area(pieces[0].region)).toBeCloseTo(104 * 64 - 15 * 256, 6);
    expect(perimeter(pieces[0].region)).toBeCloseTo(2 * (104 + 64) + 15 * 64, 6);
  });

  it('whole straps run round the whole tiles with round outer corners', () => {
    const field = outlineWith('rectangle', { width: 105, height: 65, margin: 0 });
    const { pieces } = artworkWith('tiling', { tiling: '4^4', edge: 20, strap: 4, fill: 'whole' }, field);
    // Outer shape 104 x 64 with corners of radius 2 (Steiner's formula: A + P r + pi r^2).
    expect(area(pieces[0].region)).toBeCloseTo(100 * 60 + 2 * 160 * 2 + Math.PI * 4 - 15 * 256, 6);
    const less = artworkWith(
      'tiling',
      { tiling: '4^4', edge: 20, strap: 4, fill: 'whole' },
      outlineWith('rectangle', { width: 103.9, height: 65, margin: 0 }),
    );
    expect(less.pieces[0].region.contours).toHaveLength(1 + 9);
  });

  it('straps without a frame end at the outline', () => {
    // Two strips of 4 mm across 60 and four across 40 less what they share; the grid's lines at 20 k + 10.
    const field = outlineWith('rectangle', { width: 60, height: 40, margin: 0 });
    const { pieces } = artworkWith('tiling', { tiling: '4^4', edge: 20, strap: 4, frame: false }, field);
    expect(area(pieces.at(0)!.region)).toBeCloseTo(
      2 * 4 * 60 + (2 * 4 + 2 * 2) * 40 - (2 * 4 + 2 * 2) * 8,
      6,
    );
  });

  it('tiles keep the wall between them and carry the names of their kinds', () => {
    const { pieces } = artworkWith(
      'tiling',
      { plug: 'tiles', edge: 14, wall: 3.7, fill: 'whole' },
      outlines[1],
    );
    const names = pieces.map((p) => p.name);
    expect(names).toContain('octagon 0,0');
    expect(names).toContain('square 0,0');
    const octagon = pieces.find((p) => p.name === 'octagon 0,0')!.region;
    const square = pieces.find((p) => p.name === 'square 0,0')!.region;
    expect(distanceBetween(octagon, square)).toBeCloseTo(3.7, 9);
    // Octagon of apothem a: 8 a^2 tan(22.5 degrees); the octagon's own apothem is edge (1 + sqrt 2) / 2.
    const apothem = (14 * (1 + Math.SQRT2)) / 2 - 1.85;
    expect(area(octagon)).toBeCloseTo(8 * apothem ** 2 * Math.tan(Math.PI / 8), 8);
  });

  it('draws the chosen kind of tile only', () => {
    const { pieces } = artworkWith(
      'tiling',
      { tiling: '3.6.3.6', plug: 'tiles', tiles: '6', edge: 12 },
      outlines[0],
    );
    expect(pieces.every((p) => p.name.startsWith('hexagon'))).toBe(true);
  });

  it('keeps to a band across the middle', () => {
    const { pieces } = artworkWith('tiling', { band: 40, edge: 12 }, outlines[1]);
    const ys = pieces[0].region.contours.flat().map((e) => e.y0);
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([-20, 20]);
  });

  it('says in one line what is wrong and what would do', () => {
    const draw = (values: Values): unknown => artworkWith('tiling', values, outlines[1]);
    expect(() => draw({ tiling: '6^3', plug: 'tiles', tiles: '8' })).toThrow(
      new BadInput([{ where: 'pattern.tiles', message: 'this tiling has none of kind 8; use all or 6' }]),
    );
    expect(() => draw({ tiling: '4^4', edge: 10, strap: 10 })).toThrow(
      'pattern.strap: 10 mm closes every tile; make it less than 10 mm',
    );
    expect(() => draw({ tiling: '4^4', plug: 'tiles', edge: 10, wall: 12 })).toThrow(
      'pattern.wall: 12 mm leaves nothing of the tiles; make it less than 10 mm',
    );
    expect(() => draw({ edge: 300, fill: 'whole' })).toThrow(Refusal);
    expect(() => draw({ edge: 300, fill: 'whole' })).toThrow(
      /^pattern.edge: no whole tile of edge 300 mm fits/,
    );
  });
});
