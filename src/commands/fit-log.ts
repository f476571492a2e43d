import { readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileFault } from '../disk/files.js';
import { quietly } from '../disk/leftovers.js';
import { couponLadder } from '../fit/log/coupon-ladder.js';
import { LOG_VERSION, type LogLine, lineText } from '../fit/log/entry.js';
import { LINE_START, type Reading, readLine } from '../fit/log/read-line.js';
import { BadInput } from '../schema/fault.js';
import { append, bytesOf, linesOf } from './append.js';

/*
 * The log is only ever added to (append.ts says how); nothing in it is rewritten. Damaged lines stay where they are and
 * are copied aside. Should a writer die between another's look at the last byte and its write, a sound line ends up
 * right behind half a line; readLine finds it there. So no result that was confirmed to the user can be lost.
 */

const ENDING = '.fitlog.jsonl';

export interface LogFile {
  readonly path: string;
  /** The sound lines with their line numbers, from 1. */
  readonly lines: readonly { readonly number: number; readonly line: LogLine }[];
  /** What could not be used, a clause each with its line number. */
  readonly problems: readonly string[];
  /** The damaged lines, byte for byte, without line breaks. */
  readonly damaged: readonly Buffer[];
}

/** Where the log of a recipe is: `lid.json` has `lid.fitlog.jsonl` beside it. */
export function logPath(recipePath: string): string {
  return join(dirname(recipePath), `${basename(recipePath).replace(/\.json$/i, '')}${ENDING}`);
}

/** Reads a log; one that is not there is empty. Throws BadInput when it cannot be read at all. */
export function readLog(path: string): LogFile {
  const lines: { number: number; line: LogLine }[] = [];
  const problems: string[] = [];
  const damaged: Buffer[] = [];
  linesOf(settled(path)).forEach((bytes, k) => {
    const number = k + 1;
    for (const { reading, piece } of readings(bytes)) {
      if (reading.kind === 'good') lines.push({ number, line: reading.line });
      else if (reading.kind === 'other-version')
        problems.push(
          `line ${number} is of version ${reading.version}, which is not known here: left as it is, not used`,
        );
      else if (reading.kind === 'damaged') {
        problems.push(`line ${number} is damaged and is not used: ${reading.reason}`);
        damaged.push(piece);
      }
    }
  });
  return { path, lines, problems, damaged };
}

/**
 * What a line holds: one thing, or, when it is not sound as a whole, what begins at each place where a line of ours
 * begins. So a sound line that was put right behind half a line still counts.
 */
function readings(bytes: Buffer): { reading: Reading; piece: Buffer }[] {
  const read = (piece: Buffer): { reading: Reading; piece: Buffer } => {
    const text = decoded(piece);
    return { reading: text === null ? NO_TEXT : readLine(text), piece };
  };
  const whole = read(bytes);
  if (whole.reading.kind !== 'damaged') return [whole];
  const pieces: Buffer[] = [];
  let from = 0;
  for (let at = bytes.indexOf(LINE_START, 1); at > 0; at = bytes.indexOf(LINE_START, at + 1)) {
    pieces.push(bytes.subarray(from, at));
    from = at;
  }
  return [...pieces, bytes.subarray(from)].map(read);
}

const NO_TEXT: Reading = { kind: 'damaged', reason: 'it is no UTF-8 text' };

/**
 * Copies the damaged lines to NAME.fitlog.damaged, those that are not there yet. Returns what to tell the user about it,
 * or null when there was nothing to do.
 */
export function keepAside({ path, damaged }: LogFile): string | null {
  if (damaged.length === 0) return null;
  const aside = path.replace(/\.jsonl$/, '.damaged');
  try {
    const there = new Set(linesOf(bytesOf(aside)).map(exact));
    const fresh = damaged.filter((line) => !there.has(exact(line)));
    if (fresh.length === 0) return `damaged lines are kept in ${aside}`;
    append(aside, Buffer.concat(fresh.flatMap((line) => [line, Buffer.from('\n')])));
    return `damaged lines are copied to ${aside}; they stay in the log too`;
  } catch (e) {
    if (!(e instanceof BadInput)) throw e;
    return `damaged lines stay in the log; they could not be copied aside: ${e.message}`;
  }
}

/** Adds a line to a log, which is made when there is none, and waits until the disk has it. Throws BadInput. */
export function appendLine(path: string, line: LogLine): void {
  append(path, Buffer.from(`${lineText(line)}\n`));
}

/**
 * Writes into a recipe's log which clearances a coupon drawn for it has, mm per side, so that `fit record --step` knows
 * them. The same coupon drawn again is not written again. Throws BadInput. Returns what notes the earlier coupon again, as
 * far as there was one and the disk lets it.
 */
export function noteCoupon(recipePath: string, steps: readonly number[]): () => void {
  const log = readLog(logPath(recipePath));
  keepAside(log);
  const last = couponLadder(log.lines.map((l) => l.line));
  if (last !== null && last.length === steps.length && last.every((c, k) => c === steps[k]))
    return () => undefined;
  const note = (ladder: readonly number[]): void =>
    appendLine(log.path, { version: LOG_VERSION, kind: 'coupon', ladder });
  note(steps);
  return () => {
    if (last !== null) quietly(() => note(last));
  };
}

/** Other logs in the same folder, by name. */
export function otherLogs(path: string): string[] {
  const folder = dirname(path);
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith(ENDING) && name !== basename(path))
      .sort()
      .map((name) => join(folder, name));
  } catch (e) {
    throw fileFault(e, `cannot read ${folder}`, 'make it readable');
  }
}

/** The bytes of a log, read again for a moment when it ends in half a line that somebody may just be writing. */
function settled(path: string): Buffer {
  let bytes = bytesOf(path);
  for (let tries = 0; tries < 5; tries++) {
    const last = linesOf(bytes).at(-1);
    if (last === undefined || bytes.at(-1) === 0x0a || readLine(String(last)).kind !== 'damaged') break;
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 10);
    bytes = bytesOf(path);
  }
  return bytes;
}

function decoded(bytes: Buffer): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** Bytes as text that keeps every one apart, whatever they are. */
function exact(bytes: Buffer): string {
  return bytes.toString('latin1');
}
