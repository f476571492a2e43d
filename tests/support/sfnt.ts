import { deflateSync, inflateSync } from 'node:zlib';

/** Font files taken apart and put together again, for tests that damage them (OpenType 1.9 "otff", WOFF 1.0). */
export interface Sfnt {
  /** 0x00010000 for TrueType outlines, "OTTO" for CFF ones. */
  readonly flavour: number;
  readonly tables: Map<string, Uint8Array>;
}

export function readSfnt(bytes: Uint8Array): Sfnt {
  const v = view(bytes);
  if (v.getUint32(0) === 0x774f4646) return readWoff(bytes, v);
  const tables = new Map<string, Uint8Array>();
  for (let i = 0; i < v.getUint16(4); i++) {
    const at = 12 + 16 * i;
    tables.set(tag(v, at), bytes.slice(v.getUint32(at + 8), v.getUint32(at + 8) + v.getUint32(at + 12)));
  }
  return { flavour: v.getUint32(0), tables };
}

function readWoff(bytes: Uint8Array, v: DataView): Sfnt {
  const tables = new Map<string, Uint8Array>();
  for (let i = 0; i < v.getUint16(12); i++) {
    const at = 44 + 20 * i;
    const offset = v.getUint32(at + 4);
    const packed = bytes.slice(offset, offset + v.getUint32(at + 8));
    tables.set(
      tag(v, at),
      packed.length < v.getUint32(at + 12) ? new Uint8Array(inflateSync(packed)) : packed,
    );
  }
  return { flavour: v.getUint32(4), tables };
}

export function writeSfnt({ flavour, tables }: Sfnt): Uint8Array {
  const list = [...tables].sort(([a], [b]) => (a < b ? -1 : 1));
  const start = 12 + 16 * list.length;
  const out = new Uint8Array(list.reduce((n, [, t]) => n + pad(t.length), start));
  const v = view(out);
  const log = Math.floor(Math.log2(Math.max(1, list.length)));
  v.setUint32(0, flavour);
  v.setUint16(4, list.length);
  v.setUint16(6, 16 << log);
  v.setUint16(8, log);
  v.setUint16(10, 16 * list.length - (16 << log));
  let offset = start;
  list.forEach(([name, table], i) => {
    const at = 12 + 16 * i;
    putTag(out, at, name);
    out.set(table, offset);
    v.setUint32(at + 4, checksum(table));
    v.setUint32(at + 8, offset);
    v.setUint32(at + 12, table.length);
    offset += pad(table.length);
  });
  return out;
}

export function writeWoff({ flavour, tables }: Sfnt): Uint8Array {
  const list = [...tables].sort(([a], [b]) => (a < b ? -1 : 1));
  const packed = list.map(([, table]) => {
    const small = new Uint8Array(deflateSync(table));
    return small.length < table.length ? small : table;
  });
  const start = 44 + 20 * list.length;
  const out = new Uint8Array(packed.reduce((n, t) => n + pad(t.length), start));
  const v = view(out);
  v.setUint32(0, 0x774f4646);
  v.setUint32(4, flavour);
  v.setUint32(8, out.length);
  v.setUint16(12, list.length);
  v.setUint32(
    16,
    list.reduce((n, [, t]) => n + pad(t.length), 12 + 16 * list.length),
  );
  let offset = start;
  list.forEach(([name, table], i) => {
    const at = 44 + 20 * i;
    putTag(out, at, name);
    out.set(packed[i]!, offset);
    v.setUint32(at + 4, offset);
    v.setUint32(at + 8, packed[i]!.length);
    v.setUint32(at + 12, table.length);
    v.setUint32(at + 16, checksum(table));
    offset += pad(packed[i]!.length);
  });
  return out;
}

export function view(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

const pad = (n: number): number => (n + 3) & ~3;

function tag(v: DataView, at: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((i) => v.getUint8(at + i)));
}

function putTag(out: Uint8Array, at: number, name: string): void {
  for (let i = 0; i < 4; i++) out[at + i] = name.charCodeAt(i);
}

function checksum(table: Uint8Array): number {
  let sum = 0;
  for (let i = 0; i < table.length; i += 4)
    sum =
      (sum +
        ((table[i]! << 24) |
          ((table[i + 1] ?? 0) << 16) |
          ((table[i + 2] ?? 0) << 8) |
          (table[i + 3] ?? 0))) >>>
      0;
  return sum;
}
