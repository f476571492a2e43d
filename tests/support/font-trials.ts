import { type ChildProcess, fork } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Mutant } from './mutated-fonts.js';

/** How a font was taken: drawn, turned away in words, an error of another kind, or no answer. */
export interface Trial {
  readonly mutant: Mutant;
  readonly end: 'drawn' | 'bad input' | 'refused' | 'error' | 'hang' | 'crash';
  /** The message, the error's stack, or what is wrong with what was drawn. */
  readonly said: string;
  /** Processor time. */
  readonly seconds: number;
  /** Resident memory of the process afterwards, which it keeps from one font to the next. */
  readonly megabytes: number;
}

type Answer = Omit<Trial, 'mutant' | 'end'> & { readonly end: Trial['end'] | 'ready' };

/** Wall clock after which a font hangs, ms: several times what is let pass, since other work may share the machine. */
const PATIENCE = 60_000;
const SCRIPT = fileURLToPath(new URL('./font-trial.mjs', import.meta.url));
const LIBRARY = new URL('../../dist/', import.meta.url).href;

/** Draws a line of text in each font with the built library, in a child process that is ended when it does not answer. */
export async function tryFonts(mutants: Iterable<Mutant>, library = LIBRARY): Promise<Trial[]> {
  const folder = mkdtempSync(join(tmpdir(), 'fonts-'));
  const trials: Trial[] = [];
  let child: ChildProcess | null = null;
  try {
    for (const mutant of mutants) {
      child ??= await started(library);
      const recipe = join(folder, 'recipe.json');
      writeFileSync(join(folder, 'font.ttf'), mutant.bytes);
      writeFileSync(recipe, recipeFor(mutant.seed));
      const { end, ...rest } = await asked(child, recipe);
      trials.push({ mutant, end: end as Trial['end'], ...rest });
      if (end === 'hang' || end === 'crash') child = null;
    }
  } finally {
    child?.kill();
    rmSync(folder, { recursive: true });
  }
  return trials;
}

async function started(library: string): Promise<ChildProcess> {
  const child = fork(SCRIPT, [library], {
    execArgv: ['--max-old-space-size=512'],
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  });
  child.stdout!.resume();
  child.stderr!.resume();
  const { end, said } = await asked(child, null, 2 * PATIENCE);
  if (end !== 'ready') throw new Error(`the trials did not start: ${said}`);
  return child;
}

/** Sends one message, unless there is none, and waits for its answer, the child's end, or the end of patience. */
function asked(child: ChildProcess, message: string | null, patience = PATIENCE): Promise<Answer> {
  return new Promise((done) => {
    const finish = (answer: Answer): void => {
      clearTimeout(timer);
      child.removeAllListeners('message');
      child.removeAllListeners('exit');
      done(answer);
    };
    const none = { seconds: PATIENCE / 1000, megabytes: 0 };
    const timer = setTimeout(() => {
      child.kill('SIGKILL');
      finish({ end: 'hang', said: `no answer in ${patience / 1000} s`, ...none });
    }, patience);
    child.once('message', (answer) => finish(answer as Answer));
    child.once('exit', (code, signal) =>
      finish({ end: 'crash', said: `ended with ${signal ?? code}`, ...none }),
    );
    if (message !== null) child.send(message);
  });
}

/** Text with a ligature, kerned pairs, a composite and a number; every third time as large as fits. */
function recipeFor(seed: number): string {
  return JSON.stringify({
    name: 'trial',
    units: 'mm',
    outline: { shape: 'rectangle', width: 260, height: 80, margin: 6 },
    pattern: {
      generator: 'lettering',
      text: seed % 2 ? 'AVÄ fi 47' : 'Heron',
      height: seed % 3 ? 24 : 'fit',
      font: 'font.ttf',
    },
    stock: { field: 11, plug: 12 },
    cutter: { diameter: 1, flute: 12, ease: 0.1, thin: 'drop', touch: 'part' },
    fit: { clearance: 0.05, from: 'plug', plug: 'loose' },
    depth: 6,
    skin: 1.5,
    woods: { field: 'white ash', plug: 'black walnut' },
  });
}

/** What is wrong with how a font was taken, as one line that names its seed; null when nothing is. */
export function faultOf({ mutant, end, said, seconds, megabytes }: Trial): string | null {
  const where = `seed ${mutant.seed} (${mutant.name})`;
  if (end === 'hang' || end === 'crash' || end === 'error') return `${where}: ${end}: ${said}`;
  if (end === 'drawn' && said !== '') return `${where}: drawn with ${said}`;
  if (end !== 'drawn' && !/^[^\n]{20,400}$/.test(said)) return `${where}: not one clear line: ${said}`;
  if (/NaN|Infinity|undefined|null|\[object/.test(said)) return `${where}: words of a program: ${said}`;
  if (seconds > 5) return `${where}: took ${seconds.toFixed(1)} s`;
  if (megabytes > 1500) return `${where}: took ${megabytes.toFixed(0)} MB`;
  return null;
}
