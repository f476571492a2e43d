import { type Bomb, countOf, sfnt } from './bomb.js';
import { cffBombs } from './bomb-cff.js';
import { woffBombs } from './bomb-woff.js';
import { join } from './cff.js';
import { context, gsub, multiply, u16, u32 } from './gsub.js';
import { view } from './sfnt.js';

/** Gives every glyph from the first on a record of its own making: `glyph(i)`, bytes. */
function glyphs(
  tables: Map<string, Uint8Array>,
  glyph: (i: number, count: number) => readonly number[],
): void {
  const count = view(tables.get('maxp')!).getUint16(4);
  const records = Array.from({ length: count }, (_, i) => {
    const bytes = glyph(i, count);
    return Uint8Array.from([...bytes, ...new Array<number>((4 - (bytes.length % 4)) % 4).fill(0)]);
  });
  let at = 0;
  const offsets = [0, ...records.map((r) => (at += r.length))];
  tables.set('glyf', join(records));
  tables.set('loca', Uint8Array.from(u32(...offsets)));
  view(tables.get('head')!).setUint16(50, 1);
}

/** A composite glyph of the given parts, each where it stands. */
const composite = (...parts: number[]): number[] => [
  ...u16(-1, 0, 0, 500, 700),
  ...parts.flatMap((p, k) => u16(k < parts.length - 1 ? 0x23 : 0x03, p, 0, 0)),
];
const square = [...u16(1, 0, 0, 500, 700), ...u16(3, 0), 1, 1, 1, 1, ...u16(0, 500, 0, -500, 0, 0, 700, 0)];
const depth = 30;

/** The cmap, rewritten as one table of the given bytes. */
const cmap = (...table: number[]): Uint8Array => Uint8Array.from([...u16(0, 1, 3, 10), ...u32(12), ...table]);

const text = (s: string): Uint8Array => Uint8Array.from(s, (c) => c.charCodeAt(0));
const plain = (name: string, bytes: Uint8Array): Bomb => ({ name, make: () => bytes });

