import { describe, expect, it } from 'vitest';
import { basketCell } from '../../../src/generators/tilings/basket-weave.js';
import { chevronCell } from '../../../src/generators/tilings/chevron.js';
import { brickCell, hexagonCell } from '../../../src/generators/tilings/courses.js';
import { herringboneCell } from '../../../src/generators/tilings/herringbone.js';
import { lay, type Periodic } from '../../../src/generators/tilings/lay.js';
import { rhombCell } from '../../../src/generators/tilings/rhombs.js';
import { blocks } from '../../../src/generators/tilings/tumbling-blocks.js';
import { area, bounds } from '../../../src/geometry/region.js';
import { BadInput, Refusal } from '../../../src/schema/fault.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, distanceBetween, expectSound, outlineWith } from '../../support/artwork.js';
import { angles, covering, gap, polygonArea } from './geometry.js';

const box = { minX: -30, minY: -30, maxX: 30, maxY: 30 };
const rad = Math.PI / 180;

/** Each cell with the area of one of its tiles by hand. */
const cells: [string, Periodic, number][] = [
  ['rhombs of 75 degrees', rhombCell(75 * rad, false), Math.sin(75 * rad)],
  ['rhombs of 140 degrees', rhombCell(140 * rad, false), Math.sin(140 * rad)],
  // Base 2 sin (a / 2) over two columns, height 2 cos (a / 2): sin a again, since the lattice is the same.
  ['half-drop', rhombCell(60 * rad, true), Math.sin(60 * rad)],
  ['bricks', brickCell(2, 0.5), 2],
  ['bricks in thirds', brickCell(2.6, 1 / 3), 2.6],
  ['bricks one over the other', brickCell(0.3, 0), 0.3],
  ['hexagons', hexagonCell(2 / Math.sqrt(3), 0.5, 1 / 3), 2 / Math.sqrt(3)],
  ['leaning hexagons', hexagonCell(1.7, 0.3, 0.8), 1.7],
  ['herringbone 2', herringboneCell(2), 2],
  ['herringbone 3.3', herringboneCell(3.3), 3.3],
  ['herringbone 10', herringboneCell(10), 10],
  ['basket 2', basketCell(2), 2],
  ['basket 3', basketCell(3), 3],
  // Length along the board times its width.
  ['chevron', chevronCell(45 * rad, 3.5), 3.5],
  ['flat chevron', chevronCell(10 * rad, 12), 12],
  ['steep chevron', chevronCell(70 * rad, 1), 1],
  ['blocks', blocks, Math.sin(60 * rad)],
];

describe('tilings by cells', () => {
  for (const [name, cell, tileArea] of cells) {
    it(`${name}: tiles of the right size cover the plane once`, () => {
      for (const t of cell.cell) expect(polygonArea(t.points)).toBeCloseTo(tileArea, 12);
      const [[ax, ay], [bx, by]] = cell.steps;
      expect(ax * by - ay * bx).toBeCloseTo(tileArea * cell.cell.length, 12);
      const edge = 8 / Math.sqrt(tileArea);
      for (const centre of ['tile', 'vertex', 'edge'] as const) {
        const tiles = lay(cell, { edge, turn: 0.7, centre }, box);
        expect(new Set(tiles.map((t) => t.name)).size).toBe(tiles.length);
        for (let x = -29.71; x < 30; x += 5.31)
          for (let y = -29.93; y < 30; y += 4.77) expect(covering(tiles, x, y)).toBe(1);
      }
    });
  }

  it('regular hexagons in courses are the tiling 6^3', () => {
    for (const { points } of hexagonCell(2 / Math.sqrt(3), 0.5, 1 / 3).cell) {
      for (const a of angles(points)) expect(a).toBeCloseTo(120, 9);
      points.forEach((p, i) => {
        expect(gap(p, points[(i + 1) % 6])).toBeCloseTo(2 / 3, 12);
      });
    }
  });

  it('bricks of one course stand over the joints of the other by the bond', () => {
    const xs = (kind: string, bond: number): number[] =>
      brickCell(2, bond)
        .cell.filter((t) => t.kind === kind)
        .map((t) => Math.min(...t.points.map((p) => p[0])));
    expect(xs('odd', 0.25)[0] - xs('even', 0.25)[0]).toBeCloseTo(0.5, 12);
  });

  it('a cube is three rhombs of 60 and 120 degrees round a corner', () => {
    for (const { points } of blocks.cell)
      expect(angles(points).map((a) => Math.round(a * 1e6) / 1e6)).toEqual([120, 60, 120, 60]);
  });
});

