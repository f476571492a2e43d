import { type ChildProcess, fork } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { MOST_MEGABYTES, type Trial } from './drawing-trials.js';
import type { Damaged } from './mutate.js';

export type Reader = 'recipe' | 'log' | 'job' | 'proof';

/** How many files were read, how many turned away, and what was wrong: a line each, with its seed. */
export interface Tally {
  read: number;
  refused: number;
  readonly faults: string[];
}

type Answer = Pick<Trial, 'end' | 'said' | 'seconds' | 'megabytes'>;

/** Files sent at once: a message costs more than most of them take. */
const BATCH = 100;
/** Wall clock after which a batch, and then a single file of it, hangs, ms: other work may share the machine. */
const PATIENCE = 20_000;
const ALONE = 8_000;
/** Processor time that a file may take, s. */
const MOST_SECONDS = 2;
const SCRIPT = fileURLToPath(new URL('./reader-trial.mjs', import.meta.url));
const LIBRARY = new URL('../../dist/', import.meta.url).href;
const DRAWINGS = fileURLToPath(new URL('../../patterns/drawings/', import.meta.url));

/** Gives each file to the built library's reader in a child process; `beside` are files that have to lie in its folder. */
export async function tryReader(
  reader: Reader,
  files: Iterable<Damaged>,
  beside: Readonly<Record<string, string>> = {},
): Promise<Tally> {
  const top = mkdtempSync(join(tmpdir(), 'readers-'));
  const folder = join(top, 'a', 'b');
  mkdirSync(folder, { recursive: true });
  // What a reference that climbs out of the folder would find.
  for (const up of [top, join(top, 'a')]) writeFileSync(join(up, 'x.svg'), '<svg/>');
  cpSync(DRAWINGS, join(folder, 'drawings'), { recursive: true });
  for (const [name, text] of Object.entries(beside)) writeFileSync(join(folder, name), text);
  const tally: Tally = { read: 0, refused: 0, faults: [] };
  let child: ChildProcess | null = null;
  const ask = async (some: readonly Damaged[], patience: number): Promise<Answer[] | string> => {
    child ??= await started(reader, folder);
    const answers = await asked(child, some, patience);
    if (typeof answers === 'string') child = null;
    return answers;
  };
  try {
    for (const batch of batches(files)) {
      const all = await ask(batch, PATIENCE);
      for (const [k, file] of batch.entries()) {
        // A batch that did not come back is given again file by file, so that the one at fault is named.
        const one = typeof all === 'string' ? await ask([file], ALONE) : all.slice(k, k + 1);
        note(tally, file, one);
      }
    }
  } finally {
    (child as ChildProcess | null)?.kill();
    rmSync(top, { recursive: true });
  }
  return tally;
}

function* batches(files: Iterable<Damaged>): Generator<Damaged[]> {
  let batch: Damaged[] = [];
  for (const file of files) {
    batch.push(file);
    if (batch.length < BATCH) continue;
    yield batch;
    batch = [];
  }
  if (batch.length > 0) yield batch;
}

function note(tally: Tally, { seed, name, bytes }: Damaged, answers: Answer[] | string): void {
  const where = `seed ${seed} (${name})`;
  if (typeof answers === 'string') {
    tally.faults.push(`${where}: ${answers}`);
    return;
  }
  const [{ end, said, seconds, megabytes }] = answers;
  if (end === 'drawn') tally.read++;
  else tally.refused++;
  const fault =
    (end === 'refused' ? unclear(said, bytes) : said === '' ? null : `${end}: ${said}`) ??
    (seconds > MOST_SECONDS ? `took ${seconds.toFixed(1)} s` : null) ??
    (megabytes > MOST_MEGABYTES ? `took ${megabytes.toFixed(0)} MB` : null);
  if (fault !== null) tally.faults.push(`${where}, ${bytes.length} bytes: ${fault}`);
}

/** What a line may be long, letters: one that names every generator is near it. */
const LINE = /^[^\p{Cc}\p{Cs}]{20,700}$/u;

/** What is wrong with the lines that turn a file away; null when nothing is. Words of the file itself may be any. */
function unclear(said: string, bytes: Uint8Array): string | null {
  const bad = said.split('\n').find((line) => !LINE.test(line));
  if (bad !== undefined) return `no clear line: ${bad.slice(0, 1000)}`;
  const own = Buffer.from(bytes).toString();
  const program = said
    .match(/\bNaN\b|Infinity|undefined|\bnull\b|\[object/g)
    ?.find((word) => !own.includes(word));
  return program === undefined ? null : `${program}, a word of a program: ${said}`;
}

async function started(reader: Reader, folder: string): Promise<ChildProcess> {
  const child = fork(SCRIPT, [LIBRARY, folder, reader], {
    cwd: folder,
    execArgv: ['--max-old-space-size=512'],
    serialization: 'advanced',
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
  });
  let words = '';
  child.stderr!.on('data', (piece) => {
    words = `${words}${piece}`.slice(-2000);
  });
  const first = await answer(child, PATIENCE);
  if (first !== 'ready') throw new Error(`the trials of ${reader} did not start: ${first}; ${words}`);
  return child;
}

/** The answers, or how the child ended instead. */
function asked(child: ChildProcess, files: readonly Damaged[], patience: number): Promise<Answer[] | string> {
  child.send(files.map((f) => f.bytes));
  return answer(child, patience);
}

function answer(child: ChildProcess, patience: number): Promise<Answer[] | string> {
  return new Promise((done) => {
    const finish = (said: Answer[] | string): void => {
      clearTimeout(timer);
      child.removeAllListeners('message');
      child.removeAllListeners('exit');
      done(said);
    };
    const timer = setTimeout(() => {
      child.kill('SIGKILL');
      finish(`hang: no answer in ${patience / 1000} s`);
    }, patience);
    child.once('message', (said) => finish(said as Answer[] | string));
    child.once('exit', (code, signal) => finish(`crash: ended with ${signal ?? code}`));
  });
}