export const bombs: readonly Bomb[] = [
  sfnt('composites of themselves', 'ttf', (t) => glyphs(t, (i) => composite(i))),
  sfnt('composites in a ring', 'ttf', (t) => glyphs(t, (i, n) => composite((i + 1) % n))),
  sfnt('composites that double', 'ttf', (t) =>
    glyphs(t, (i) => (i % depth === 0 ? square : composite(i - 1, i - 1))),
  ),
  sfnt('composites of 60,000 parts', 'ttf', (t) =>
    glyphs(t, (i) =>
      i === 0 ? square : i === 1 ? composite(...new Array<number>(60_000).fill(0)) : composite(1),
    ),
  ),
  sfnt('composites of a glyph that is not there', 'ttf', (t) => glyphs(t, () => composite(65_535))),
  sfnt('glyphs of 32,767 contours', 'ttf', (t) => glyphs(t, () => [...u16(32_767, 0, 0, 500, 700), 0, 0])),
  sfnt('contours that end before they begin', 'ttf', (t) =>
    glyphs(t, () => [...u16(2, 0, 0, 500, 700, 3, 1, 0), 1, 1, 1, 1]),
  ),
  sfnt('flags that repeat past the end', 'ttf', (t) =>
    glyphs(t, () => [...u16(1, 0, 0, 9, 9, 65_534, 0), 0x0f, 255]),
  ),
  sfnt('glyphs of no extent', 'ttf', (t) =>
    glyphs(t, () => [...square.slice(0, 18), ...new Array<number>(16).fill(0)]),
  ),
  sfnt('all glyphs empty', 'ttf', (t) => glyphs(t, () => [])),
  sfnt('units per em 0', 'ttf', (t) => view(t.get('head')!).setUint16(18, 0)),
  sfnt('units per em 1', 'ttf', (t) => view(t.get('head')!).setUint16(18, 1)),
  sfnt('cap height 0', 'ttf', (t) => view(t.get('OS/2')!).setInt16(88, 0)),
  sfnt('cap height 1', 'ttf', (t) => view(t.get('OS/2')!).setInt16(88, 1)),
  sfnt('cap height below zero', 'ttf', (t) => view(t.get('OS/2')!).setInt16(88, -700)),
  sfnt('cap height 32,767', 'ttf', (t) => view(t.get('OS/2')!).setInt16(88, 32_767)),
  sfnt('65,535 glyphs said', 'ttf', (t) => view(t.get('maxp')!).setUint16(4, 65_535)),
  sfnt('no glyphs said', 'ttf', (t) => view(t.get('maxp')!).setUint16(4, 0)),
  sfnt('no advances', 'ttf', (t) => view(t.get('hhea')!).setUint16(34, 0)),
  sfnt('advances of 65,535', 'ttf', (t) => t.get('hmtx')!.fill(255)),
  sfnt('cmap: one group of all numbers', 'ttf', (t) =>
    t.set('cmap', cmap(...u16(12, 0), ...u32(28, 0, 1, 0, 0xffffffff, 0))),
  ),
  sfnt('cmap: 4,294,967,295 groups', 'ttf', (t) =>
    t.set('cmap', cmap(...u16(12, 0), ...u32(28, 0, 0xffffffff, 0, 9, 0))),
  ),
  sfnt('cmap: 5,000 groups of all numbers', 'ttf', (t) =>
    t.set(
      'cmap',
      cmap(
        ...u16(12, 0),
        ...u32(16 + 60_000, 0, 5000),
        ...new Array<number[]>(5000).fill(u32(0, 0xffffffff, 1)).flat(),
      ),
    ),
  ),
  sfnt('cmap: format 4 of 2,000 full segments', 'ttf', (t) => {
    const n = 2000;
    const row = (v: number): number[] => u16(...new Array<number>(n).fill(v));
    t.set(
      'cmap',
      cmap(...u16(4, 16 + 8 * n, 0, 2 * n, 0, 0, 0), ...row(0xfffe), 0, 0, ...row(0), ...row(1), ...row(0)),
    );
  }),
  sfnt('GSUB: glyphs by 16, many times over', 'ttf', (t) => {
    const once = multiply(countOf(t), 16);
    // The offsets of lookups have 16 bits.
    t.set('GSUB', gsub(new Array<number[]>(Math.min(8, Math.floor(65_000 / once.length))).fill(once)));
  }),
  sfnt('GSUB: all text gone', 'ttf', (t) => t.set('GSUB', gsub([multiply(countOf(t), 0)]))),
  sfnt('GSUB: a context that calls itself', 'ttf', (t) => t.set('GSUB', gsub([context(countOf(t), 0, 50)]))),
  sfnt('GSUB: contexts that double', 'ttf', (t) =>
    t.set('GSUB', gsub(Array.from({ length: 40 }, (_, i) => context(countOf(t), (i + 1) % 40, 20)))),
  ),
  sfnt('GSUB: 3,000 lookups', 'ttf', (t) =>
    t.set('GSUB', gsub(new Array<number[]>(3000).fill(context(countOf(t), 9, 1).slice(0, 20)))),
  ),
  ...cffBombs,
  ...woffBombs,
  plain('nothing', new Uint8Array(0)),
  plain('one byte', Uint8Array.of(0)),
  plain('text', text('This is no font at all, but a line of text that someone saved under its name.\n')),
  plain('a picture', text('\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x01\0\0\0\x01\x08\x02\0\0\0')),
  plain('a WOFF2 head', text(`wOF2\0\x01\0\0${'\0'.repeat(40)}`)),
  plain('a collection', text(`ttcf\0\x01\0\0\0\0\0\x01\0\0\0\x0c${'\0'.repeat(40)}`)),
  plain('a TrueType head alone', text('\0\x01\0\0')),
  plain('OTTO and 65,535 tables', text(`OTTO\xff\xff${'\0'.repeat(200)}`)),
  plain('zeros', new Uint8Array(100_000)),
];