describe('generators of tiles', () => {
  const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

  it('a chequer is half of its squares, and none comes nearer to the next than its wall', () => {
    const { pieces } = artworkWith('chequer', { edge: 11, wall: 2 }, lid);
    // Eight by eight squares of 11 fill the field of 88: 32 dark ones, each 9 wide.
    expect(pieces).toHaveLength(32);
    for (const p of pieces) expect(area(p.region)).toBeCloseTo(81, 9);
    const gaps = pieces.slice(1).map((p) => distanceBetween(pieces[0].region, p.region));
    // Corner to corner: wall times sqrt 2.
    expect(Math.min(...gaps)).toBeCloseTo(2 * Math.SQRT2, 6);
  });

  it('straps with some tiles solid are the straps and those tiles', () => {
    const values = { edge: 11, strap: 3, centre: 'vertex' };
    const straps = artworkWith('chequer', { ...values, plug: 'straps', frame: false }, lid);
    const both = artworkWith('chequer', { ...values, plug: 'both', frame: false }, lid);
    expectSound(both.pieces[0].region);
    expect(area(both.pieces[0].region) - area(straps.pieces[0].region)).toBeCloseTo(32 * 64, 6);
    const whole = artworkWith('chequer', { ...values, plug: 'both', fill: 'whole', edge: 10 }, lid);
    const open = artworkWith('chequer', { ...values, plug: 'straps', fill: 'whole', edge: 10 }, lid);
    expect(area(whole.pieces[0].region) - area(open.pieces[0].region)).toBeCloseTo(32 * 49, 6);
  });

  it('leaves off what the edge cuts too narrow, and scraps', () => {
    // Bricks 20 by 10 with walls of 2 on a field 40 wide: the middle one whole, beside it 18 - 9 = 9 of each other.
    const field = outlineWith('rectangle', { width: 40, height: 10, margin: 0 });
    const widths = (values: Values): number[] =>
      artworkWith('courses', { plug: 'tiles', edge: 10, wall: 2, centre: 'tile', ...values }, field)
        .pieces.map((p) => bounds(p.region.contours))
        .map((b) => Math.round((b.maxX - b.minX) * 1e6) / 1e6)
        .sort((a, b) => a - b);
    expect(widths({ least: 0 })).toEqual([9, 9, 18]);
    expect(widths({ least: 7.9 })).toEqual([9, 9, 18]);
    expect(widths({ least: 8.1 })).toEqual([18]);
    // Half-bricks of 2.5 by 8, 14 % of a brick, are scraps.
    const narrow = outlineWith('rectangle', { width: 27, height: 10, margin: 0 });
    expect(
      artworkWith('courses', { plug: 'tiles', edge: 10, wall: 2, centre: 'tile', least: 1 }, narrow).pieces,
    ).toHaveLength(1);
  });

  it('tumbling blocks let in the faces asked for', () => {
    const kinds = (tiles: string): Set<string> =>
      new Set(artworkWith('tumbling-blocks', { tiles }, lid).pieces.map((p) => p.name.split(' ')[0]));
    expect(kinds('left')).toEqual(new Set(['left']));
    expect(kinds('sides')).toEqual(new Set(['left', 'right']));
    expect(kinds('all')).toEqual(new Set(['left', 'right', 'top']));
  });

  it('bent and straight tiles keep their wall', () => {
    for (const name of ['herringbone', 'basket-weave', 'chevron', 'rhombs', 'courses']) {
      const { pieces } = artworkWith(name, { plug: 'tiles', wall: 3.3, tiles: 'all' }, lid);
      let least = Number.POSITIVE_INFINITY;
      for (const p of pieces.slice(0, 12))
        for (const q of pieces.slice(0, 12))
          if (p !== q) least = Math.min(least, distanceBetween(p.region, q.region));
      expect(least).toBeCloseTo(3.3, 6);
    }
  });

  it('says in one line what is wrong and what would do', () => {
    expect(() => artworkWith('courses', { shape: 'hexagons', bond: 0.1 }, lid)).toThrow(
      new BadInput([
        {
          where: 'pattern.bond',
          message: '0.1 leaves hexagons no room for a point; use 0.2 to 0.8, or bricks',
        },
      ]),
    );
    expect(() => artworkWith('chequer', { plug: 'both', tiles: 'all' }, lid)).toThrow(
      'pattern.tiles: no tile is left open between the straps; choose some, not all',
    );
    expect(() => artworkWith('herringbone', { wall: 11 }, lid)).toThrow(
      'pattern.wall: 11 mm leaves nothing of the tiles; make it less than 11 mm',
    );
    expect(() => artworkWith('chequer', { edge: 400, fill: 'whole' }, lid)).toThrow(Refusal);
    expect(() => artworkWith('chequer', { edge: 400, tiles: 'light', centre: 'tile' }, lid)).toThrow(
      'pattern.tiles: no tile of kind light comes near the outline; use all, or smaller ones',
    );
    expect(() => artworkWith('courses', { band: 8 }, lid)).toThrow(
      'pattern.strap: 4.4 mm leaves no opening within the outline; make it narrower or the edge longer',
    );
    expect(() => artworkWith('chequer', { edge: 90, centre: 'vertex', least: 50 }, lid)).toThrow(
      'pattern.least: nothing as wide as 50 mm is left of the tiles at the edge; make it smaller',
    );
    expect(() =>
      artworkWith('basket-weave', { edge: 1 }, outlineWith('rectangle', { width: 900, height: 900 })),
    ).toThrow(/^pattern.edge: 1 mm makes about \d+ tiles, more than 20000; use [\d.]+ mm or more$/);
  });
});
