import { zlibSync } from 'fflate';
import type { Raster } from './picture.js';

const SIGNATURE = [137, 80, 78, 71, 13, 10, 26, 10];

/** A picture as PNG (ISO/IEC 15948): true colour, 8 bits, rows unfiltered. */
export function png({ width, height, pixels }: Raster): Uint8Array {
  const head = new Uint8Array(13);
  const view = new DataView(head.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  head.set([8, 2, 0, 0, 0], 8);
  const rows = new Uint8Array(height * (1 + 3 * width));
  for (let y = 0; y < height; y++)
    rows.set(pixels.subarray(3 * width * y, 3 * width * (y + 1)), y * (1 + 3 * width) + 1);
  const parts = [
    Uint8Array.from(SIGNATURE),
    chunk('IHDR', head),
    chunk('IDAT', zlibSync(rows, { level: 9 })),
    chunk('IEND', new Uint8Array(0)),
  ];
  const out = new Uint8Array(parts.reduce((n, p) => n + p.length, 0));
  let at = 0;
  for (const p of parts) {
    out.set(p, at);
    at += p.length;
  }
  return out;
}

function chunk(type: string, data: Uint8Array): Uint8Array {
  const out = new Uint8Array(12 + data.length);
  const view = new DataView(out.buffer);
  view.setUint32(0, data.length);
  for (let k = 0; k < 4; k++) out[4 + k] = type.charCodeAt(k);
  out.set(data, 8);
  view.setUint32(8 + data.length, crc(out.subarray(4, 8 + data.length)));
  return out;
}

/** The standard's cyclic redundancy check. */
function crc(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (const b of bytes) {
    c ^= b;
    for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  }
  return (c ^ 0xffffffff) >>> 0;
}
