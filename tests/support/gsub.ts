/** Writers of glyph substitution tables (OpenType 1.9 "GSUB") for fonts that try their reader. */

export const u16 = (...ns: number[]): number[] => ns.flatMap((n) => [(n >> 8) & 255, n & 255]);
export const u32 = (...ns: number[]): number[] =>
  ns.flatMap((n) => [n >>> 24, (n >> 16) & 255, (n >> 8) & 255, n & 255]);

/** A GSUB table of `lookups`, all of them in the feature `ccmp` (always on) of the scripts DFLT and latn. */
export function gsub(lookups: readonly (readonly number[])[]): Uint8Array {
  const script = [...u16(4, 0), ...u16(0, 0xffff, 1, 0)];
  const tag = (s: string): number[] => Array.from(s, (c) => c.charCodeAt(0));
  const scripts = [...u16(2), ...tag('DFLT'), ...u16(14), ...tag('latn'), ...u16(14), ...script];
  const features = [
    ...u16(1),
    ...tag('ccmp'),
    ...u16(8),
    ...u16(0, lookups.length),
    ...u16(...lookups.keys()),
  ];
  let at = 2 + 2 * lookups.length;
  const starts = lookups.map((l) => (at += l.length) - l.length);
  const list = [...u16(lookups.length, ...starts), ...lookups.flat()];
  const first = 10 + scripts.length;
  return Uint8Array.from([
    ...u16(1, 0, 10, first, first + features.length),
    ...scripts,
    ...features,
    ...list,
  ]);
}
/** Coverage of all glyphs as one range. */
const all = (count: number): number[] => u16(2, 1, 0, count - 1, 0);
/** A lookup of one subtable. */
const lookup = (type: number, subtable: readonly number[]): number[] => [...u16(type, 0, 1, 8), ...subtable];

/** Every glyph becomes `n` of one glyph; all share one record of it. */
export function multiply(count: number, n: number): number[] {
  const end = 6 + 2 * count;
  const offsets = new Array<number>(count).fill(end);
  const sequence = u16(n, ...new Array<number>(n).fill(40));
  return lookup(2, [...u16(1, end + sequence.length, count, ...offsets), ...sequence, ...all(count)]);
}

/** A context lookup that, wherever it matches one glyph, runs the lookup `next` there, `times` times. */
export function context(count: number, next: number, times: number): number[] {
  const head = u16(3, 1, times, 8 + 4 * times, ...new Array<number[]>(times).fill([0, next]).flat());
  return lookup(5, [...head, ...all(count)]);
}
