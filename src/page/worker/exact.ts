import { build } from '../../build.js';
import type { Assets } from '../../generators/generator.js';
import { anchor } from '../../inspect/anchor.js';
import { ranked } from '../../inspect/ranked.js';
import type { Job } from '../../output/job.js';
import type { Recipe } from '../../recipe/recipe.js';
import { figureOf } from './figure.js';
import { openPathOf, pathOf } from './path.js';
import type { Drawn, Pencilled } from './protocol.js';

/** The whole job, as the command line builds it, and what the card shows of it. */
export function drawExact(recipe: Recipe, assets: Assets, now: () => number): { job: Job; drawn: Drawn } {
  const t0 = now();
  const job = build(recipe, assets);
  const { outline, inlays, findings, numbers } = job;
  const drawn: Drawn = {
    kind: 'drawn',
    stage: 'exact',
    recipe,
    figure: figureOf(recipe, outline, inlays),
    findings: pencilled(findings),
    numbers,
    parts: {
      pocket: count(job, 'pocket'),
      plug: count(job, 'plug'),
    },
    took: now() - t0,
  };
  return { job, drawn };
}

function count({ inlays, numbers }: Job, part: 'pocket' | 'plug'): number {
  return inlays.length === 1 ? numbers[`${part}Parts`]! : inlays.length;
}

/** Findings worst first, as they are pencilled on the piece. */
export function pencilled(findings: Job['findings']): Pencilled[] {
  return ranked(findings).map(({ number, finding }) => {
    const at = anchor(finding);
    return {
      number,
      code: finding.code,
      severity: finding.severity,
      do: finding.do,
      at: at ? [at[0], -at[1]] : null,
      areas: finding.zone?.areas ? pathOf(finding.zone.areas.contours) : '',
      lines: finding.zone?.lines ? openPathOf(finding.zone.lines) : '',
    };
  });
}
