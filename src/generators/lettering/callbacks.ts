/** A function that WASM may call: i is a 32-bit integer, f a 32-bit float. None gives anything back. */
export interface Callback {
  readonly takes: string;
  readonly call: (...values: number[]) => void;
}

/**
 * JavaScript functions as WASM functions, which alone may stand in a WASM table. The way there that every engine knows is
 * a module that imports them and exports them again (WebAssembly core specification 2.0, 5.5: binary format of modules).
 */
export function wasmFunctions(callbacks: readonly Callback[]): WebAssembly.ExportValue[] {
  const types = callbacks.map(({ takes }) => [
    0x60,
    ...vector(Array.from(takes, (t) => [t === 'f' ? 0x7d : 0x7f])),
    0x00,
  ]);
  const imports = callbacks.map((_, i) => [...name('e'), ...name(`${i}`), 0x00, i]);
  const exported = callbacks.map((_, i) => [...name(`${i}`), 0x00, i]);
  const bytes = new Uint8Array([
    ...[0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00],
    ...section(1, types),
    ...section(2, imports),
    ...section(7, exported),
  ]);
  const e = Object.fromEntries(callbacks.map(({ call }, i) => [`${i}`, call]));
  const { exports } = new WebAssembly.Instance(new WebAssembly.Module(bytes), { e });
  return callbacks.map((_, i) => exports[`${i}`]!);
}

function section(id: number, items: readonly (readonly number[])[]): number[] {
  const body = vector(items);
  return [id, ...size(body.length), ...body];
}

function vector(items: readonly (readonly number[])[]): number[] {
  return [...size(items.length), ...items.flat()];
}

function name(text: string): number[] {
  return [text.length, ...Array.from(text, (c) => c.charCodeAt(0))];
}

/** A number under 16384 in the format's own variable length (LEB128). */
function size(n: number): number[] {
  return n < 128 ? [n] : [(n & 127) | 128, n >> 7];
}
