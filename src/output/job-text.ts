import type { Safe } from '../cutter/safe.js';
import { fileStem } from '../fit/inlay.js';
import { parts } from '../geometry/region.js';
import type { Job } from './job.js';
import { type LayoutProofs, layoutEntry } from './layout-text.js';

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
  /** The reach by the proof's second route. */
  readonly field: number;
}

/**
 * job.json: every number, finding and proof. Keys in a fixed order, numbers to six decimals, ends with a new line.
 * `further` are the proofs of the second inlay and those after it, `layouts` those of the boards;
 * `more` is written last.
 */
export function jobText(
  job: Job,
  proof: ProofResult,
  further: readonly ProofResult[] = [],
  layouts: LayoutProofs = {},
  more: object = {},
): string {
  const content = {
    version: 1,
    recipe: job.recipe,
    parts: { pocket: parts(job.pair.pocket).length, plug: parts(job.pair.plug).length },
    proof: proofOf(proof),
    changes: changesOf(job.safe),
    ...(job.inlays.length > 1 ? { inlays: inlaysOf(job, [proof, ...further]) } : {}),
    ...layoutEntry(job, layouts),
    findings: job.findings.map((f) => ({
      code: f.code,
      severity: f.severity,
      where: f.where,
      numbers: f.numbers,
      do: f.do,
    })),
    numbers: job.numbers,
    ...more,
  };
  return `${JSON.stringify(content, rounded, 2)}\n`;
}

function proofOf(proof: ProofResult): object {
  const side = (s: SideProof) => ({ reach: s.reach, side: s.side, at: s.at, holds: s.holds, field: s.field });
  return {
    required: proof.required,
    pocket: side(proof.pocket),
    plug: side(proof.plug),
    joints: { worst: proof.joints.worst },
    gap: { least: proof.gap.least, most: proof.gap.most },
    svgDxf: proof.svgDxf,
  };
}

function changesOf({ changes }: Safe): object[] {
  return changes.map((c) => ({
    kind: c.kind,
    piece: c.piece,
    at: c.at,
    size: c.size,
    ...(c.to === undefined ? {} : { to: c.to }),
  }));
}

/** One entry a plug wood, in the order they go in; `into` counts the inlays from 0. The first one's proof stands above too. */
function inlaysOf({ inlays }: Job, proofs: readonly ProofResult[]): object[] {
  return inlays.map(({ wood, name, pair, safe, into }, k) => {
    const proof = proofs[k];
    if (!proof) throw new Error(`${name} has no proof`);
    return {
      wood,
      name,
      files: (['pocket', 'plug'] as const).flatMap((part) => [
        `${fileStem(part, k)}.svg`,
        `${fileStem(part, k)}.dxf`,
      ]),
      into,
      parts: { pocket: parts(pair.pocket).length, plug: parts(pair.plug).length },
      proof: proofOf(proof),
      changes: changesOf(safe),
    };
  });
}

/** Six decimals; a reach without limit (a straight edge) has no number in JSON and is null. */
function rounded(_key: string, value: unknown): unknown {
  if (typeof value !== 'number') return value;
  if (!Number.isFinite(value)) return null;
  return Number(value.toFixed(6));
}
