import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Case, workshop } from './fault-cases.js';
import {
  badlySaid,
  differences,
  FaultRunner,
  type How,
  type Plan,
  putTree,
  start,
  type Tree,
  type Tried,
  treeOf,
} from './faults.js';

/**
 * What can be wrong with a run on a failing disk: how it says so, and how it does when what it began cannot be taken back
 * either; that it says so though the new piece stands; that something is half done; the log; the next run on a sound disk.
 */
export type Kind = 'said' | 'said, not taken back' | 'stands' | 'spoiled' | 'log' | 'next';

export interface Fault {
  readonly kind: Kind;
  readonly text: string;
}

/** A case made ready: what stands before it and after it when nothing fails. */
export class FaultBench {
  readonly #runner: FaultRunner;
  old: Tree = new Map();
  new: Tree = new Map();
  clean!: Tried;

  private constructor(
    readonly dir: string,
    readonly of: Case,
    readonly isOwn: boolean,
  ) {
    this.#runner = new FaultRunner(dir);
  }

  static async of(given: Case, dir?: string): Promise<FaultBench> {
    const bench = new FaultBench(workshop(dir), given, dir === undefined);
    for (const args of given.before) {
      const { code, stderr } = await bench.#runner.run(args);
      if (code !== 0) throw new Error(stderr);
    }
    for (const [name, text] of Object.entries(given.files ?? {})) writeFileSync(join(bench.dir, name), text);
    bench.old = treeOf(bench.dir);
    bench.clean = await bench.#runner.run(given.args);
    if (bench.clean.code !== 0) throw new Error(bench.clean.stderr);
    bench.new = treeOf(bench.dir);
    return bench;
  }

  /** What is wrong after a run on a disk that fails as planned, and after the next one on a sound disk; nothing usually. */
  async faultsOf(plan: Plan): Promise<Fault[]> {
    putTree(this.dir, this.old);
    const ran = await this.#runner.run(this.of.args, plan);
    const is = treeOf(this.dir);
    const faults: Fault[] = [];
    const add = (kind: Kind, texts: readonly string[]): void => {
      const of = `${this.of.args[0]} ${JSON.stringify(plan)} met by ${ran.met[0] ?? 'none'}`;
      faults.push(...texts.map((text) => ({ kind, text: `${of}: ${text}` })));
    };
    if (ran.code === 0) add('spoiled', differences(rest(inSight(is, true)), rest(this.new)));
    else {
      add(plan.lasting ? 'said, not taken back' : 'said', badlySaid(ran, this.clean));
      if (this.#isMade(is)) add('stands', [`it ends with ${ran.code}, and the new piece stands`]);
      else if (plan.lasting) add('spoiled', this.notWhole(is));
      else add('spoiled', differences(rest(is), rest(this.old)));
    }
    add('log', logFaults(is, this.old, ran.code === 0 ? this.new : this.old));
    // What stands as it was, or is done, needs nothing put right.
    const settled = [this.old, this.new].some((tree) => differences(is, tree).length === 0);
    if (!settled) add('next', await this.next());
    return faults;
  }

  /** What is wrong after a run that was killed, and after the next one. Also whether it was killed at all. */
  async faultsOfKill(how: How, from = this.old) {
    putTree(this.dir, from);
    const ran = await start(this.dir, this.of.args, how);
    const is = treeOf(this.dir);
    const killed = ran.signal === 'SIGKILL';
    const failed = killed || ran.code === 0 ? [] : [`not killed, and failed: ${ran.stderr}`];
    const wrong = [...failed, ...this.notWhole(is), ...logFaults(is, this.old, killed ? this.old : this.new)];
    return { killed, wrong: [...wrong, ...(await this.next())].map((w) => `${JSON.stringify(how)}: ${w}`) };
  }

  /** What is wrong after the next run: it puts all right. */
  async next(): Promise<string[]> {
    const { code, stderr } = await this.#runner.run(this.of.args);
    if (code !== 0) return [`the next run ends with ${code}: ${stderr}`];
    const is = treeOf(this.dir);
    const wrong = [...differences(rest(is), rest(this.new)), ...logFaults(is, this.old, this.new)];
    return wrong.map((w) => `after the next run: ${w}`);
  }

  /** The old result in the place where a run puts it for the moment between its renames. */
  get movedAside(): Tree {
    return new Map([...this.old].map(([name, text]) => [aside(name), text]));
  }

  /** What is neither the old nor the new result as a whole. What is hidden may stay until the next run. */
  notWhole(tree: Tree): string[] {
    const is = rest(inSight(tree));
    const [old, made] = [pieces(this.old), pieces(this.new)];
    const states = [old, pieces(this.movedAside), made, new Map([...made, ...pieces(this.movedAside)])];
    const piece = states.some((state) => differences(pieces(is), state).length === 0);
    const beside = [...new Set([...is.keys(), ...this.old.keys()])].filter(
      (name) => !isPiece(name) && !isLog(name),
    );
    const half = beside.filter(
      (name) => is.get(name) !== this.old.get(name) && is.get(name) !== this.new.get(name),
    );
    return [
      ...(piece ? [] : [`no whole result; from the old one ${differences(pieces(is), old).join(', ')}`]),
      ...half.map((name) => `${name} is half done: ${is.get(name)?.length ?? 'no'} bytes`),
    ];
  }

  #isMade(tree: Tree): boolean {
    const is = pieces(inSight(tree, true));
    const made = pieces(this.new);
    return differences(made, pieces(this.old)).length > 0 && differences(is, made).length === 0;
  }

