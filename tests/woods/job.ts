import { build } from '../../src/build.js';
import { flatten, type Region } from '../../src/geometry/region.js';
import { draw, drawingsOf } from '../../src/output/index.js';
import type { Files, Job } from '../../src/output/job.js';
import { type Proof, prove } from '../../src/proof/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { cutterRadius } from '../../src/recipe/recipe.js';
import { assets } from '../support/artwork.js';
import type { Ring } from '../support/reference.js';

/** A recipe of tumbling blocks in a hexagon, cut by 3 mm with 0.3 mm of ease: r = 1.8 mm. */
export const BLOCKS = {
  name: 'blocks',
  outline: { shape: 'polygon', sides: 6, across: 160, margin: 8 },
  pattern: {
    generator: 'tumbling-blocks',
    edge: 27,
    plug: 'tiles',
    wall: 0,
    centre: 'vertex',
    fill: 'whole',
  },
  cutter: { diameter: 3, ease: 0.3, flute: 14 },
  fit: { clearance: 0.08 },
  depth: 10,
  woods: {
    field: 'sugar maple',
    plug: 'black walnut',
    plugs: { 'left face': 'padauk', 'top face': 'red alder' } as Record<string, unknown>,
  },
};

type Recipe = Omit<typeof BLOCKS, 'pattern'> & { pattern: unknown };

/** The blocks with other woods or another pattern. */
export function blocks(plugs: Record<string, unknown> | undefined, pattern: object = {}): Recipe {
  const { plugs: _, ...woods } = BLOCKS.woods;
  return {
    ...BLOCKS,
    pattern: Array.isArray(pattern) ? pattern : { ...BLOCKS.pattern, ...pattern },
    woods: (plugs ? { ...woods, plugs } : woods) as typeof BLOCKS.woods,
  };
}

export function jobOf(recipe: object, set: readonly string[] = []): Job {
  return build(readRecipe(JSON.stringify(recipe), 'x.json', set), assets);
}

/** The files without the picture's pixels. */
export function filesOf(job: Job): Files {
  return draw(job, { png: () => new Uint8Array() });
}

/** The proof of every inlay, from its written drawings. */
export function proofsOf(job: Job, files: Files = filesOf(job)): Proof[] {
  const { cutter, fit } = job.recipe;
  return job.inlays.map(({ pair }, k) =>
    prove(drawingsOf(files, k), {
      radius: cutterRadius(cutter),
      clearance: fit.clearance,
      carrier: pair.mirrored,
    }),
  );
}

/** Chords within 0.0005 mm of the arcs. */
export function rings(region: Region): Ring[] {
  return region.contours.map((c) => flatten(c, 0.0005));
}
