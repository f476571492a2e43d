import { parts } from '../geometry/region.js';
import type { Job } from '../output/job.js';
import type { ProofResult } from '../output/job-text.js';
import { MM_PER_INCH, numberText, type Units } from '../schema/units.js';

/** What was made, in one line: parts, the reach that was proven against what is required, the gap, the folder. */
export function resultLine(job: Job, proof: ProofResult, folder: string): string {
  const { units, name } = job.recipe;
  const { pocket, plug, required, gap } = proof;
  // The proof measures up to twice what is required; a straight edge has no limit.
  const reach = (mm: number): string => `${mm >= 2 * required - 1e-9 ? 'at least ' : ''}${fine(mm, units)}`;
  return [
    `${name}: ${count(parts(job.pair.pocket).length, 'pocket')}, ${count(parts(job.pair.plug).length, 'plug')}`,
    `proven: reach ${reach(pocket.reach)} in the pocket and ${reach(plug.reach)} round the plug (required ${fine(required, units)}), gap ${fine(gap.least, units)} to ${fine(gap.most, units)}`,
    folder,
  ].join('; ');
}

/** The same for `--json`. Lengths in mm. */
export function resultObject(path: string, job: Job, proof: ProofResult, folder: string): object {
  return {
    recipe: path,
    made: true,
    exitCode: 0,
    name: job.recipe.name,
    folder,
    parts: { pocket: parts(job.pair.pocket).length, plug: parts(job.pair.plug).length },
    proof: {
      required: proof.required,
      pocket: proof.pocket.reach,
      plug: proof.plug.reach,
      gap: proof.gap,
      joints: proof.joints.worst,
      svgDxf: proof.svgDxf,
    },
    changes: job.safe.changes.length,
    findings: job.findings,
  };
}

function count(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}

/** Reach and gap are judged to half a thousandth of a millimetre: one place more than other lengths. */
function fine(mm: number, units: Units): string {
  return units === 'in' ? `${numberText(mm / MM_PER_INCH, 5)} in` : `${numberText(mm, 4)} mm`;
}
