import { type ChildProcess, fork, spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const CLI = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));
const FAULTY = new URL('faulty-fs.mjs', import.meta.url).href;
const RUNNER = fileURLToPath(new URL('fault-runner.mjs', import.meta.url));

/** What goes wrong, and with which call: see faulty-fs.mjs. */
export interface Plan {
  readonly at: number;
  readonly what: 'kill' | 'wait' | 'ENOSPC' | 'EACCES' | 'EMFILE' | 'EIO' | 'EROFS';
  readonly half?: boolean;
  readonly lasting?: boolean;
  /** How many wait for each other, and in which empty folder. */
  readonly wait?: { readonly place: string; readonly count: number };
}

export interface Ran {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** A run in the fault runner: the calls that can meet each fault, and those that met the planned one. */
export interface Tried extends Ran {
  readonly calls: Readonly<Record<Plan['what'], readonly string[]>>;
  readonly met: readonly string[];
}

/** Every file below a folder by its path; folders are there with a slash and nothing in them. */
export type Tree = ReadonlyMap<string, string>;

export function treeOf(folder: string): Tree {
  const names = readdirSync(folder, { recursive: true }) as string[];
  return new Map(
    names.sort().map((name) => {
      const path = join(folder, name);
      return statSync(path).isDirectory() ? [`${name}/`, ''] : [name, readFileSync(path, 'latin1')];
    }),
  );
}

/** Puts a folder back to what it held. */
export function putTree(folder: string, tree: Tree): void {
  for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true, force: true });
  for (const [name, content] of tree) {
    if (name.endsWith('/')) mkdirSync(join(folder, name), { recursive: true });
    else {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), content, 'latin1');
    }
  }
}

/** In what two trees differ, a word a file; nothing when they are the same. */
export function differences(is: Tree, should: Tree): string[] {
  const lost = [...should.keys()].filter((name) => !is.has(name)).map((name) => `${name} is missing`);
  const more = [...is.keys()].filter((name) => !should.has(name)).map((name) => `${name} is left over`);
  const other = [...is].filter(([name, text]) => should.has(name) && should.get(name) !== text);
  return [...lost, ...more, ...other.map(([name, text]) => `${name} is another (${text.length} bytes)`)];
}

/** How a command is started: what fails, when it is killed (ms), as whom, with how many open files. */
export interface How {
  readonly plan?: Plan;
  readonly delay?: number;
  readonly uid?: number;
  readonly handles?: number;
}

/** Runs the built command in a process of its own. */
export function start(
  cwd: string,
  args: readonly string[],
  { plan, delay, uid, handles }: How = {},
): Promise<Ran & { signal: string | null }> {
  const fault = plan === undefined ? {} : { INLAYWRIGHT_FAULT: JSON.stringify({ root: cwd, ...plan }) };
  const command = [process.execPath, ...(plan === undefined ? [] : ['--import', FAULTY]), CLI, ...args];
  const limited = ['bash', '-c', `ulimit -n ${handles}; exec "$@"`, 'bash', ...command];
  const [file, ...given] = handles === undefined ? command : limited;
  return new Promise((resolve, reject) => {
    const child = spawn(file!, given, {
      cwd,
      env: { ...process.env, ...fault },
      ...(uid === undefined ? {} : { uid, gid: uid }),
    });
    let stdout = '';
    let stderr = '';
    child.stdout.on('data', (data) => (stdout += data));
    child.stderr.on('data', (data) => (stderr += data));
    if (delay !== undefined) setTimeout(() => child.kill('SIGKILL'), delay);
    child.on('error', reject);
    child.on('close', (code, signal) => resolve({ code, signal, stdout, stderr }));
  });
}

/** One process that runs many commands in a folder, each on a disk that fails as planned. */
export class FaultRunner {
  readonly #child: ChildProcess;
  readonly #ready: Promise<unknown>;

  constructor(readonly folder: string) {
    this.#child = fork(RUNNER, { cwd: folder, stdio: ['ignore', 'inherit', 'inherit', 'ipc'] });
    this.#ready = new Promise((done) => this.#child.once('message', done));
  }

  /** `at` 0 lets nothing fail. */
  async run(args: readonly string[], plan: Plan = { at: 0, what: 'EIO' }): Promise<Tried> {
    await this.#ready;
    return new Promise((resolve, reject) => {
      const ended = (): void => reject(new Error(`the runner ended in ${args.join(' ')}`));
      this.#child.once('exit', ended);
      this.#child.once('message', (tried: Tried) => {
        this.#child.off('exit', ended);
        resolve(tried);
      });
      this.#child.send({ args, plan: { root: this.folder, ...plan } });
    });
  }

  /** Done once it is gone: it holds on to its folder. */
  async close(): Promise<void> {
    const gone = new Promise((done) => this.#child.once('exit', done));
    this.#child.kill();
    await gone;
  }
}

/** What is wrong with how a run said that it failed, by the contract of the command line: one line, exit code 2. */
export function badlySaid({ code, stdout, stderr }: Ran, clean: Ran): string[] {
  const usual = new Set(clean.stderr.split('\n'));
  // That damaged lines of a log could not be copied is a remark on something else.
  const own = stderr
    .split('\n')
    .filter((line) => !usual.has(line) && !line.includes('could not be copied aside'));
  return [
    ...(code === 2 ? [] : [`exit code ${code}`]),
    ...(own.length === 1 && /^inlaywright: \S/.test(own[0]!)
      ? []
      : [`${own.length} lines: ${own.join(' | ')}`]),
    ...(/internal error|undefined|^\s+at |node:/m.test(own.join('\n'))
      ? [`not for a user: ${own.join(' | ')}`]
      : []),
    ...(stdout === '' ? [] : [`on stdout: ${stdout.trim()}`]),
  ];
}
