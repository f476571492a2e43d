import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { bombs } from './bomb-fonts.js';
import { type Command, cffTable, charstring } from './cff.js';
import { damages } from './font-damage.js';
import { seeded } from './random.js';
import { readSfnt, type Sfnt, writeSfnt, writeWoff } from './sfnt.js';

/** A font file made wrong on purpose. The same seed gives the same bytes. */
export interface Mutant {
  readonly seed: number;
  /** Which font and which damage, for the message of a failing test. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface Source {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const require = createRequire(import.meta.url);
const FACE = '@expo-google-fonts/varela-round/400Regular/VarelaRound_400Regular.ttf';

/** Whole, sound fonts of each kind, one face in four wrappings: TrueType and CFF outlines, plain and in WOFF. */
export function soundFonts(): Source[] {
  const bytes = new Uint8Array(readFileSync(require.resolve(FACE)));
  const ttf = readSfnt(bytes);
  const otf = withCff(ttf, bytes);
  return [
    { name: 'ttf', bytes },
    { name: 'otf', bytes: writeSfnt(otf) },
    { name: 'woff', bytes: writeWoff(ttf) },
    { name: 'otf woff', bytes: writeWoff(otf) },
  ];
}

/** The font with its outlines, as fontkit reads them, written as CFF; everything else stays. */
function withCff(font: Sfnt, bytes: Uint8Array): Sfnt {
  const read = (require('fontkit') as Fontkit).create(Buffer.from(bytes));
  const charstrings = Array.from({ length: read.numGlyphs }, (_, i) =>
    charstring(read.getGlyph(i).path.commands.map(asCommand)),
  );
  const tables = new Map(font.tables);
  for (const gone of ['glyf', 'loca', 'cvt ', 'fpgm', 'prep', 'gasp']) tables.delete(gone);
  tables.set('CFF ', cffTable({ charstrings }));
  tables.set('maxp', Uint8Array.from([0, 0, 0x50, 0, read.numGlyphs >> 8, read.numGlyphs & 255]));
  return { flavour: 0x4f54544f, tables };
}

/** What is used of fontkit, which ships no types. */
interface Fontkit {
  create(bytes: Buffer): {
    readonly numGlyphs: number;
    getGlyph(id: number): { readonly path: { readonly commands: readonly FontkitCommand[] } };
  };
}

interface FontkitCommand {
  readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
  readonly args: readonly number[];
}

function asCommand({ command, args }: FontkitCommand): Command {
  const [a, b, c, d, e, f] = args as [number, number, number, number, number, number];
  if (command === 'quadraticCurveTo') return { type: 'Q', x1: a, y1: b, x: c, y: d };
  if (command === 'bezierCurveTo') return { type: 'C', x1: a, y1: b, x2: c, y2: d, x: e, y: f };
  return command === 'closePath' ? { type: 'Z' } : { type: command === 'moveTo' ? 'M' : 'L', x: a, y: b };
}

let sources: readonly Source[] | undefined;

/** The mutant of a seed: every bomb once, in turn, then damage by chance to each source in turn. */
export function mutant(seed: number): Mutant {
  sources ??= soundFonts();
  const font = (name: string): Sfnt => readSfnt(sources!.find((s) => s.name === name)!.bytes);
  const bomb = bombs[seed];
  if (bomb) return { seed, name: bomb.name, bytes: bomb.make(font) };
  const random = seeded(seed * 7919 + 17);
  const source = sources[seed % sources.length]!;
  const damage = damages[Math.floor(seed / sources.length) % damages.length]!;
  return { seed, name: `${source.name}: ${damage.name}`, bytes: damage.make(source.bytes, random) };
}
