import { expect, it } from 'vitest';
import { contains } from '../../../src/geometry/region.js';
import { artworkWith, outlineWith } from '../../support/artwork.js';

it('blocks that hang from a line have four corners alike', () => {
  const outline = outlineWith('rectangle', { width: 170, height: 110, margin: 8 });
  const { pieces } = artworkWith('dentil', { back: 4.4, hang: true }, outline);
  expect(pieces).toHaveLength(1);
  const { region } = pieces[0];
  // Mirrored left to right and top to bottom, the figure lies on itself.
  let inside = 0;
  for (let x = 0.317; x < 80; x += 1.7131)
    for (let y = 0.291; y < 50; y += 1.7177) {
      const here = contains(region, x, y);
      if (here) inside++;
      expect([contains(region, -x, y), contains(region, x, -y), contains(region, -x, -y)]).toEqual([
        here,
        here,
        here,
      ]);
    }
  expect(inside).toBeGreaterThan(50);
});

it('bands with square corners are refused on other polygons, and say where they go', () => {
  const hexagon = outlineWith('polygon', { sides: 6, across: 150, margin: 6 });
  const square = outlineWith('polygon', { sides: 4, across: 150, margin: 6 });
  for (const name of ['meander', 'dentil']) {
    expect(() => artworkWith(name, {}, hexagon)).toThrow(/turns square corners only; use it on a rectangle/);
    expect(() => artworkWith(name, {}, square)).not.toThrow();
  }
});