  async close(): Promise<void> {
    await this.#runner.close();
    // A disk of its own is taken down by whoever put it there.
    if (this.isOwn) rmSync(this.dir, { recursive: true, force: true });
  }
}

const aside = (name: string): string => name.replace(/^(out\/[\w-]+)\//, '$1.old/');

/** What lies in a piece's folder, old or new. */
const isPiece = (name: string): boolean => /^out\/[\w-]+(?:\.old)?\//.test(name);
const pieces = (tree: Tree): Tree => new Map([...tree].filter(([name]) => isPiece(name)));

const isLog = (name: string): boolean => /\.fitlog\.(?:jsonl|damaged)$/.test(name);
const rest = (tree: Tree): Tree => new Map([...tree].filter(([name]) => !isLog(name)));

/** Without what is hidden, and for a new result that stands without the old one that could not be removed. */
function inSight(tree: Tree, made = false): Tree {
  const isLeft = (name: string): boolean =>
    /^(?:out\/)?\.[\w.-]+\.(?:new|gone)(?:-|$)/.test(name) || (made && /^out\/[\w-]+\.old\//.test(name));
  return new Map([...tree].filter(([name]) => !isLeft(name)));
}

/** A log is only ever added to, and what was confirmed is in it. Copies of damaged lines are promised to nobody. */
function logFaults(is: Tree, old: Tree, confirmed: Tree): string[] {
  const logs = [...old, ...confirmed].filter(([name]) => name.endsWith('.fitlog.jsonl'));
  return logs.flatMap(([name, text]) => {
    const now = is.get(name) ?? '';
    const lines = new Set(now.split('\n'));
    return [
      ...(now.startsWith(old.get(name) ?? '') ? [] : [`${name} is not what it was`]),
      ...(text.split('\n').every((line) => line === '' || lines.has(line)) ? [] : [`${name} lost a line`]),
    ];
  });
}

/** Every failure of every call, and each lasting as well. A disk that fills up takes half of what is written. */
export function plansFor({ clean }: FaultBench): Plan[] {
  const plans: Plan[] = [];
  for (const what of ['ENOSPC', 'EROFS', 'EMFILE', 'EACCES', 'EIO'] as const) {
    const { length } = clean.calls[what];
    const half = what === 'ENOSPC';
    for (let at = 1; at <= length; at++) plans.push({ at, what, half }, { at, what, half, lasting: true });
  }
  return plans;
}

/** Every moment between two calls that change the disk, and every one in the middle of a call that takes a while. */
export function killsFor({ clean }: FaultBench): Plan[] {
  return clean.calls.kill.flatMap((name, k): Plan[] => {
    const before: Plan = { at: k + 1, what: 'kill' };
    return /^(?:write|writeFile|rm)Sync$/.test(name) ? [before, { ...before, half: true }] : [before];
  });
}
