/**
 * A disk that fails on command. As a preload (`node --import faulty-fs.mjs dist/cli.js ...`) it takes its plan from
 * INLAYWRIGHT_FAULT, as JSON; otherwise from `arm`. Calls of node:fs on files below `root` are counted, those only that can
 * meet what is planned, and the one with number `at` meets it: `kill` ends the process on the spot, a code is thrown, and
 * `wait` holds the process until as many as planned wait in the same place, so that they go on at the same time.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { constants } from 'node:os';
import { join, resolve, sep } from 'node:path';

/** What writes to an open file, and what makes, moves or removes one by its name. */
const WRITES = ['writeSync', 'fsyncSync'];
const CHANGES = ['mkdirSync', 'renameSync', 'rmSync', 'rmdirSync', 'writeFileSync'];
const READS = ['readFileSync', 'readdirSync'];
const LOOKS = ['lstatSync', 'statSync'];
/** Which calls can meet what; opening a file counts as a change when it may make one. */
const MEETS = {
  kill: [...WRITES, ...CHANGES],
  wait: [...WRITES, ...CHANGES],
  ENOSPC: ['writeSync', 'mkdirSync', 'renameSync', 'writeFileSync'],
  EROFS: CHANGES,
  EMFILE: [...READS, 'openSync', 'rmSync', 'writeFileSync'],
  EACCES: [...CHANGES, ...READS, ...LOOKS, 'openSync'],
  EIO: [...WRITES, ...CHANGES, ...READS, ...LOOKS, 'openSync', 'readSync', 'fstatSync'],
};
const NAMES = [...MEETS.EIO, 'closeSync'];

const real = Object.fromEntries(NAMES.map((name) => [name, fs[name]]));
let plan = null;
let met = [];
let calls = noCalls();
let inside = false;
const opened = new Set();

/** `{ root, at, what, half, lasting }`: `half` does half of the call first, `lasting` lets all later calls fail too. */
export function arm(given) {
  plan = given;
  met = [];
  calls = noCalls();
}

/** Ends it. Returns the names of the calls that can meet each fault, and of those that met the planned one. */
export function disarm() {
  plan = null;
  return { calls, met };
}

for (const name of NAMES)
  fs[name] = (...args) => {
    // Node's own functions call each other; the outermost is the one that the program made.
    if (plan === null || inside || !isBelow(name, args)) return real[name](...args);
    inside = true;
    try {
      for (const what of Object.keys(MEETS)) if (canMeet(what, name, args)) calls[what].push(name);
      if (canMeet(plan.what, name, args) && isHit(calls[plan.what].length)) {
        met.push(name);
        if (plan.what !== 'wait') return strike(name, args);
        waitForAll(plan.wait);
      }
      const result = real[name](...args);
      if (name === 'openSync') opened.add(result);
      if (name === 'closeSync') opened.delete(args[0]);
      return result;
    } finally {
      inside = false;
    }
  };
syncBuiltinESMExports();

function isBelow(name, [path, to]) {
  if (typeof path === 'number') return opened.has(path);
  const paths = name === 'renameSync' ? [path, to] : [path];
  return paths.some((p) => typeof p === 'string' && resolve(p).startsWith(plan.root + sep));
}

function canMeet(what, name, [path, flags]) {
  // What is not there is never removed, whatever the disk is like.
  if (name === 'rmSync' && !fs.existsSync(path)) return false;
  if (MEETS[what].includes(name)) return true;
  if (name !== 'openSync' || what === 'EMFILE') return false;
  return typeof flags === 'string' ? /[wa]/.test(flags) : (flags & fs.constants.O_CREAT) !== 0;
}

function noCalls() {
  return Object.fromEntries(Object.keys(MEETS).map((what) => [what, []]));
}

function isHit(n) {
  return plan.lasting ? n >= plan.at : n === plan.at;
}

/** Waits for the others, but not for ever: one of them may have ended before it came here. */
function waitForAll({ place, count }) {
  real.writeFileSync(join(place, `${process.pid}`), '');
  for (let k = 0; k < 5000 && real.readdirSync(place).length < count; k++)
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2);
}

function strike(name, args) {
  const written = plan.half ? half(name, args) : undefined;
  if (plan.what === 'kill') process.kill(process.pid, 'SIGKILL');
  // A disk that fills up in the middle of a write says how much it took, and not that it failed.
  if (written !== undefined && plan.what === 'ENOSPC') return written;
  const at = typeof args[0] === 'string' ? ` '${args[0]}'` : '';
  throw Object.assign(new Error(`${plan.what}: made to fail, ${name.replace('Sync', '')}${at}`), {
    code: plan.what,
    errno: -constants.errno[plan.what],
    syscall: name.replace('Sync', ''),
  });
}

/** Does half of what was asked, where a call can be half done. Returns the bytes that a write took. */
function half(name, [target, content]) {
  if (name === 'writeFileSync') {
    const bytes = Buffer.from(content);
    real.writeFileSync(target, bytes.subarray(0, bytes.length >> 1));
  } else if (name === 'writeSync') return real.writeSync(target, content.subarray(0, content.length >> 1));
  else if (name === 'rmSync' && fs.statSync(target, { throwIfNoEntry: false })?.isDirectory()) {
    const files = real.readdirSync(target);
    for (const file of files.slice(0, files.length >> 1)) real.rmSync(join(target, file));
  }
}

if (process.env.INLAYWRIGHT_FAULT) arm(JSON.parse(process.env.INLAYWRIGHT_FAULT));
