/** One thing wrong with what the user gave: where (a path such as `cutter.diameter`), what, and what to do. */
export interface Fault {
  readonly where: string;
  readonly message: string;
}

/** Bad input or usage: exit code 2. Carries every fault found, each one clear line. */
export class BadInput extends Error {
  readonly faults: readonly Fault[];
  constructor(faults: readonly Fault[]) {
    super(faults.map((f) => (f.where ? `${f.where}: ${f.message}` : f.message)).join('\n'));
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
