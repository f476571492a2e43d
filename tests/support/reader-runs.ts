import { faultOf as drawingFault, tryDrawings } from './drawing-trials.js';
import { faultOf as fontFault, tryFonts } from './font-trials.js';
import { type Damaged, damaged, type Sample } from './mutate.js';
import { mutant } from './mutated-fonts.js';
import * as samples from './reader-samples.js';
import { type Tally, tryReader } from './reader-trials.js';

/** One reader's trial on `runs` damaged files, from the seed `first` on. */
export type Run = (first: number, runs: number) => Promise<Tally>;

let coaster: samples.Written | undefined;
const written = (): samples.Written => (coaster ??= samples.written('door-number'));

function* many(of: readonly Sample[], first: number, runs: number): Generator<Damaged> {
  for (let k = 0; k < runs; k++) yield damaged(of, first + k);
}

/** Each of the four drawings, its place among them put before its bytes. */
function* manyProofs(of: readonly Sample[], first: number, runs: number): Generator<Damaged> {
  for (const file of many(of, first, runs)) {
    const which = of.findIndex((s) => s.name === file.name);
    yield { ...file, bytes: Buffer.concat([Buffer.of(which), file.bytes]) };
  }
}

/** Files in one go to the trials that keep each until their end. */
const AT_ONCE = 500;

/** Gives the files to trials by the batch, so that no more than a batch of them is held. */
async function batched<T>(
  first: number,
  runs: number,
  trial: (seeds: readonly number[]) => Promise<readonly T[]>,
  ended: (one: T, tally: Tally) => string | null,
): Promise<Tally> {
  const tally: Tally = { read: 0, refused: 0, faults: [] };
  for (let k = 0; k < runs; k += AT_ONCE) {
    const seeds = Array.from({ length: Math.min(AT_ONCE, runs - k) }, (_, i) => first + k + i);
    for (const one of await trial(seeds)) {
      const fault = ended(one, tally);
      if (fault !== null) tally.faults.push(fault);
    }
  }
  return tally;
}

function count(tally: Tally, end: string): void {
  if (end === 'drawn') tally.read++;
  else tally.refused++;
}

/** A word of a program that the drawing itself holds is shown as any other of its words; that is no fault. */
function ownWords(fault: string | null, text: string): string | null {
  const words = fault?.startsWith('words of a program')
    ? fault.match(/\bNaN\b|Infinity|undefined|\bnull\b|\[object/g)
    : null;
  return words?.every((word) => text.includes(word)) ? null : fault;
}

/** Recipes whose names and references lead elsewhere. */
export function tryReferences(): Promise<Tally> {
  return tryReader('recipe', samples.references());
}

export const readers: Readonly<Record<string, Run>> = {
  'recipe JSON': (first, runs) => tryReader('recipe', many(samples.recipes(), first, runs)),
  'the fit log': (first, runs) =>
    tryReader('log', many(samples.logs(), first, runs), { 'recipe.json': samples.logRecipe() }),
  'job.json of a folder to replace': (first, runs) =>
    tryReader('job', many(samples.jobs(written()), first, runs)),
  'written drawings, by the proof': (first, runs) => {
    const { samples: four, sound } = samples.proofFiles(written());
    return tryReader('proof', manyProofs(four, first, runs), { 'sound.json': sound });
  },
  "a user's drawings": (first, runs) => {
    const all = samples.drawings(written());
    const given = (seed: number) => {
      const { name, bytes } = damaged(all, seed);
      return { seed, file: name, text: new TextDecoder().decode(bytes) };
    };
    return batched(
      first,
      runs,
      (seeds) => tryDrawings(seeds.map(given)),
      (t, tally) => {
        count(tally, t.end);
        const fault = ownWords(drawingFault(t), t.given.text);
        return fault && `seed ${(t.given as ReturnType<typeof given>).seed} (${t.given.file}): ${fault}`;
      },
    );
  },
  fonts: (first, runs) => {
    const all = samples.fonts();
    // By turns damage to the file, and to what is inside its tables, on seeds beyond those of the other tests.
    const font = (seed: number) => (seed % 2 ? damaged(all, seed) : mutant(1_000_000 + seed));
    return batched(
      first,
      runs,
      (seeds) => tryFonts(seeds.map(font)),
      (t, tally) => {
        count(tally, t.end);
        return fontFault(t);
      },
    );
  },
};
