import { broken, MOST_FONT_BYTES, UnusableFont } from './font-fault.js';
import { inflateWoff } from './woff.js';

export { MOST_FONT_BYTES, UnusableFont } from './font-fault.js';

const CONVERT = 'convert it to TTF, OTF or WOFF with a font editor, or use that file of the same font';

/** Tables that a font needs to be set; beside them glyf and loca, or CFF or CFF2. */
const NEEDED = ['head', 'hhea', 'hmtx', 'maxp', 'cmap'] as const;

export interface Table {
  readonly tag: string;
  readonly offset: number;
  readonly length: number;
}

/**
 * The plain SFNT (TTF or OTF) in a font file: as it is, or unpacked from WOFF. The table directory and the counts that
 * the tables rest on are checked (OpenType 1.9.1, "otff", "head", "maxp", "hhea"). Throws UnusableFont.
 */
export function sfntOf(file: Uint8Array): Uint8Array {
  if (file.length > MOST_FONT_BYTES)
    throw new UnusableFont(
      `holds ${(file.length / 1e6).toFixed(1)} MB; a font is ${MOST_FONT_BYTES / 1e6} MB at most`,
    );
  const kind = signature(file);
  if (kind === 'wOF2') throw new UnusableFont(`is a WOFF2 font, which is not read; ${CONVERT}`);
  if (kind === 'ttcf')
    throw new UnusableFont(
      `is a collection of fonts, which is not read; save the one font from it as TTF or OTF`,
    );
  if (kind === 'wOFF') return checked(inflateWoff(file));
  if (kind === 'OTTO' || kind === 'true' || kind === '\0\u0001\0\0') return checked(file);
  throw new UnusableFont('is no font file that can be read; give a TTF, OTF or WOFF font');
}

function signature(file: Uint8Array): string {
  return String.fromCharCode(...file.subarray(0, 4));
}

function checked(sfnt: Uint8Array): Uint8Array {
  const tables = directory(sfnt);
  for (const tag of NEEDED) if (!tables.has(tag)) throw broken(`it has no ${tag} table`);
  if (!(tables.has('CFF ') || tables.has('CFF2') || (tables.has('glyf') && tables.has('loca'))))
    throw new UnusableFont('has no outlines to cut, only pictures or none; use another font');
  const head = table(sfnt, tables, 'head', 54);
  const unitsPerEm = head.getUint16(18);
  if (head.getUint32(12) !== 0x5f0f3cf5 || unitsPerEm < 16 || unitsPerEm > 16384)
    throw broken('its head table makes no sense');
  const glyphs = table(sfnt, tables, 'maxp', 6).getUint16(4);
  if (glyphs === 0) throw broken('it has no glyphs');
  const metrics = table(sfnt, tables, 'hhea', 36).getUint16(34);
  const { length } = tables.get('hmtx')!;
  if (metrics === 0 || metrics > glyphs || length < 4 * metrics)
    throw broken('its widths do not match its glyphs');
  const loca = tables.get('loca');
  if (tables.has('glyf') && loca && loca.length < (head.getInt16(50) === 0 ? 2 : 4) * (glyphs + 1))
    throw broken('its outlines do not match its glyphs');
  return sfnt;
}

function table(sfnt: Uint8Array, tables: ReadonlyMap<string, Table>, tag: string, least: number): DataView {
  const { offset, length } = tables.get(tag)!;
  if (length < least) throw broken(`its ${tag} table is cut short`);
  return new DataView(sfnt.buffer, sfnt.byteOffset + offset, length);
}

/** The tables of an SFNT by tag, all of them inside the file. */
export function directory(sfnt: Uint8Array): Map<string, Table> {
  const view = new DataView(sfnt.buffer, sfnt.byteOffset, sfnt.length);
  const count = sfnt.length < 12 ? 0 : view.getUint16(4);
  if (count === 0 || sfnt.length < 12 + 16 * count) throw broken('its list of tables is cut short');
  const tables = new Map<string, Table>();
  for (let i = 0; i < count; i++) {
    const at = 12 + 16 * i;
    const tag = String.fromCharCode(...sfnt.subarray(at, at + 4));
    const offset = view.getUint32(at + 8);
    const length = view.getUint32(at + 12);
    if (offset + length > sfnt.length) throw broken('the file is cut short, or its list of tables is wrong');
    if (tables.has(tag)) throw broken('it lists a table twice');
    tables.set(tag, { tag, offset, length });
  }
  return tables;
}
