import { parts } from '../geometry/region.js';
import type { Job } from './job.js';

/** What reading the written files back measured; lengths in mm, the drawings' middle at (0, 0). */
export interface ProofResult {
  readonly required: number;
  readonly pocket: SideProof;
  readonly plug: SideProof;
  readonly joints: { readonly worst: number };
  readonly gap: { readonly least: number; readonly most: number };
  readonly svgDxf: number;
}

export interface SideProof {
  readonly reach: number;
  readonly side: 'inside' | 'outside';
  readonly at: readonly [number, number];
  readonly holds: boolean;
}

/** job.json: every number, finding and proof. Keys in a fixed order, numbers to six decimals, ends with a new line. */
export function jobText(job: Job, proof: ProofResult): string {
  const side = (s: SideProof) => ({ reach: s.reach, side: s.side, at: s.at, holds: s.holds });
  const content = {
    version: 1,
    recipe: job.recipe,
    parts: { pocket: parts(job.pair.pocket).length, plug: parts(job.pair.plug).length },
    proof: {
      required: proof.required,
      pocket: side(proof.pocket),
      plug: side(proof.plug),
      joints: { worst: proof.joints.worst },
      gap: { least: proof.gap.least, most: proof.gap.most },
      svgDxf: proof.svgDxf,
    },
    changes: job.safe.changes.map((c) => ({ kind: c.kind, piece: c.piece, at: c.at, size: c.size })),
    findings: job.findings.map((f) => ({
      code: f.code,
      severity: f.severity,
      where: f.where,
      numbers: f.numbers,
      do: f.do,
    })),
    numbers: job.numbers,
  };
  return `${JSON.stringify(content, rounded, 2)}\n`;
}

/** Six decimals; a reach without limit (a straight edge) has no number in JSON and is null. */
function rounded(_key: string, value: unknown): unknown {
  if (typeof value !== 'number') return value;
  if (!Number.isFinite(value)) return null;
  return Number(value.toFixed(6));
}
