import { unitDual } from './dual.js';
import { periodic } from './lay.js';
import { SHADES, shaded } from './shades.js';
import type { TileSource } from './tile.js';
import { tilePattern } from './tile-pattern.js';
import { type Uniform, uniformTilings } from './uniform.js';

/** What the tiles of each dual are, by the vertex configuration of the uniform tiling. */
const SHAPES: Readonly<Record<string, string>> = {
  '3^6': 'hexagons',
  '4^4': 'squares',
  '6^3': 'triangles',
  '4.8.8': 'squares cut in four triangles',
  '3.6.3.6': 'rhombs, three to a hexagon',
  '3.4.6.4': 'kites, six to a hexagon',
  '3.12.12': 'triangles cut in three',
  '4.6.12': 'hexagons cut in twelve triangles',
  '3^3.4^2': 'pentagons in rows, each with a square end',
  '3^2.4.3.4': 'pentagons, four to a cross',
  '3^4.6': 'pentagons, six to a flower',
};

export const dualTiling = tilePattern({
  name: 'dual-tiling',
  title: 'Dual tiling',
  summary:
    'The eleven tilings dual to the uniform ones: rhombs, kites, pentagons and right triangles, all alike.',
  parameters: [
    {
      kind: 'choice',
      name: 'dual',
      meaning: 'The uniform tiling it belongs to: one tile lies round each of its corners.',
      say: 'the dual of …',
      default: '3.4.6.4',
      options: uniformTilings.map((t) => ({ value: t.name, meaning: SHAPES[t.name]! })),
    },
  ],
  edge: { default: 24.5, meaning: "Length of the tiles' longest edges.", say: 'the longest edges … long' },
  kinds: SHADES,
  defaults: { centre: 'vertex' },
  source: (values) => dualSource(uniformTilings.find((t) => t.name === values.dual)!),
});

export function dualSource(tiling: Uniform): TileSource {
  const tiles = unitDual(tiling);
  const alternate = shaded(tiles);
  return periodic(alternate ?? tiles, alternate ? SHADES : []);
}
