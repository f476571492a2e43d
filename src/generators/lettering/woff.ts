import { Unzlib } from 'fflate';
import { broken, MOST_FONT_BYTES } from './font-fault.js';

/**
 * Unpacks WOFF 1 (W3C Recommendation "WOFF File Format 1.0") to the SFNT inside. Throws UnusableFont. Every size is
 * checked before it is allotted, and a table that does not unpack to the length it states is refused.
 */
export function inflateWoff(file: Uint8Array): Uint8Array<ArrayBuffer> {
  if (file.length < 44) throw broken('the file is cut short');
  const view = new DataView(file.buffer, file.byteOffset, file.length);
  const count = view.getUint16(12);
  if (count === 0 || file.length < 44 + 20 * count) throw broken('its list of tables is cut short');
  const entries = Array.from({ length: count }, (_, i) => {
    const at = 44 + 20 * i;
    const [tag, offset, packed, length, sum] = [0, 4, 8, 12, 16].map((k) => view.getUint32(at + k)) as [
      number,
      number,
      number,
      number,
      number,
    ];
    if (offset + packed > file.length || packed > length)
      throw broken('the file is cut short, or its list of tables is wrong');
    return { tag, offset, packed, length, sum };
  });
  const size = entries.reduce((sum, e) => sum + padded(e.length), 12 + 16 * count);
  if (size > MOST_FONT_BYTES) throw broken('it unpacks to more than a font may hold');

  const sfnt = new Uint8Array(size);
  const out = new DataView(sfnt.buffer);
  out.setUint32(0, view.getUint32(4));
  out.setUint16(4, count);
  // The fields for a binary search; no reader here uses them, but a right font has them.
  const steps = 31 - Math.clz32(count);
  out.setUint16(6, 16 << steps);
  out.setUint16(8, steps);
  out.setUint16(10, 16 * count - (16 << steps));
  let to = 12 + 16 * count;
  entries.forEach(({ tag, offset, packed, length, sum }, i) => {
    const at = 12 + 16 * i;
    out.setUint32(at, tag);
    out.setUint32(at + 4, sum);
    out.setUint32(at + 8, to);
    out.setUint32(at + 12, length);
    const data = file.subarray(offset, offset + packed);
    sfnt.set(packed < length ? inflated(data, length) : data, to);
    to += padded(length);
  });
  return sfnt;
}

function padded(length: number): number {
  // Lengths of more than 2^31 must not turn negative here: they are refused by their sum.
  return 4 * Math.ceil(length / 4);
}

/** So much of a table is unpacked at a time, bytes: at most a thousand times as much comes of it. */
const PIECE = 4096;

/**
 * Piece by piece: what is packed may unpack to a thousand times the length that it states, and unpacking it at one go
 * goes on to its end.
 */
function inflated(data: Uint8Array, length: number): Uint8Array {
  const table = new Uint8Array(length);
  let n = 0;
  let over = false;
  const stream = new Unzlib((part) => {
    over ||= n + part.length > length;
    if (!over) table.set(part, n);
    n += part.length;
  });
  try {
    for (let at = 0; at < data.length && !over; at += PIECE)
      stream.push(data.subarray(at, at + PIECE), at + PIECE >= data.length);
  } catch {
    throw broken('a table of it does not unpack');
  }
  if (n !== length) throw broken('a table of it unpacks to another length than it states');
  return table;
}
