import { parts } from '../geometry/region.js';
import type { Job } from '../output/job.js';
import type { ProofResult } from '../output/job-text.js';
import { MM_PER_INCH, numberText, type Units } from '../schema/units.js';
import { count } from './count.js';

/** What was made, in one line: parts, the reach that was proven against what is required, the gap, the folder. */
export function resultLine(job: Job, proofs: readonly ProofResult[], folder: string): string {
  const { units, name } = job.recipe;
  const { pocket, plug, required, gap } = weakest(proofs);
  const n = partsOf(job);
  const several = job.inlays.length > 1 ? ` of ${job.inlays.length} woods` : '';
  // The proof measures up to twice what is required; a straight edge has no limit.
  const reach = (mm: number): string => `${mm >= 2 * required - 1e-9 ? 'at least ' : ''}${fine(mm, units)}`;
  return [
    `${name}: ${count(n.pocket, 'pocket')}, ${count(n.plug, 'plug')}${several}`,
    `proven: reach ${reach(pocket.reach)} in the pocket and ${reach(plug.reach)} round the plug (required ${fine(required, units)}), gap ${fine(gap.least, units)} to ${fine(gap.most, units)}`,
    folder,
  ].join('; ');
}

/** What holds for every inlay: the least reach, the worst joint, the whole range of the gap. */
function weakest(proofs: readonly ProofResult[]) {
  const all = <T>(get: (p: ProofResult) => T): T[] => proofs.map(get);
  return {
    required: proofs[0]!.required,
    pocket: { reach: Math.min(...all((p) => p.pocket.reach)) },
    plug: { reach: Math.min(...all((p) => p.plug.reach)) },
    gap: { least: Math.min(...all((p) => p.gap.least)), most: Math.max(...all((p) => p.gap.most)) },
    joints: { worst: Math.max(...all((p) => p.joints.worst)) },
    svgDxf: Math.max(...all((p) => p.svgDxf)),
  };
}

/** Parts of all inlays together. */
function partsOf({ inlays }: Job): { pocket: number; plug: number } {
  const sum = (part: 'pocket' | 'plug'): number => inlays.reduce((n, i) => n + parts(i.pair[part]).length, 0);
  return { pocket: sum('pocket'), plug: sum('plug') };
}

/** The same for `--json`. Lengths in mm. */
export function resultObject(path: string, job: Job, proofs: readonly ProofResult[], folder: string): object {
  const proof = weakest(proofs);
  return {
    recipe: path,
    made: true,
    exitCode: 0,
    name: job.recipe.name,
    folder,
    parts: partsOf(job),
    ...(job.inlays.length > 1 ? { woods: job.inlays.map((i) => i.wood) } : {}),
    proof: {
      required: proof.required,
      pocket: proof.pocket.reach,
      plug: proof.plug.reach,
      gap: proof.gap,
      joints: proof.joints.worst,
      svgDxf: proof.svgDxf,
    },
    changes: job.inlays.reduce((n, i) => n + i.safe.changes.length, 0),
    findings: job.findings.map(({ zone: _, ...f }) => f),
  };
}

/** Reach and gap are judged to half a thousandth of a millimetre: one place more than other lengths. */
function fine(mm: number, units: Units): string {
  return units === 'in' ? `${numberText(mm / MM_PER_INCH, 5)} in` : `${numberText(mm, 4)} mm`;
}
