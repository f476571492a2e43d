import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { build } from '../../src/build.js';
import { planOf } from '../../src/inspect/sums/plan/plan.js';
import type { Stage } from '../../src/inspect/sums/plan/stage.js';
import { readRecipe } from '../../src/recipe/read.js';
import { assets } from '../support/artwork.js';
import { offsetBy, polygonArea, type Rings } from '../support/reference.js';
import { ringsOf } from '../support/rings.js';

const stageOf = (stages: readonly Stage[], part: string, name: string): Stage =>
  stages.find((s) => s.part === part && s.name === name)!;

describe('paths of shipped patterns, against Clipper2', () => {
  const CHORD = 0.0005;
  const length = (rings: Rings): number =>
    rings.reduce(
      (sum, ring) =>
        sum +
        ring.reduce((s, [x, y], k) => {
          const [u, v] = ring[(k + 1) % ring.length]!;
          return s + Math.hypot(u - x, v - y);
        }, 0),
      0,
    );

  it.each(['tea-box-rosette', 'keepsake-box-lid', 'star-trivet'])('%s', (name) => {
    const recipe = readRecipe(readFileSync(`patterns/${name}.json`, 'utf8'), name);
    const { pair, outline } = build(recipe, assets);
    const { stages } = planOf(recipe, outline, pair);
    const R = (recipe.cutter.cuts ?? recipe.cutter.diameter) / 2;
    for (const part of ['pocket', 'plug'] as const) {
      const rings = ringsOf(pair[part].contours, CHORD);
      const way = part === 'pocket' ? -1 : 1;
      const path = length(offsetBy('clipper', rings, way * R, CHORD));
      const ours = stageOf(stages, part, 'finishing').pathLength;
      expect(Math.abs(ours / path - 1), `${part}: ${ours} and ${path}`).toBeLessThan(5e-4);
    }
    // What the roughing cutter reaches: the pocket less radius and allowance, grown by the radius.
    const { allowance, stepover } = recipe.passes;
    const rough = recipe.roughing ? recipe.roughing.diameter / 2 : R;
    const shrunk = offsetBy('clipper', ringsOf(pair.pocket.contours, CHORD), -rough - allowance, CHORD);
    const reached = polygonArea(offsetBy('clipper', shrunk, rough, CHORD));
    const { pathLength, steps } = stageOf(stages, 'pocket', 'roughing');
    expect(Math.abs((pathLength / steps) * (stepover / 100) * 2 * rough - reached)).toBeLessThan(
      1e-3 * reached,
    );
  });
});
