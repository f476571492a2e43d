import { readdirSync, readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { build } from '../../src/build.js';
import type { Artwork } from '../../src/geometry/artwork.js';
import type { Job } from '../../src/output/job.js';
import { readRecipe } from '../../src/recipe/read.js';
import { BadInput, Refusal } from '../../src/schema/fault.js';
import { proofOf } from '../support/proving.js';

/** Drawings made by other software; where each is from stands in SOURCES.md beside them. */
const corpus = new URL('../corpus/drawings/', import.meta.url);

export type Kind = 'svg' | 'dxf';

export function corpusFiles(kind: Kind): string[] {
  return readdirSync(new URL(`${kind}/`, corpus)).sort();
}

export function corpusText(file: string): string {
  return readFileSync(new URL(`${file.split('.').at(-1)}/${file}`, corpus), 'utf8');
}

const CUTTER = { diameter: '1/8in', flute: 12, ease: 0.3, thin: 'drop', touch: 'part' } as const;
const CLEARANCE = 0.08;

/** A recipe that draws the file as large as 150 mm by 150 mm let it, mm. */
function recipeText(file: string): string {
  return JSON.stringify({
    name: 'corpus',
    units: 'mm',
    outline: { shape: 'rectangle', width: 150, height: 150, margin: 6 },
    pattern: { generator: 'drawing', file, fit: true },
    stock: { field: 11, plug: 12 },
    cutter: CUTTER,
    fit: { clearance: CLEARANCE, from: 'plug', plug: 'loose' },
    depth: 6,
    skin: 1.5,
    woods: { field: 'white ash', plug: 'black walnut' },
  });
}

export interface Built {
  readonly job: Job;
  /** What the drawing shows, before the cutter's pass. */
  readonly artwork: Artwork;
}

/**
 * Builds a drawing's recipe, writes its pair and reads that back. Returns what was built and proven, or the one line
 * that refuses it. Anything else fails the test.
 */
export function builtAndProven(file: string, text = corpusText(file)): Built | string {
  try {
    const recipe = readRecipe(recipeText(file), 'corpus.json');
    const job = build(recipe, { fonts: new Map(), drawings: new Map([[file, text]]) });
    const proof = proofOf(job.pair, { radius: 3.175 / 2, clearance: CLEARANCE });
    expect(proof.failures).toEqual([]);
    return { job, artwork: job.inlays[0].artwork };
  } catch (e) {
    return refusalOf(e);
  }
}

/** The line of a BadInput or a Refusal, checked to be in plain words; any other error is thrown on. */
export function refusalOf(e: unknown): string {
  if (!(e instanceof BadInput || e instanceof Refusal)) throw e;
  for (const line of e.message.split('\n')) expect(line).toMatch(/^[^\p{Cc}]{20,400}$/u);
  expect(e.message).not.toMatch(/\bNaN\b|Infinity|undefined|\[object/);
  return e.message;
}
