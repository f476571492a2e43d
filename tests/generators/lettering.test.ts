import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { openFace } from '../../src/generators/lettering/font.js';
import { setLine } from '../../src/generators/lettering/line.js';
import { area, bounds } from '../../src/geometry/region.js';
import { BadInput, Refusal } from '../../src/schema/fault.js';
import type { Values } from '../../src/schema/parameter.js';
import { artworkWith, assets, expectSound, fontBytes, outlineWith, pokesOut } from '../support/artwork.js';

const board = outlineWith('rectangle', { width: 450, height: 120, margin: 12 });
const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789';

const require = createRequire(import.meta.url);

/** What these tests use of fontkit, which ships no types. */
interface OtherGlyph {
  readonly advanceWidth: number;
  readonly path: { toSVG(): string };
}
interface OtherFont {
  readonly capHeight: number;
  glyphForCodePoint(code: number): OtherGlyph;
  layout(text: string): { glyphs: OtherGlyph[]; positions: { xAdvance: number }[] };
}

/** The same font read by another library. */
const other = (require('fontkit') as { create(bytes: Buffer): OtherFont }).create(fontBytes);

/** What these tests use of paper.js, whose core build has no types of its own. */
const paper = require('paper/dist/paper-core.js') as {
  setup(size: readonly [number, number]): void;
  CompoundPath: new (data: string) => { unite(): { readonly area: number } };
};

const draw = (values: Values, outline = board): ReturnType<typeof artworkWith> =>
  artworkWith('lettering', values, outline);

describe('lettering', () => {
  it("advances by the font's own hmtx table and kerns as its GPOS table says, both read by fontkit", () => {
    const face = openFace('varela-round', assets);
    for (const c of letters)
      expect(face.glyph(c)!.advance).toBe(other.glyphForCodePoint(c.codePointAt(0)!).advanceWidth);
    let kerned = 0;
    for (const a of letters)
      for (const b of letters) {
        const run = other.layout(a + b);
        if (run.glyphs.length < 2) continue; // a ligature, which we do not use
        const wanted = run.positions[0].xAdvance - run.glyphs[0].advanceWidth;
        if (wanted !== 0) kerned++;
        expect(face.kerning(face.glyph(a)!, face.glyph(b)!), a + b).toBe(wanted);
      }
    expect(kerned).toBeGreaterThan(500);
  });

  it('sets a line by advance, kerning and tracking', () => {
    const face = openFace('varela-round', assets);
    const line = setLine(face, 'AVA', 100);
    const run = other.layout('AVA');
    expect(line[2].x).toBe(run.positions[0].xAdvance + run.positions[1].xAdvance + 200);
  });

  it("gives each letter the area that paper.js finds in fontkit's outline of it", () => {
    paper.setup([1, 1]);
    const { capHeight } = openFace('varela-round', assets);
    expect(capHeight).toBe(other.capHeight);
    for (const c of 'BQaegks48&') {
      const { pieces } = draw({ text: c, height: 50 });
      const path = new paper.CompoundPath(other.glyphForCodePoint(c.codePointAt(0)!).path.toSVG());
      const scale = 50 / capHeight;
      const wanted = Math.abs(path.unite().area) * scale * scale;
      // Curves within 0.0015 mm of a perimeter of some 300 mm: 0.45 mm2 at the very most.
      expect(Math.abs(area(pieces[0].region) - wanted), c).toBeLessThan(0.1);
    }
  });

  it('draws capitals as high as asked, centred across and between base line and capital height', () => {
    const box = bounds(draw({ text: 'HIH', height: 40 }).pieces.flatMap((p) => p.region.contours));
    expect(box.minX + box.maxX).toBeCloseTo(0, 3);
    expect(box.minY + box.maxY).toBeCloseTo(0, 1);
    // Stems with round ends overshoot by 5 units of 698 above and below.
    expect(box.maxY - box.minY).toBeCloseTo((40 * 708) / 698, 2);
  });

  it('names a piece for every letter with ink; spaces count', () => {
    expect(draw({ text: 'Oak é', height: 30 }).pieces.map((p) => p.name)).toEqual([
      "letter 1 'O'",
      "letter 2 'a'",
      "letter 3 'k'",
      "letter 5 'é'",
    ]);
  });

  it('draws sound regions inside the margin, the same every time', () => {
    const art = draw({ text: 'Rowan & 8', height: 44 });
    for (const p of art.pieces) {
      expectSound(p.region);
      expect(pokesOut(p.region, board.inner)).toBe(0);
    }
    expect(draw({ text: 'Rowan & 8', height: 44 })).toEqual(art);
  });

  it('names a character that the font lacks, and its place', () => {
    expect(() => draw({ text: 'Ab𝄞c' })).toThrow(
      new BadInput([
        { where: 'pattern.text', message: 'character 3, "𝄞" (U+1D11E), is not in the font; use another' },
      ]),
    );
  });

  it('refuses text without ink', () => {
    expect(() => draw({ text: '  ' })).toThrow('pattern.text: is empty; give at least one letter');
  });

  it('refuses text that is too wide and names a height that fits', () => {
    let message = '';
    try {
      draw({ text: 'Rowan House Bakery', height: 60, tracking: 0 });
    } catch (e) {
      expect(e).toBeInstanceOf(Refusal);
      message = (e as Error).message;
    }
    const most = Number(/at ([\d.]+) mm, with tracking in proportion, they would fit$/.exec(message)?.[1]);
    expect(draw({ text: 'Rowan House Bakery', height: most, tracking: 0 }).pieces).toHaveLength(16);
    expect(() => draw({ text: 'Rowan House Bakery', height: most + 0.2, tracking: 0 })).toThrow(Refusal);
    const ring = outlineWith('ring', { diameter: 100, bore: 50 });
    expect(() => draw({ text: 'O', height: 30 }, ring)).toThrow(/^pattern.text: does not fit/);
  });
});
