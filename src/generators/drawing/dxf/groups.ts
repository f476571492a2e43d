import { BadInput, Refusal } from '../../../schema/fault.js';
import { shortened } from '../shortened.js';

/** Bound that keeps a hostile file from taking time and memory. */
export const MOST_DXF = 20_000_000;

/** Larger numbers than this are a fault of the file: no unit makes wood of them. */
const LARGEST = 1e15;

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

/**
 * The group codes and values of a DXF text, one pair after the other, with their lines. Reads on demand, so that a large
 * file never lies in memory twice.
 */
export class Groups {
  code = 0;
  value = '';
  /** Line of the value, from 1. */
  line = 0;
  readonly source: string;
  readonly #text: string;
  #at = 0;
  #ended = false;

  constructor(text: string, source: string) {
    this.source = source;
    if (text.length > MOST_DXF)
      throw new Refusal(
        'too-large',
        `${source}: holds ${(text.length / 1e6).toFixed(1)} MB; a drawing is ${MOST_DXF / 1e6} MB at most: make it simpler`,
      );
    this.#text = text;
    if (text.charCodeAt(0) === 0xfeff) this.#at = 1;
  }

  /** Goes on to the next pair; false at the end of the file. Throws BadInput for a code that is no number. */
  next(): boolean {
    if (this.#ended || this.#at >= this.#text.length) return false;
    const code = this.#line();
    if (code.trim() === '' && this.#text.slice(this.#at, this.#at + 1000).trim() === '') {
      this.#ended = true;
      return false;
    }
    this.code = Number(code);
    if (!/^\s*-?\d{1,5}\s*$/.test(code))
      throw this.fault(
        '',
        `has "${shortened(code)}" where a group code (a whole number) should stand; save the drawing as DXF again`,
      );
    if (this.#at >= this.#text.length)
      throw this.fault('', 'ends in the middle of a pair; save the drawing again');
    this.value = this.#line();
    return true;
  }

  #line(): string {
    const end = this.#text.indexOf('\n', this.#at);
    const stop = end < 0 ? this.#text.length : end;
    const line = this.#text.slice(this.#at, this.#text.charCodeAt(stop - 1) === 13 ? stop - 1 : stop);
    this.#at = stop + 1;
    this.line++;
    return line;
  }

  fault(where: string, message: string, line = this.line): BadInput {
    return new BadInput([{ source: `${this.source}:${line}`, where, message }]);
  }
}

/** The value of a group as a number; null when it is none, or none that any wood could have. */
export function numberOf(value: string): number | null {
  const text = value.trim();
  const n = NUMBER.test(text) ? Number(text) : Number.NaN;
  return Math.abs(n) <= LARGEST ? n : null;
}
