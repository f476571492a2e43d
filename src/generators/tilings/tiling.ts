import { periodic } from './lay.js';
import type { TileKind } from './tile.js';
import { tilePattern } from './tile-pattern.js';
import { type Uniform, uniformTilings } from './uniform.js';

const SIDES: readonly TileKind[] = [3, 4, 6, 8, 12].map((n) => ({
  value: String(n),
  meaning: `those of ${n} sides`,
}));

export const tiling = tilePattern({
  name: 'tiling',
  title: 'Tiling',
  summary: 'The eleven uniform tilings by regular polygons, as straps along the edges or as tiles.',
  parameters: [
    {
      kind: 'choice',
      name: 'tiling',
      meaning: 'The tiling, by the numbers of sides of the tiles that meet at a corner.',
      say: 'laid as …',
      default: '4.8.8',
      options: uniformTilings.map((t) => ({ value: t.name, meaning: t.title })),
    },
  ],
  edge: { default: 16 },
  kinds: SIDES,
  choosing: 'tiles of … sides chosen',
  source: (values) => uniformSource(uniformTilings.find((t) => t.name === values.tiling)!),
});

export function uniformSource(tiling: Uniform): ReturnType<typeof periodic> {
  const kinds = SIDES.filter((k) => tiling.cell.some((t) => t.kind === k.value));
  return periodic(tiling, kinds);
}
