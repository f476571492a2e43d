/** A small writer of CFF tables (Adobe Technical Notes 5176 and 5177), so that tests have an OpenType font with cubic outlines. */
export interface Cff {
  readonly charstrings: readonly Uint8Array[];
  /** Global subroutines; number 0 is called with -107 below 1,240 of them. */
  readonly subroutines?: readonly Uint8Array[];
}

export type Command =
  | { readonly type: 'M' | 'L'; readonly x: number; readonly y: number }
  | { readonly type: 'Q'; readonly x1: number; readonly y1: number; readonly x: number; readonly y: number }
  | {
      readonly type: 'C';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly x: number;
      readonly y: number;
    }
  | { readonly type: 'Z' };

export const OP = { rlineto: 5, rrcurveto: 8, ret: 11, endchar: 14, rmoveto: 21, callgsubr: 29 } as const;

/** A whole number of a charstring or a dictionary, always three bytes. */
export function int(n: number): number[] {
  const v = Math.max(-32768, Math.min(32767, Math.round(n)));
  return [28, (v >> 8) & 255, v & 255];
}

/** The charstring of an outline in whole units. */
export function charstring(commands: readonly Command[]): Uint8Array {
  const out: number[] = [];
  let x = 0;
  let y = 0;
  const to = (px: number, py: number): void => {
    out.push(...int(Math.round(px) - x), ...int(Math.round(py) - y));
    x = Math.round(px);
    y = Math.round(py);
  };
  for (const c of commands) {
    if (c.type === 'Z') continue;
    if (c.type === 'Q') {
      const [x0, y0] = [x, y];
      to(x0 + (2 / 3) * (c.x1 - x0), y0 + (2 / 3) * (c.y1 - y0));
      to(c.x + (2 / 3) * (c.x1 - c.x), c.y + (2 / 3) * (c.y1 - c.y));
    } else if (c.type === 'C') {
      to(c.x1, c.y1);
      to(c.x2, c.y2);
    }
    to(c.x, c.y);
    out.push(c.type === 'M' ? OP.rmoveto : c.type === 'L' ? OP.rlineto : OP.rrcurveto);
  }
  return Uint8Array.from([...out, OP.endchar]);
}

export function cffTable({ charstrings, subroutines = [] }: Cff): Uint8Array {
  const header = Uint8Array.from([1, 0, 4, 4]);
  const text = (s: string): Uint8Array => Uint8Array.from(s, (c) => c.charCodeAt(0));
  const name = index([text('Test')]);
  const strings = index([text('glyph')]);
  const subrs = index(subroutines);
  // Charset format 2: one run from string id 1 over all glyphs but the first.
  const n = charstrings.length - 2;
  const charset = Uint8Array.from([2, 0, 1, n >> 8, n & 255]);
  const glyphs = index(charstrings);
  const privateDict = Uint8Array.from([...int(0), 20]);
  // Five-byte numbers keep the dictionary's size the same whatever the offsets are.
  const long = (v: number): number[] => [29, v >>> 24, (v >> 16) & 255, (v >> 8) & 255, v & 255];
  const dict = (a: number, b: number, c: number): Uint8Array =>
    index([Uint8Array.from([...long(a), 15, ...long(b), 17, ...long(privateDict.length), ...long(c), 18])]);
  const first = header.length + name.length + dict(0, 0, 0).length + strings.length + subrs.length;
  const second = first + charset.length;
  const third = second + glyphs.length;
  return join([header, name, dict(first, second, third), strings, subrs, charset, glyphs, privateDict]);
}

function index(items: readonly Uint8Array[]): Uint8Array {
  if (items.length === 0) return Uint8Array.from([0, 0]);
  const out = [items.length >> 8, items.length & 255, 4];
  let at = 1;
  for (const size of [0, ...items.map((i) => i.length)]) {
    at += size;
    out.push(at >>> 24, (at >> 16) & 255, (at >> 8) & 255, at & 255);
  }
  return join([Uint8Array.from(out), ...items]);
}

export function join(parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((n, p) => n + p.length, 0));
  let at = 0;
  for (const p of parts) {
    out.set(p, at);
    at += p.length;
  }
  return out;
}
