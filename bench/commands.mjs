/** Whole commands as a user starts them, beyond what Node takes to start and do nothing. Milliseconds. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { spread } from './measure.mjs';

const ROOT = fileURLToPath(new URL('../', import.meta.url));
const SMALL = 'patterns/hexagon-coaster.json';
/** How many recipes are made at once to see what the cores bring. */
const MANY = 24;

function one(args, cores) {
  const command = [...(cores ? ['taskset', '--cpu-list', cores] : []), process.execPath, ...args];
  const start = performance.now();
  const ran = spawnSync(command[0], command.slice(1), { cwd: ROOT, stdio: 'ignore' });
  const ms = performance.now() - start;
  if (ran.status !== 0) throw new Error(`${command.join(' ')} ended with ${ran.status}`);
  return ms;
}

function median(args, times) {
  one(args);
  return spread(Array.from({ length: times }, () => one(args)));
}

function withFolder(work) {
  const out = mkdtempSync(join(tmpdir(), 'inlaywright-bench-'));
  try {
    return work(out);
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
}

const recipes = () =>
  readdirSync(join(ROOT, 'patterns'))
    .filter((f) => f.endsWith('.json'))
    .map((f) => join('patterns', f));

/** Cold starts: Node's own, and each command beyond it. */
export function coldStarts(times) {
  return withFolder((out) => {
    const idle = median(['-e', '0'], times);
    const beyond = (args) => {
      const { median: m, least, most } = median(['dist/cli.js', ...args], times);
      return { median: m - idle.median, least: least - idle.median, most: most - idle.median };
    };
    return [
      { what: 'node -e 0', ...idle },
      { what: 'inlaywright --version', ...beyond(['--version']) },
      { what: 'inlaywright list', ...beyond(['list']) },
      { what: `inlaywright make ${SMALL}`, ...beyond(['make', SMALL, '--out', out]) },
    ];
  });
}

/** `make` of each shipped recipe by itself, beyond Node's start: spread over the recipes. */
export function eachMade(times) {
  return withFolder((out) => {
    const idle = median(['-e', '0'], times).median;
    const all = recipes().map((file) => ({
      file,
      ms:
        spread(Array.from({ length: times }, () => one(['dist/cli.js', 'make', file, '--out', out]))).median -
        idle,
    }));
    return {
      ...spread(all.map((a) => a.ms)),
      slowest: all.reduce((a, b) => (b.ms > a.ms ? b : a)).file,
      count: all.length,
    };
  });
}

/**
 * The same recipes in one command, on as many threads as there are cores: how many times faster two cores are than one,
 * and two threads on two cores than one thread there (whose compiler and collector use the other). Taken in turn. Null
 * where a command cannot be held to a core.
 */
export function cores(times) {
  if (availableParallelism() < 2 || spawnSync('taskset', ['--version']).status !== 0) return null;
  return withFolder((out) => {
    const args = ['dist/cli.js', 'make', ...recipes().slice(0, MANY), '--out', out];
    const runs = Array.from({ length: times }, () => ({
      oneCore: one(args, '0'),
      oneThread: one([...args, '--threads', '1'], '0,1'),
      two: one(args, '0,1'),
    }));
    return {
      recipes: MANY,
      two: spread(runs.map((r) => r.two)),
      fasterThanOneCore: spread(runs.map((r) => r.oneCore / r.two)),
      fasterThanOneThread: spread(runs.map((r) => r.oneThread / r.two)),
    };
  });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  console.log(coldStarts(5), cores(3));
}
