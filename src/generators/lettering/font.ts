import opentype from 'opentype.js';
import type { Assets } from '../generator.js';

/** What the lettering needs of a font; lengths in the font's own units, y up. */
export interface Face {
  /** Height of a flat capital. */
  readonly capHeight: number;
  /** The glyph of one character, or null when the font has none. */
  glyph(character: string): Glyph | null;
  /** What is added to the advance of the first of two glyphs that stand side by side. */
  kerning(left: Glyph, right: Glyph): number;
}

export interface Glyph {
  readonly index: number;
  readonly advance: number;
  readonly commands: readonly opentype.PathCommand[];
}

/** The font library's glyph positioning, which its type package leaves out. */
interface Positioning {
  getKerningTables(script: string): readonly unknown[] | undefined;
  getKerningValue(lookups: readonly unknown[], left: number, right: number): number;
}

/** Reads a loaded font. Throws Error when it was not loaded: `load` must put every font of the choice into assets. */
export function openFace(name: string, assets: Assets): Face {
  const bytes = assets.fonts.get(name);
  if (!bytes) throw new Error(`the font ${name} was not loaded`);
  const font = opentype.parse(bytes);
  const positioning = (font as unknown as { position: Positioning }).position;
  // The library's own kerning looks at the default script only, which in most fonts kerns punctuation alone.
  const lookups = ['latn', 'DFLT'].map((script) => positioning.getKerningTables(script) ?? []);
  return {
    capHeight: font.tables.os2?.sCapHeight || font.charToGlyph('H').getBoundingBox().y2,
    glyph(character) {
      const glyph = font.charToGlyph(character);
      if (glyph.index === 0) return null;
      return { index: glyph.index, advance: glyph.advanceWidth ?? 0, commands: glyph.path.commands };
    },
    kerning(left, right) {
      for (const l of lookups) {
        const value = positioning.getKerningValue(l, left.index, right.index);
        if (value !== 0) return value;
      }
      return 0;
    },
  };
}
