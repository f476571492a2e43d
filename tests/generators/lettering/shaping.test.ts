import { describe, expect, it } from 'vitest';
import { type Font, withFont } from '../../../src/generators/lettering/open-font.js';
import { type SetLine, setLine } from '../../../src/generators/lettering/set.js';
import { linesOf } from '../../../src/generators/lettering/text.js';
import { bytesOf, HEBREW, NASKH, otherFont, withFonts } from './support.js';

const ALL = { kerning: true, ligatures: true };

function set(name: string, text: string, features = ALL): SetLine {
  return withFont(name, withFonts, (font) => setLine(font, linesOf(text)[0]!, features));
}

function glyphs({ clusters }: SetLine): number[] {
  return clusters.flatMap((c) => c.parts.map((p) => p.glyph));
}

/** The pen's x at each glyph's origin with its offset, and after the last. */
function origins({ clusters }: SetLine): number[] {
  const last = clusters.at(-1)!;
  return [...clusters.flatMap((c) => c.parts.map((p) => c.x + p.dx)), last.x + last.advance];
}

/** The same by fontkit, whose GSUB and GPOS engines are its own. */
function others(name: string, text: string, features?: object): { ids: number[]; origins: number[] } {
  const run = otherFont(name).layout(text, features);
  let x = 0;
  const at = run.positions.map((p) => {
    const here = x + p.xOffset;
    x += p.xAdvance;
    return here;
  });
  return { ids: run.glyphs.map((g) => g.id), origins: [...at, x] };
}

describe('shaping against fontkit', () => {
  it.each([
    ['varela-round', 'AVATAR Tyres, WAVE. 1987 (P.O.) office'],
    ['arvo', 'Kettle & Toast; Vol. 7 fjord Ärger'],
    ['cinzel', 'LAVENDER AWAY Quay Tor'],
    ['fredoka', 'Yonder "To" We 47'],
    [HEBREW, 'שלום לכם'],
    [HEBREW, 'לחם טרי'],
    [NASKH, 'سلام'],
    [NASKH, 'خبز وزيت'],
    [NASKH, 'مَدْرَسَة'],
    [NASKH, 'لا إله'],
  ])('%s: "%s" has the same glyphs at the same places', (name, text) => {
    const mine = set(name, text);
    const other = others(name, text);
    expect(glyphs(mine)).toEqual(other.ids);
    origins(mine).forEach((x, i) => {
      expect(x, `${i}`).toBeCloseTo(other.origins[i]!, 3);
    });
  });

  it('kerns: AVATAR is narrower by what fontkit says, and as wide as its advances without', () => {
    const run = otherFont('varela-round').layout('AVATAR');
    const plain = run.glyphs.reduce((sum, g) => sum + g.advanceWidth, 0);
    const kerned = run.positions.reduce((sum, p) => sum + p.xAdvance, 0);
    expect(kerned).toBeLessThan(plain - 100);
    expect(origins(set('varela-round', 'AVATAR')).at(-1)).toBe(kerned);
    expect(origins(set('varela-round', 'AVATAR', { ...ALL, kerning: false })).at(-1)).toBe(plain);
  });

  it('makes ligatures one cluster of several letters, and none when they are off', () => {
    const fi = set('varela-round', 'ofi');
    expect(fi.clusters.map((c) => [c.from, c.to])).toEqual([
      [0, 1],
      [1, 3],
    ]);
    const off = set('varela-round', 'ofi', { ...ALL, ligatures: false });
    expect(off.clusters.map((c) => [c.from, c.to])).toEqual([
      [0, 1],
      [1, 2],
      [2, 3],
    ]);
    expect(glyphs(off)).toEqual(others('varela-round', 'ofi', { liga: false, clig: false }).ids);
  });

  it('shapes each script of a line by its own rules: Arabic letters stay joined beside Latin ones', () => {
    const alone = glyphs(set(NASKH, 'بيت'));
    expect(glyphs(set(NASKH, 'بيت . بيت')).slice(0, alone.length)).toEqual(alone);
    // Isolated forms are other glyphs than joined ones.
    expect(['ب', 'ي', 'ت'].map((c) => glyphs(set(NASKH, c))[0])).not.toEqual([...alone].reverse());
  });
});

describe('direction', () => {
  /** The text in visual order, left to right, a cluster at a time. */
  const visual = (name: string, text: string): string =>
    set(name, text)
      .clusters.map((c) => text.slice(c.from, c.to))
      .join('');

  it('sets Hebrew from right to left, numbers in it from left to right', () => {
    expect(visual(HEBREW, 'שלום')).toBe('םולש');
    expect(visual(HEBREW, 'לחם 27 טרי')).toBe('ירט 27 םחל');
  });

  it('follows the Unicode bidirectional algorithm in mixed lines', () => {
    // Worked out by hand from UAX #9: the line's own direction is its first strong letter's.
    expect(visual(HEBREW, 'לחם 3.5 kg טרי')).toBe('ירט kg 3.5 םחל');
    const asPlaced = visual('varela-round', 'a-b (c)');
    expect(asPlaced).toBe('a-b (c)');
  });

  it('places every cluster from left to right without overlap of advances', () => {
    const { clusters } = set(NASKH, 'سلام عليكم');
    for (let i = 1; i < clusters.length; i++)
      expect(clusters[i]!.x).toBeCloseTo(clusters[i - 1]!.x + clusters[i - 1]!.advance, 9);
  });
});

describe('several files of one font', () => {
  const buffer = (name: string): ArrayBuffer => new Uint8Array(bytesOf(name)).buffer;

  it('takes each character from the first file that holds it', () => {
    const given = { ...withFonts, fonts: new Map([['two.ttf', [buffer('varela-round'), buffer(NASKH)]]]) };
    const mixed = withFont('two.ttf', given, (font: Font) => setLine(font, linesOf('No ب')[0]!, ALL));
    expect(mixed.clusters.map((c) => c.parts[0]!.file)).toEqual([0, 0, 0, 1]);
    expect(mixed.clusters[3]!.parts[0]!.glyph).toBe(glyphs(set(NASKH, 'ب'))[0]);
  });
});
