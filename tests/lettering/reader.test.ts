import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faces } from '../../src/generators/lettering/faces.js';
import { openReader, type Reader } from '../support/ocr.js';
import { printed, ringArea, setByFontkit, type Word } from '../support/print.js';

/** The judge is judged first: Tesseract reads the fonts as they are, and does not read letters that are spoilt. */
let reader: Reader;
beforeAll(async () => {
  reader = await openReader();
});
afterAll(() => reader?.close());

const TEXT = 'Heron 47';
const varela = faces.find((f) => f.name === 'varela-round')!;
const word = (): Word => setByFontkit(varela.file, TEXT);

/** Blackletter and uncial capitals are other letters to a reader of today's print: an uncial H is a tall h with a bowl. */
const HARD = ['unifrakturcook', 'uncial-antiqua'];

describe('the reader', () => {
  for (const face of faces.filter((f) => !HARD.includes(f.name)))
    it(`reads "${TEXT}" in ${face.title} as the font draws it`, async () => {
      const read = await reader.read(await printed(setByFontkit(face.file, TEXT, face.capHeight)));
      expect(read).toBe(face.capitalsOnly ? TEXT.toUpperCase() : TEXT);
    });

  it('does not read letters with their counters filled', async () => {
    const { rings, capHeight } = word();
    const outer = Math.sign(ringArea(rings[0]!));
    const solid = rings.filter((r) => Math.sign(ringArea(r)) === outer);
    // e, o and 4 have one counter each.
    expect(rings.length - solid.length).toBe(3);
    expect(await reader.read(await printed({ rings: solid, capHeight }))).not.toBe(TEXT);
  });

  it('does not read letters without their lower half', async () => {
    const { capHeight } = word();
    const cover = `<rect x="-9999" y="${-capHeight / 2}" width="99999" height="99999" fill="#fff"/>`;
    expect(await reader.read(await printed(word(), cover))).not.toBe(TEXT);
  });

  it('does not read a word that has lost a stroke: an H without its bar, an e without its', async () => {
    const { capHeight } = word();
    const cover = `<rect x="-9999" y="${-0.6 * capHeight}" width="99999" height="${0.25 * capHeight}" fill="#fff"/>`;
    expect(await reader.read(await printed(word(), cover))).not.toBe(TEXT);
  });

  it('does not read letters that have run together', async () => {
    const { rings, capHeight } = word();
    const closer = rings.map((r) => {
      const left = Math.min(...r.map((p) => p[0]));
      return r.map(([x, y]): [number, number] => [x - 0.3 * left, y]);
    });
    expect(await reader.read(await printed({ rings: closer, capHeight }))).not.toBe(TEXT);
  });
});
