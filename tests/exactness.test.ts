import { describe, expect, it } from 'vitest';
import { build } from '../src/build.js';
import { draw } from '../src/output/index.js';
import { type Drawing, readDxf, readSvg } from '../src/proof/index.js';
import { readRecipe } from '../src/recipe/read.js';

/** A 12-pointed star alone, cut by a 3 mm cutter: its written files, read back. */
function written(set: readonly string[]): {
  drawings: Record<string, Drawing>;
  r: number;
  clearance: number;
} {
  const recipe = readRecipe(
    JSON.stringify({
      name: 'star',
      outline: { shape: 'circle', diameter: 110, margin: 5 },
      pattern: {
        generator: 'rosette',
        style: 'star',
        points: 12,
        step: 4,
        rings: 0,
        bands: 0,
        eye: 0,
        disc: 0,
        pip: 0,
      },
      cutter: { diameter: 3, ease: 0.3 },
      fit: { clearance: 0.08 },
      depth: 8,
    }),
    'star.json',
    set,
  );
  const files = draw(build(recipe, { fonts: new Map(), drawings: new Map() }), {
    png: () => new Uint8Array(),
  });
  const text = (name: string): string => files.get(name) as string;
  return {
    drawings: {
      'pocket.svg': readSvg(text('pocket.svg')),
      'plug.svg': readSvg(text('plug.svg')),
      'pocket.dxf': readDxf(text('pocket.dxf')),
      'plug.dxf': readDxf(text('plug.dxf')),
    },
    r: 1.8,
    clearance: 0.08,
  };
}

describe.each([
  ['the plug', []],
  ['the pocket', ['fit.from=pocket']],
  ['both', ['fit.from=both']],
  ['the plug, in inches', ['units=in']],
])('a star, the clearance taken from %s', (_, set) => {
  const inches = set.includes('units=in');
  // The recipe's numbers are lengths in its unit; in inches the star is given in mm strings instead.
  const { drawings, r, clearance } = written(
    inches
      ? [
          ...set,
          'outline.diameter=110mm',
          'outline.margin=5mm',
          'cutter.diameter=3mm',
          'cutter.ease=0.3mm',
          'fit.clearance=0.08mm',
          'depth=8mm',
        ]
      : set,
  );
  const part = set.includes('fit.from=pocket') ? 1 : set.includes('fit.from=both') ? 0.5 : 0;

  it.each(['pocket.svg', 'plug.svg', 'pocket.dxf', 'plug.dxf'])('is 24 lines and 24 arcs in %s', (name) => {
    const { r: radii, count } = drawings[name]!.edges;
    expect([count, radii.filter((x) => x === 0).length]).toEqual([48, 24]);
  });

  it.each(['pocket.svg', 'plug.svg', 'pocket.dxf', 'plug.dxf'])(
    'has every corner of %s exact to 0.001 mm: r, give or take its share of the clearance',
    (name) => {
      // Pocket grown by its share, plug shrunk by the rest: convex (left) and concave (right) corners in turn.
      const moved = name.startsWith('pocket') ? part * clearance : (part - 1) * clearance;
      const arcs = Array.from(drawings[name]!.edges.r).filter((x) => x !== 0);
      for (const x of arcs)
        expect(Math.abs(Math.abs(x) - (x > 0 ? r + moved : r - moved))).toBeLessThan(0.001);
      expect(arcs.filter((x) => x > 0).length).toBe(12);
    },
  );
});
