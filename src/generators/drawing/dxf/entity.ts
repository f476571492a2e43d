import { shortened } from '../shortened.js';
import { Unreadable } from '../unreadable.js';
import { numberOf } from './groups.js';

/** An entity as the file has it: group codes and values in their order. */
export class Entity {
  readonly codes: number[] = [];
  readonly values: string[] = [];

  constructor(
    readonly kind: string,
    /** The line of its name. */
    readonly line: number,
  ) {}

  add(code: number, value: string): void {
    this.codes.push(code);
    this.values.push(value);
  }

  /** The first value of a code; undefined when there is none. */
  text(code: number): string | undefined {
    const i = this.codes.indexOf(code);
    return i < 0 ? undefined : this.values[i]!.trim();
  }

  /** The number of a code. Throws Unreadable for one that is no number. */
  number(code: number, missing: number): number {
    const i = this.codes.indexOf(code);
    return i < 0 ? missing : asNumber(code, this.values[i]!);
  }

  /** The number of the i-th group. Throws Unreadable for one that is no number. */
  numberAt(i: number): number {
    return asNumber(this.codes[i]!, this.values[i]!);
  }

  /** Is a bit set in the flags of a code? */
  flag(code: number, bit: number): boolean {
    const flags = this.number(code, 0);
    return Math.floor(Math.abs(flags) / bit) % 2 === 1;
  }

  /** Every number of a code, in their order. */
  list(code: number): number[] {
    const out: number[] = [];
    for (let i = 0; i < this.codes.length; i++)
      if (this.codes[i] === code) out.push(asNumber(code, this.values[i]!));
    return out;
  }

  /** Points by the codes of x and y; a y follows its x. */
  points(x: number): [number, number][] {
    const out: [number, number][] = [];
    for (let i = 0; i < this.codes.length; i++) {
      if (this.codes[i] === x) out.push([asNumber(x, this.values[i]!), 0]);
      else if (this.codes[i] === x + 10 && out.length > 0)
        out[out.length - 1]![1] = asNumber(x + 10, this.values[i]!);
    }
    return out;
  }
}

function asNumber(code: number, value: string): number {
  const n = numberOf(value);
  if (n === null)
    throw new Unreadable(
      `has "${shortened(value)}" under group code ${code}, which is no number that can be drawn`,
    );
  return n;
}
