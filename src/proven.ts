import { draw, drawingsOf, jobText, layoutAsked, layoutFilesOf } from './output/index.js';
import type { Files, Job } from './output/job.js';
import type { ProofResult } from './output/job-text.js';
import type { LayoutProofs } from './output/layout-text.js';
import type { Renderer } from './output/renderer.js';
import { type Asked, type LayoutProof, prove, proveLayout } from './proof/index.js';
import { cutterRadius } from './recipe/recipe.js';
import { Refusal } from './schema/fault.js';

/** All files of a piece, job.json last, and the proof of each inlay's drawings. */
export interface Proven {
  readonly files: Files;
  readonly proofs: readonly ProofResult[];
}

/**
 * From a job to its files, proven by reading them back. Pure. `tell` hears of each step as it begins. Throws Refusal
 * when a drawing does not pass its proof.
 */
export function proven(job: Job, renderer: Renderer, tell: (step: 'drawing' | 'proving') => void): Proven {
  tell('drawing');
  const files = draw(job, renderer);
  tell('proving');
  const proofs = job.inlays.map((_, k) => prove(drawingsOf(files, k), asked(job)));
  const failures = proofs.flatMap((p, k) =>
    p.failures.map((f) => (proofs.length > 1 ? `${job.inlays[k]!.wood}: ${f}` : f)),
  );
  if (failures.length > 0 || proofs.some((p) => !p.holds)) throw failed('drawings do', failures);
  const layouts: LayoutProofs = Object.fromEntries(
    (['plug', 'pocket'] as const)
      .filter((part) => job.layouts[part])
      .map((part) => [part, sound(proveLayout(layoutFilesOf(files, part), layoutAsked(job, part)))]),
  );
  const [proof, ...further] = proofs;
  return { files: new Map([...files, ['job.json', jobText(job, proof!, further, layouts)]]), proofs };
}

/** A layout's proof, when it holds. */
function sound(proof: LayoutProof): LayoutProof {
  if (proof.holds) return proof;
  throw failed('layout does', proof.failures);
}

function failed(what: string, failures: readonly string[]): Refusal {
  return new Refusal(
    'proof-failed',
    `the ${what} not pass ${what.startsWith('layout') ? 'its' : 'their'} proof: ${failures.join('; ')}. Nothing is written`,
  );
}

function asked({ recipe, pair }: Job): Asked {
  return { radius: cutterRadius(recipe.cutter), clearance: recipe.fit.clearance, carrier: pair.mirrored };
}
