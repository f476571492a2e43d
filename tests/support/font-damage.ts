import { readSfnt, type Sfnt, view, writeSfnt, writeWoff } from './sfnt.js';

type Random = () => number;

/** One way to damage a font file by chance. */
export interface Damage {
  readonly name: string;
  make(font: Uint8Array, random: Random): Uint8Array;
}

const below = (random: Random, n: number): number => Math.floor(random() * n);
const pick = <T>(random: Random, of: readonly T[]): T => of[below(random, of.length)]!;

/** Values that lie at the ends of what a count or an offset may hold. */
const HARSH = [0, 1, 2, 3, 0x7f, 0x80, 0xff, 0x7fff, 0x8000, 0xfffe, 0xffff];
const isWoff = (bytes: Uint8Array): boolean => view(bytes).getUint32(0) === 0x774f4646;

/** Damages the tables and wraps them as they were, so that the damage is not hidden in a broken zlib stream. */
function inside(name: string, change: (font: Sfnt, random: Random) => void): Damage {
  return {
    name,
    make(bytes, random) {
      const font = readSfnt(bytes);
      change(font, random);
      return isWoff(bytes) ? writeWoff(font) : writeSfnt(font);
    },
  };
}

/** Sets 1 to 4 of the 16-bit words of a table's first part, where counts and offsets stand. */
function words(tag: string, most: number): Damage {
  return inside(`words of ${tag.trim()}`, (font, random) => {
    const table = font.tables.get(tag) ?? pick(random, [...font.tables.values()]);
    if (table.length < 4) return;
    for (let n = 1 + below(random, 4); n > 0; n--) {
      const at = 2 * below(random, Math.min(most, table.length - 2) / 2);
      view(table).setUint16(at, random() < 0.7 ? pick(random, HARSH) : below(random, 65536));
    }
  });
}

/** Changes bytes anywhere in one table: structure, numbers, programs. */
function bytesOf(tag: string): Damage {
  return inside(`bytes of ${tag.trim()}`, (font, random) => {
    const table = font.tables.get(tag) ?? pick(random, [...font.tables.values()]);
    scatter(table, random);
  });
}

function scatter(table: Uint8Array, random: Random): void {
  if (table.length === 0) return;
  for (let n = 1 + below(random, 40); n > 0; n--) table[below(random, table.length)] = below(random, 256);
}

const flips: Damage = {
  name: 'flipped bytes',
  make(bytes, random) {
    const out = bytes.slice();
    for (let n = 1 + below(random, 60); n > 0; n--) out[below(random, out.length)] ^= 1 << below(random, 8);
    return out;
  },
};

const truncated: Damage = {
  name: 'truncated',
  make: (bytes, random) => bytes.slice(0, below(random, random() < 0.3 ? 300 : bytes.length)),
};

const zeroed: Damage = {
  name: 'a stretch of zeros or ones',
  make(bytes, random) {
    const out = bytes.slice();
    const from = below(random, out.length);
    out.fill(pick(random, [0, 0xff]), from, from + below(random, out.length / 4));
    return out;
  },
};

/** Lies in the file's directory: of a table's place, length or, in WOFF, its packed size; or of how many tables there are. */
const directory: Damage = {
  name: 'directory',
  make(bytes, random) {
    const out = bytes.slice();
    const v = view(out);
    const [start, row, fields, count] = isWoff(out)
      ? [44, 20, [4, 8, 12], 12]
      : ([12, 16, [8, 12], 4] as const);
    if (random() < 0.2) v.setUint16(count, pick(random, HARSH));
    for (let n = 1 + below(random, 3); n > 0; n--) {
      const at = start + row * below(random, view(bytes).getUint16(count)) + pick(random, fields);
      const old = v.getUint32(at);
      const to = [
        0,
        1,
        old - 1,
        old + 1,
        old * 2,
        old + 4096,
        out.length,
        0x7fffffff,
        0xffffffff,
        0x80000000,
      ];
      v.setUint32(at, pick(random, to) >>> 0);
    }
    return out;
  },
};

const swapped = inside('swapped tables', (font, random) => {
  const tags = [...font.tables.keys()];
  const [a, b] = [pick(random, tags), pick(random, tags)];
  const first = font.tables.get(a)!;
  font.tables.set(a, font.tables.get(b)!);
  font.tables.set(b, first);
});

const missing = inside('missing table', (font, random) => {
  font.tables.delete(pick(random, [...font.tables.keys()]));
});

const empty = inside('empty table', (font, random) => {
  font.tables.set(pick(random, [...font.tables.keys()]), new Uint8Array(0));
});

const short = inside('short table', (font, random) => {
  const [tag, table] = pick(random, [...font.tables]);
  font.tables.set(tag, table.slice(0, below(random, random() < 0.5 ? 40 : table.length)));
});

const loca = inside('loca', (font, random) => {
  const table = font.tables.get('loca') ?? font.tables.get('CFF ')!;
  for (let n = 1 + below(random, 30); n > 0; n--)
    view(table).setUint16(2 * below(random, table.length / 2 - 1), below(random, 65536));
});

/** The header of one glyph: its number of contours, the ends of the contours, the count of hints. */
const glyphHeads = inside('glyph headers', (font, random) => {
  const glyf = font.tables.get('glyf');
  if (!glyf) return scatter(font.tables.get('CFF ')!, random);
  const wide = view(font.tables.get('head')!).getUint16(50) === 1;
  const offsets = view(font.tables.get('loca')!);
  const glyphs = view(font.tables.get('maxp')!).getUint16(4);
  for (let n = 0; n < 80; n++) {
    const i = below(random, glyphs);
    const at = wide ? offsets.getUint32(4 * i) : 2 * offsets.getUint16(2 * i);
    if (at + 14 > glyf.length) continue;
    view(glyf).setUint16(at + 2 * below(random, 7), pick(random, [...HARSH, 0xfffd, below(random, 65536)]));
  }
});

/** The kinds in the order of their turns; those of tables come as often as they have places to be wrong. */
export const damages: readonly Damage[] = [
  flips,
  truncated,
  zeroed,
  directory,
  swapped,
  missing,
  empty,
  short,
  loca,
  glyphHeads,
  words('maxp', 32),
  words('head', 54),
  words('hhea', 36),
  words('OS/2', 100),
  words('cmap', 120),
  words('GPOS', 400),
  words('GSUB', 300),
  words('GDEF', 100),
  words('CFF ', 200),
  bytesOf('cmap'),
  bytesOf('GPOS'),
  bytesOf('GSUB'),
  bytesOf('glyf'),
  bytesOf('CFF '),
  bytesOf('hmtx'),
  bytesOf('name'),
];
