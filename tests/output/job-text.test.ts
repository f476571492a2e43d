import { expect, it } from 'vitest';
import { jobText, type ProofResult } from '../../src/output/index.js';
import { sampleJob } from './sample-job.js';

const proof: ProofResult = {
  required: 1.595,
  pocket: { reach: 1.9000004, side: 'inside', at: [1 / 3, -0], holds: true, field: 1.9010004 },
  plug: { reach: Number.POSITIVE_INFINITY, side: 'outside', at: [0, 0], holds: true, field: 3 },
  joints: { worst: 0.0012345678 },
  gap: { least: 0.0799999, most: 0.08 },
  svgDxf: 1e-9,
};

it('has the keys of the contract in their order', () => {
  const job = JSON.parse(jobText(sampleJob(), proof));
  expect(Object.keys(job)).toEqual(['version', 'recipe', 'parts', 'proof', 'changes', 'findings', 'numbers']);
  expect(job.version).toBe(1);
  expect(job.parts).toEqual({ pocket: 3, plug: 3 });
  expect(Object.keys(job.proof)).toEqual(['required', 'pocket', 'plug', 'joints', 'gap', 'svgDxf']);
  expect(Object.keys(job.proof.pocket)).toEqual(['reach', 'side', 'at', 'holds', 'field']);
  expect(Object.keys(job.findings[0])).toEqual(['code', 'severity', 'where', 'numbers', 'do']);
  expect(job.recipe.cutter.diameter).toBe(3.175);
  expect(job.changes).toHaveLength(2);
});

it('writes numbers to six decimals, never -0, an exponent or what JSON has no word for', () => {
  const text = jobText(sampleJob(), proof);
  const job = JSON.parse(text);
  expect(job.proof.pocket).toEqual({
    reach: 1.9,
    side: 'inside',
    at: [0.333333, 0],
    holds: true,
    field: 1.901,
  });
  expect(job.proof.plug.reach).toBeNull();
  expect(job.proof.gap).toEqual({ least: 0.08, most: 0.08 });
  expect(job.proof.svgDxf).toBe(0);
  expect(text).not.toMatch(/\d[eE][-+]?\d|-0[,\s\]]|\.\d{7}/);
});

it('is the same bytes whatever order a proof’s keys come in, and ends with one new line', () => {
  const { required, pocket, plug, joints, gap, svgDxf } = proof;
  const shuffled = { svgDxf, gap: { most: gap.most, least: gap.least }, plug, joints, pocket, required };
  expect(jobText(sampleJob(), shuffled)).toBe(jobText(sampleJob(), proof));
  expect(jobText(sampleJob(), proof)).toMatch(/[^\n]\n$/);
});
