import { deflateSync } from 'node:zlib';
import type { Bomb } from './bomb.js';
import { join } from './cff.js';
import { view, writeWoff } from './sfnt.js';

const wrapped = (name: string, change: (v: DataView) => void): Bomb => ({
  name,
  make(font) {
    const bytes = writeWoff(font('ttf'));
    change(view(bytes));
    return bytes;
  },
});

/** A WOFF whose first table unpacks to `mb` megabytes of zeros; its directory owns to it or says `claimed` bytes. */
const zip = (mb: number, claimed: number): Bomb => ({
  name: `woff: ${mb} MB unpacked, ${claimed} said`,
  make(font) {
    const bytes = writeWoff(font('ttf'));
    const packed = zlibOfZeros(mb);
    const v = view(bytes);
    v.setUint32(44 + 4, bytes.length);
    v.setUint32(44 + 8, packed.length);
    v.setUint32(44 + 12, claimed);
    v.setUint32(8, bytes.length + packed.length);
    return join([bytes, packed]);
  },
});

/** A sound zlib stream of `mb` megabytes of zeros, a thousandth of that itself: the middle of one block, drawn out. */
function zlibOfZeros(mb: number): Uint8Array {
  const small = new Uint8Array(deflateSync(new Uint8Array(4e6), { level: 9 }));
  const middle = small.length >> 1;
  // Each byte there is four pairs of a length of 258 and a distance of 1, one bit each.
  const more = Math.round(((mb - 4) * 1e6) / (4 * 258));
  const out = join([small.slice(0, middle), new Uint8Array(more).fill(small[middle]!), small.slice(middle)]);
  // Adler-32 of n zeros: 1 below, n above, modulo 65521 (RFC 1950).
  view(out).setUint32(out.length - 4, ((4e6 + more * 4 * 258) % 65521) * 65536 + 1);
  return out;
}

/** WOFF wrappings whose sizes lie. */
export const woffBombs: readonly Bomb[] = [
  zip(300, 300e6),
  zip(300, 4096),
  zip(5, 0xffffffff),
  zip(10_000, 15e6),
  wrapped('woff: a table said to be 4 GB', (v) => v.setUint32(44 + 12, 0xffffffff)),
  wrapped('woff: all sizes 0', (v) => {
    for (let i = 0; i < v.getUint16(12); i++) v.setUint32(44 + 20 * i + 8, 0);
  }),
  wrapped('woff: packed larger than unpacked', (v) => v.setUint32(44 + 8, 0x7fffffff)),
  wrapped('woff: total size 4 GB', (v) => {
    v.setUint32(16, 0xffffffff);
    v.setUint32(8, 0xffffffff);
  }),
  wrapped('woff: 65,535 tables', (v) => v.setUint16(12, 65_535)),
];
