/** One thing wrong with what the user gave: where (a path such as `cutter.diameter`), what, and what to do. */
export interface Fault {
  readonly where: string;
  readonly message: string;
  /** What the path is in, when there is a file: `recipe.json:7`, `recipe.json:7:12` or `--set`. */
  readonly source?: string;
}

/** A fault as one line: source, path, message. */
export function faultLine(f: Fault): string {
  return printable([f.source, f.where, f.message].filter((s) => s !== undefined && s !== '').join(': '));
}

/** A key as a path shows it: it can be as long as its file, and a line of message cannot. */
export function shortKey(key: string): string {
  return key.length > 40 ? `${key.slice(0, 40)}...` : key;
}

/** Text with every character that a terminal might act on (controls, line breaks, marks of direction) shown as "?". */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu, '?');
}

/** Bad input or usage: exit code 2. Carries every fault found, each one clear line. */
export class BadInput extends Error {
  readonly faults: readonly Fault[];
  constructor(faults: readonly Fault[]) {
    super(faults.map(faultLine).join('\n'));
    this.name = 'BadInput';
    this.faults = faults;
  }
}

/** Sound input that cannot be cut as asked: exit code 1. `at` is the place on the piece, mm, when there is one. */
export class Refusal extends Error {
  readonly code: string;
  readonly at: readonly [number, number] | null;
  constructor(code: string, message: string, at: readonly [number, number] | null = null) {
    super(message);
    this.name = 'Refusal';
    this.code = code;
    this.at = at;
  }
}
