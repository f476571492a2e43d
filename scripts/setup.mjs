/**
 * Brings a checkout to where it can run: packages installed, sources compiled to dist/. Does nothing twice.
 * Uses only what Node itself has, since it runs before anything is installed.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const LEAST_NODE = 20;

/** Something the reader of the terminal has to act on: one clear line, no stack trace. */
export class Stop extends Error {}

/** @param {{ force?: boolean }} options force: compile even when nothing changed */
export function setUp({ force = false } = {}) {
  checkNode(process.versions.node);
  install();
  compile(force);
}

export function checkNode(version) {
  if (Number.parseInt(version, 10) < LEAST_NODE) {
    throw new Stop(`Node ${version} is too old: install Node ${LEAST_NODE} or newer from https://nodejs.org`);
  }
}

function install() {
  // npm writes this file last, so it is missing or old after an interrupted install.
  const installed = modified(join(ROOT, 'node_modules', '.package-lock.json'));
  if (installed >= modified(join(ROOT, 'package-lock.json'))) return;
  console.error('Installing packages ...');
  // No package needs a script of its own to run on installing, so none may.
  // npm is a script on Windows, which only a shell can start.
  const ran = spawnSync('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: ROOT,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  if (ran.error) throw new Stop('npm could not be started: install it together with Node');
  if (ran.status !== 0)
    throw new Stop('npm ci failed (see above): check the network, then run the command again');
}

function modified(file) {
  return existsSync(file) ? statSync(file).mtimeMs : 0;
}

function compile(force) {
  const dist = join(ROOT, 'dist');
  const stamp = join(dist, '.stamp');
  const now = fingerprint();
  if (!force && existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return;
  console.error('Compiling ...');
  // Files of sources that are gone must not linger in what gets packed.
  rmSync(dist, { recursive: true, force: true });
  mkdirSync(dist);
  run('tsc', ['-p', 'tsconfig.json'], 'the sources do not compile (see above)');
  run('scripts/bundle.mjs', [], 'the command cannot be put together (see above)');
  chmodSync(join(dist, 'cli.js'), 0o755);
  run('vite', ['build', '--logLevel', 'warn'], 'the page does not build (see above)');
  writeFileSync(stamp, now);
}

/** A digest of all that dist/ is made from. Contents, not times: a checkout sets times as it likes. */
function fingerprint() {
  const hash = createHash('sha256');
  const src = join(ROOT, 'src');
  const sources = readdirSync(src, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .sort();
  for (const file of [
    ...sources,
    join(ROOT, 'tsconfig.json'),
    join(ROOT, 'scripts', 'bundle.mjs'),
    join(ROOT, 'vite.config.ts'),
    join(ROOT, 'package-lock.json'),
  ]) {
    const content = readFileSync(file);
    hash.update(`${relative(ROOT, file).split(sep).join('/')}\n${content.length}\n`).update(content);
  }
  return hash.digest('hex');
}

/** The program file of an installed package's command, to be started with Node itself. */
const PROGRAMS = {
  tsc: 'typescript/bin/tsc',
  vitest: 'vitest/vitest.mjs',
  vite: 'vite/bin/vite.js',
  biome: '@biomejs/biome/bin/biome',
};

/** Runs an installed command, or a script given by path, and stops with the line given if it fails. */
export function run(name, args, failure, env = {}) {
  const file = PROGRAMS[name] ? join(ROOT, 'node_modules', PROGRAMS[name]) : join(ROOT, name);
  const ran = spawnSync(process.execPath, [file, ...args], {
    cwd: ROOT,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  });
  if (ran.status !== 0) throw new Stop(failure);
}

/** Runs a script's body: a Stop becomes one line and exit code 1. */
export function main(body) {
  try {
    body();
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    console.error(`Stopped: ${error.message}`);
    process.exitCode = 1;
  }
}

/** Is this module the script that Node was started with? */
export function isScript(url) {
  return process.argv[1] !== undefined && url === pathToFileURL(process.argv[1]).href;
}

if (isScript(import.meta.url)) main(() => setUp({ force: process.argv.includes('--force') }));
