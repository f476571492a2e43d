import { type ChildProcess, fork } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** A text to be read as a drawing. */
export interface Given {
  readonly file: string;
  readonly text: string;
}

/** How a drawing was taken: drawn, turned away in words, not decided, an error of another kind, no answer, or an end. */
export interface Trial {
  readonly given: Given;
  readonly end: 'drawn' | 'refused' | 'undecided' | 'error' | 'hang' | 'crash';
  /** The message, the error's stack, or what is wrong with what was drawn. */
  readonly said: string;
  /** Processor time. */
  readonly seconds: number;
  /** The most that the process has ever held, which it keeps from one drawing to the next. */
  readonly megabytes: number;
}

/** Wall clock after which a drawing hangs, ms: other work may share the machine. */
const PATIENCE = 60_000;
const SCRIPT = fileURLToPath(new URL('./drawing-trial.mjs', import.meta.url));
const LIBRARY = new URL('../../dist/', import.meta.url).href;

/** Reads each drawing with the built library, in a child process in an empty folder, which must stay empty. */
export async function tryDrawings(all: Iterable<Given>, library = LIBRARY): Promise<Trial[]> {
  const folder = mkdtempSync(join(tmpdir(), 'drawings-'));
  const trials: Trial[] = [];
  let child: ChildProcess | null = null;
  try {
    for (const given of all) {
      child ??= await started(library, folder);
      const trial = await asked(child, given);
      trials.push({ given, ...trial });
      if (trial.end === 'hang' || trial.end === 'crash') child = null;
    }
    if (readdirSync(folder).length > 0) throw new Error('a drawing that was read wrote a file');
  } finally {
    child?.kill();
    rmSync(folder, { recursive: true });
  }
  return trials;
}

type Answer = Omit<Trial, 'given'>;

async function started(library: string, cwd: string): Promise<ChildProcess> {
  const child = fork(SCRIPT, [library], {
    cwd,
    execArgv: ['--max-old-space-size=1024'],
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  });
  child.stdout!.resume();
  child.stderr!.resume();
  const { end, said } = (await asked(child, null)) as { end: string; said: string };
  if (end !== 'ready') throw new Error(`the trials did not start: ${said}`);
  return child;
}

/** Sends a drawing, unless there is none, and waits for the answer, the child's end, or the end of patience. */
function asked(child: ChildProcess, given: Given | null): Promise<Answer> {
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
      finish({ end: 'hang', said: `no answer in ${PATIENCE / 1000} s`, ...none });
    }, PATIENCE);
    child.once('message', (answer) => finish(answer as Answer));
    child.once('exit', (code, signal) =>
      finish({ end: 'crash', said: `ended with ${signal ?? code}`, ...none }),
    );
    if (given) child.send({ file: given.file, text: given.text });
  });
}

/** What is wrong with how a drawing was taken, as one line; null when nothing is. */
export function faultOf({ end, said, seconds, megabytes }: Trial): string | null {
  if (end === 'hang' || end === 'crash' || end === 'error') return `${end}: ${said}`;
  if (end === 'drawn' && said !== '') return `drawn with ${said}`;
  if (end === 'refused') {
    const lines = said.split('\n');
    if (!lines.every((l) => /^[^\p{Cc}]{20,400}$/u.test(l))) return `no clear lines: ${said}`;
    // Words of the file itself stand in quotes, and may be any.
    if (/\bNaN\b|Infinity|undefined|\bnull\b|\[object/.test(said.replace(/"[^"]*"/g, '')))
      return `words of a program: ${said}`;
  }
  if (seconds > MOST_SECONDS) return `took ${seconds.toFixed(1)} s`;
  if (megabytes > MOST_MEGABYTES) return `took ${megabytes.toFixed(0)} MB`;
  return null;
}

/** The bounds within which any text is drawn or refused: processor time, and memory of the whole process. */
export const MOST_SECONDS = 5;
export const MOST_MEGABYTES = 1500;
