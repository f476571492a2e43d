import type { Region } from '../../geometry/region.js';
import { EMPTY } from '../../geometry/region.js';
import type { Assets } from '../generator.js';
import { recorder } from '../recorder.js';
import { bad } from '../values.js';
import { fontChoice, fontFault, shownFont } from './font-name.js';
import { type Kerning, oldKerning } from './kern.js';
import { directory, sfntOf, UnusableFont } from './sfnt.js';
import { BrokenFont, type OutlineCommand, type Run, type ShapedFont, type ShapedGlyph } from './shaper.js';
import { tangled } from './tangled.js';

/** A font opened for one drawing: one file, or several that each hold a part of its characters. */
export interface Font {
  /** Cap height, font units of the first file, in whose units all lengths are given. */
  readonly capHeight: number;
  /** The first file that holds a character; 0 when none does. */
  fileOf(character: string): number;
  shape(file: number, run: Run, off: readonly string[]): ShapedGlyph[];
  /** The glyph's outline as a sound region about its origin, `scale` mm to a font unit. */
  region(file: number, glyph: number, scale: number): Region;
}

/** A capital's height where the font tells none and has no H: what is usual, as a share of the em (from memory). */
const USUAL_CAP = 0.7;

/**
 * Opens the font that the assets hold under this name, runs the work and closes it. Throws BadInput when it is no font
 * that can be used. Throws Error when it was not loaded: `load` must put the recipe's fonts and the shaper in assets.
 */
export function withFont<T>(name: string, assets: Assets, work: (font: Font) => T): T {
  const files = assets.fonts.get(name);
  if (!files || !assets.shaper) {
    const fault = fontFault(name);
    if (fault !== null) throw bad('font', fault);
    throw new Error(`the font ${name} or the shaper was not loaded`);
  }
  const open: ShapedFont[] = [];
  try {
    const kernings: (Kerning | null)[] = [];
    for (const file of [files].flat()) {
      const sfnt = sfntOf(new Uint8Array(file));
      kernings.push(oldKerning(sfnt, directory(sfnt)));
      open.push(assets.shaper.open(sfnt));
    }
    return work(fontOf(open, kernings, capHeightOf(open[0]!, name)));
  } catch (e) {
    if (e instanceof UnusableFont) throw bad('font', `${shownFont(name)} ${e.message}`);
    if (e instanceof BrokenFont)
      throw bad(
        'font',
        `${shownFont(name)} is a broken font: ${e.message}; get the file again or use another font`,
      );
    throw e;
  } finally {
    for (const font of open) font.close();
  }
}

function fontOf(
  files: readonly ShapedFont[],
  kernings: readonly (Kerning | null)[],
  capHeight: number,
): Font {
  const { unitsPerEm } = files[0]!;
  /** How much larger the first file's units are. */
  const share = files.map((f) => unitsPerEm / f.unitsPerEm);
  const homes = new Map<string, number>();
  const outlines = new Map<string, readonly OutlineCommand[]>();
  return {
    capHeight,
    fileOf(character) {
      const known = homes.get(character);
      if (known !== undefined) return known;
      const home = files.findIndex((f) => f.glyphOf(character.codePointAt(0)!) !== 0);
      homes.set(character, Math.max(0, home));
      return Math.max(0, home);
    },
    shape(file, run, off) {
      const shaped = files[file]!.shape(run, off);
      const kern = off.includes('kern') || run.rtl ? null : kernings[file]!;
      const glyphs = kern ? kerned(shaped, kern) : shaped;
      const k = share[file]!;
      return k === 1
        ? glyphs
        : glyphs.map((g) => ({ ...g, advance: g.advance * k, dx: g.dx * k, dy: g.dy * k }));
    },
    region(file, glyph, scale) {
      const key = `${file}.${glyph}`;
      const outline = outlines.get(key) ?? checked(files[file]!.outline(glyph), files[file]!.unitsPerEm);
      outlines.set(key, outline);
      return drawn(outline, scale * share[file]!);
    },
  };
}

function kerned(glyphs: readonly ShapedGlyph[], kern: Kerning): ShapedGlyph[] {
  return glyphs.map((g, i) => {
    const next = glyphs[i + 1];
    return next ? { ...g, advance: g.advance + kern(g.id, next.id) } : g;
  });
}

function capHeightOf(font: ShapedFont, name: string): number {
  const { unitsPerEm } = font;
  const choice = fontChoice(name);
  if (choice && 'face' in choice && choice.face.capHeight) return choice.face.capHeight;
  const sane = (h: number): boolean => h > 0.2 * unitsPerEm && h < 2 * unitsPerEm;
  if (sane(font.capHeight)) return font.capHeight;
  const h = font.glyphOf(0x48);
  const tops = h === 0 ? [] : font.outline(h).map((c) => c.at(-1) as number | string);
  const top = Math.max(0, ...tops.filter((y) => typeof y === 'number'));
  return sane(top) ? top : USUAL_CAP * unitsPerEm;
}

/** Em from its origin beyond which no letter reaches; the widest ligatures known are under 20 em. From memory. */
const FAR = 50;

/** The outline, if the cutter pass could follow it. Throws BrokenFont. */
function checked(outline: readonly OutlineCommand[], unitsPerEm: number): readonly OutlineCommand[] {
  if (outline.some((c) => c.some((v) => typeof v === 'number' && !(Math.abs(v) < FAR * unitsPerEm))))
    throw new BrokenFont('a letter of it reaches out of all bounds');
  if (tangled(outline)) throw new BrokenFont('a letter of it crosses itself everywhere');
  return outline;
}

/** Outlines of fonts may overlap, those of variable ones do: what has winding number other than 0 is the letter. */
function drawn(outline: readonly OutlineCommand[], scale: number): Region {
  if (outline.length === 0) return EMPTY;
  const pen = recorder();
  pen.piece('glyph');
  let open = false;
  for (const [type, ...at] of outline) {
    const [a, b, c, d, e, f] = at.map((v) => v * scale) as [number, number, number, number, number, number];
    if (open && (type === 'M' || type === 'Z')) pen.close();
    if (!open && type !== 'M') {
      if (type === 'Z') continue;
      throw new BrokenFont('a letter of it has no start');
    }
    if (type === 'M') pen.move(a, b);
    else if (type === 'L') pen.line(a, b);
    else if (type === 'Q') pen.quadratic(a, b, c, d);
    else if (type === 'C') pen.cubic(a, b, c, d, e, f);
    open = type !== 'Z';
  }
  if (open) pen.close();
  return pen.artwork().pieces[0]?.region ?? EMPTY;
}
