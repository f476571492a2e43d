/**
 * `node scripts/bytes.mjs`: makes every recipe that ships and compares the bytes of all SVG, DXF, JSON and HTML with what
 * the repository says they are (tests/golden/bytes.json). One line for each file that differs; exit code 1 if any does.
 * `--write` writes that file anew, for a change that is meant to change drawings.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT } from './setup.mjs';

const GOLDEN = join(ROOT, 'tests/golden/bytes.json');

/** Files whose bytes are promised: pictures of pixels and models come from other people's WASM. */
const PROMISED = /\.(?:svg|dxf|json|html)$/;

/** @typedef {Record<string, Record<string, string>>} Bytes A digest by folder and file. */

/** @returns {Bytes} what the repository says */
export function golden() {
  return JSON.parse(readFileSync(GOLDEN, 'utf8'));
}

/** Those of some recipes; with what `bowl` writes of them, or without. */
export function bytesOf(all, names, bowls = true) {
  const own = (piece) =>
    names.includes(piece) || (bowls && names.some((n) => new RegExp(`^bowl ${n}(-coupon)?$`).test(piece)));
  return Object.fromEntries(Object.entries(all).filter(([piece]) => own(piece)));
}

/** 128 bits of SHA-256: no two of these files meet in it. */
export function digest(content) {
  return createHash('sha256').update(content).digest('base64url').slice(0, 22);
}

/** @returns {Bytes} of what lies in a folder of pieces */
export function bytesIn(out) {
  return Object.fromEntries(
    readdirSync(out)
      .sort()
      .map((piece) => [
        piece,
        Object.fromEntries(
          readdirSync(join(out, piece))
            .filter((f) => PROMISED.test(f))
            .sort()
            .map((f) => [f, digest(readFileSync(join(out, piece, f)))]),
        ),
      ]),
  );
}

/** The recipes that ship, by name; `bowl` where one is of a vessel. */
export function shipped(folder = join(ROOT, 'patterns')) {
  return readdirSync(folder)
    .filter((f) => f.endsWith('.json'))
    .map((f) => {
      const file = join(folder, f);
      return { name: f.slice(0, -5), file, bowl: 'bowl' in JSON.parse(readFileSync(file, 'utf8')) };
    });
}

/**
 * Makes recipes with one Node in one environment, and gives the bytes of all they write.
 * @param {{ node?: string, env?: Record<string, string>, cwd?: string, only?: readonly string[] }} where
 * @returns {Bytes}
 */
export function bytesMade({ node = process.execPath, env = {}, cwd = ROOT, only } = {}) {
  const out = mkdtempSync(join(tmpdir(), 'bytes-'));
  const run = (...args) => {
    const options = { cwd, env: { ...process.env, ...env }, encoding: 'utf8' };
    const { status, stderr, error } = spawnSync(node, [join(ROOT, 'dist/cli.js'), ...args], options);
    if (status !== 0) throw new Error(`${args[0]} failed: ${error ?? stderr.slice(-400)}`);
  };
  // `bowl` notes its coupon's clearances beside the recipe.
  const copy = join(out, 'recipes');
  cpSync(join(ROOT, 'patterns'), copy, { recursive: true });
  try {
    const recipes = shipped(copy).filter((r) => !only || only.includes(r.name));
    run('make', ...recipes.map((r) => r.file), '--out', join(out, 'pieces'));
    const all = bytesIn(join(out, 'pieces'));
    for (const { name, file } of recipes.filter((r) => r.bowl)) {
      run('bowl', file, '--out', join(out, 'vessels', name));
      for (const [piece, files] of Object.entries(bytesIn(join(out, 'vessels', name))))
        all[`bowl ${piece}`] = files;
    }
    return all;
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
}

/** What differs between two, a line each: files that one alone has, and files of other bytes. */
export function differences(expected, found) {
  const lines = [];
  const pieces = new Set([...Object.keys(expected), ...Object.keys(found)]);
  for (const piece of [...pieces].sort()) {
    const [a, b] = [expected[piece] ?? {}, found[piece] ?? {}];
    for (const file of [...new Set([...Object.keys(a), ...Object.keys(b)])].sort())
      if (a[file] !== b[file])
        lines.push(`${piece}/${file}: ${!(file in a) ? 'new' : !(file in b) ? 'missing' : 'other bytes'}`);
  }
  return lines;
}

function main() {
  const found = bytesMade();
  if (process.argv.includes('--write')) {
    writeFileSync(GOLDEN, `${JSON.stringify(found, null, 1)}\n`);
    return;
  }
  const lines = differences(golden(), found);
  for (const line of lines) console.log(line);
  if (lines.length > 0) process.exitCode = 1;
  else console.log(`${Object.values(found).flatMap(Object.keys).length} files, all as the repository says`);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) main();
