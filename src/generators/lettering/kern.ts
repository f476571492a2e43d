import type { Table } from './sfnt.js';

/** What a font's old kern table adds to the advance of the first of two glyphs, font units. */
export type Kerning = (left: number, right: number) => number;

/**
 * The pairs of an old kern table (OpenType 1.9.1, "kern": version 0, subtables of format 0, horizontal), for a font whose GPOS
 * has no kerning: the build of HarfBuzz that is used leaves these tables out. Null when there are none. What does not
 * lie inside the table counts for nothing.
 */
export function oldKerning(sfnt: Uint8Array, tables: ReadonlyMap<string, Table>): Kerning | null {
  const kern = viewOf(sfnt, tables.get('kern'));
  if (!kern || kern.byteLength < 4 || kern.getUint16(0) !== 0 || kernsByGpos(sfnt, tables)) return null;
  const pairs = new Map<number, number>();
  let at = 4;
  for (let k = kern.getUint16(2); k > 0 && at + 14 <= kern.byteLength; k--) {
    const length = kern.getUint16(at + 2);
    const coverage = kern.getUint16(at + 4);
    // Format 0 in the upper byte; of the flags only "horizontal" may be set.
    if (coverage === 1) {
      const count = Math.min(kern.getUint16(at + 6), Math.floor((kern.byteLength - at - 14) / 6));
      for (let i = 0; i < count; i++) {
        const p = at + 14 + 6 * i;
        const key = kern.getUint32(p);
        pairs.set(key, (pairs.get(key) ?? 0) + kern.getInt16(p + 4));
      }
    }
    if (length === 0) break;
    at += length;
  }
  return pairs.size === 0 ? null : (left, right) => pairs.get(left * 65536 + right) ?? 0;
}

/** Has the GPOS table a feature for kerning? */
function kernsByGpos(sfnt: Uint8Array, tables: ReadonlyMap<string, Table>): boolean {
  const gpos = viewOf(sfnt, tables.get('GPOS'));
  if (!gpos || gpos.byteLength < 10) return false;
  const list = gpos.getUint16(6);
  if (list + 2 > gpos.byteLength) return false;
  const count = Math.min(gpos.getUint16(list), Math.floor((gpos.byteLength - list - 2) / 6));
  for (let i = 0; i < count; i++) if (gpos.getUint32(list + 2 + 6 * i) === KERN) return true;
  return false;
}

const KERN = 0x6b65726e;

function viewOf(sfnt: Uint8Array, table: Table | undefined): DataView | null {
  return table ? new DataView(sfnt.buffer, sfnt.byteOffset + table.offset, table.length) : null;
}
