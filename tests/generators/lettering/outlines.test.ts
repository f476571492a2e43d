import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { withFont } from '../../../src/generators/lettering/open-font.js';
import { area, bounds } from '../../../src/geometry/region.js';
import { expectSound, outlineWith } from '../../support/artwork.js';
import { HEBREW, lettered, NASKH, otherFont, withFonts } from './support.js';

const board = outlineWith('rectangle', { width: 450, height: 120, margin: 12 });

/** What these tests use of paper.js, whose core build has no types of its own. */
const paper = createRequire(import.meta.url)('paper/dist/paper-core.js') as {
  setup(size: readonly [number, number]): void;
  CompoundPath: new (data: string) => { unite(): { readonly area: number } };
};

describe('outlines', () => {
  it.each([
    ['varela-round', 'BQaegks48&'],
    ['arvo', 'RSgf35'],
    ['pacifico', 'dgKw'],
    [NASKH, 'عرو'],
    [HEBREW, 'שםל'],
  ])("of %s have the area that paper.js finds in fontkit's within 0.1 %%", (name, letters) => {
    paper.setup([1, 1]);
    const font = otherFont(name);
    const capHeight = withFont(name, withFonts, (f) => f.capHeight);
    for (const c of letters) {
      const { pieces } = lettered({ text: c, height: 40, font: name }, board);
      const path = new paper.CompoundPath(
        font
          .layout(c)
          .glyphs.map((g) => g.path.toSVG())
          .join(' '),
      );
      const wanted = Math.abs(path.unite().area) * (40 / capHeight) ** 2;
      const own = pieces.reduce((sum, p) => sum + area(p.region), 0);
      expect(Math.abs(own - wanted) / wanted, c).toBeLessThan(0.001);
      for (const p of pieces) expectSound(p.region);
    }
  });

  it("takes the cap height that the font's OS/2 table states, as fontkit reads it", () => {
    for (const name of ['varela-round', 'arvo', HEBREW])
      expect(withFont(name, withFonts, (f) => f.capHeight)).toBe(otherFont(name).capHeight);
  });

  it('draws capitals as high as asked, centred across and between base line and capital height', () => {
    const box = bounds(lettered({ text: 'HIH', height: 40 }, board).pieces.flatMap((p) => p.region.contours));
    expect(box.minX + box.maxX).toBeCloseTo(0, 3);
    expect(box.minY + box.maxY).toBeCloseTo(0, 1);
    // Stems with round ends overshoot by 5 units of 698 above and below.
    expect(box.maxY - box.minY).toBeCloseTo((40 * 708) / 698, 2);
  });

  it('mirrored draws what would be seen from behind', () => {
    const plain = lettered({ text: 'Rowan', height: 40 }, board).pieces;
    const back = lettered({ text: 'Rowan', height: 40, mirrored: true }, board).pieces;
    plain.forEach((p, i) => {
      const [a, b] = [bounds(p.region.contours), bounds(back[i]!.region.contours)];
      expect([b.minX, b.maxX, b.minY, b.maxY]).toEqual(
        [-a.maxX, -a.minX, a.minY, a.maxY].map((v) => expect.closeTo(v, 9)),
      );
      expect(area(back[i]!.region)).toBeCloseTo(area(p.region), 6);
    });
  });
});
