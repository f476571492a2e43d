import { describe, expect, it } from 'vitest';
import { outlineWith } from '../../support/artwork.js';
import { bytesOf, lettered, said, withFonts } from './support.js';

const board = outlineWith('rectangle', { width: 300, height: 180, margin: 10 });
const SMALL = { r: 0.5, widen: false };

const fault = (values: Parameters<typeof lettered>[0]): string => said(() => lettered(values, board, SMALL));

/** What is said of a file. */
function ofFile(bytes: Uint8Array): string {
  const fonts = new Map([['mine.ttf', new Uint8Array(bytes).buffer as ArrayBuffer]]);
  return said(() => lettered({ text: 'Oak', font: 'mine.ttf' }, board, SMALL, { ...withFonts, fonts }));
}

describe('names', () => {
  it('give the place in the whole text and the word', () => {
    const { pieces } = lettered({ text: 'Oak é\nElm', height: 20 }, board, SMALL);
    expect(pieces.map((p) => p.name)).toEqual([
      "letter 1 'O' in 'Oak'",
      "letter 2 'a' in 'Oak'",
      "letter 3 'k' in 'Oak'",
      "letter 5 'é' in 'é'",
      "letter 7 'E' in 'Elm'",
      "letter 8 'l' in 'Elm'",
      "letter 9 'm' in 'Elm'",
    ]);
  });

  it('of letters that the font joins: one piece; apart or together when asked', () => {
    const names = (joined: string): string[] =>
      lettered(
        { text: 'an elm', font: 'pacifico', height: 30, tracking: 0, joined },
        board,
        SMALL,
      ).pieces.map((p) => p.name);
    expect(names('auto')).toEqual(["letters 1-2 'an'", "letters 4-6 'elm'"]);
    expect(names('apart')).toHaveLength(5);
    const plain = lettered({ text: 'elm', height: 30, joined: 'together' }, board, SMALL);
    expect(plain.pieces.map((p) => p.name)).toEqual(["letters 1-3 'elm'"]);
  });
});

describe('faults of the text', () => {
  it('a missing character is named with its code point and place', () => {
    expect(fault({ text: 'Ab\nc𝄞d' })).toBe(
      'pattern.text: "𝄞" (U+1D11E), character 2 of line 2, is not in the font; use another character or another font',
    );
  });

  it('control characters are refused with their place', () => {
    expect(fault({ text: 'Oak\nEl\tm' })).toBe(
      'pattern.text: holds a control character, U+0009, in line 2 at character 3; take it out (only \\n, which starts a new line, may stand there)',
    );
  });

  it('nothing to draw is refused', () => {
    expect(fault({ text: ' \n ' })).toBe('pattern.text: is empty; give at least one letter');
    expect(fault({ text: '\u200d' })).toMatch(/^pattern\.text: /);
  });

  it('5,000 characters are set', () => {
    const large = outlineWith('rectangle', { width: 2900, height: 2900, margin: 10 });
    const line = 'walnut elm ash oak maple yew box lime pear apple holly rowan thorns\n';
    const text = line.repeat(80).slice(0, 5000);
    const { pieces } = lettered({ text, height: 12, tracking: 2 }, large, SMALL);
    expect(pieces).toHaveLength(Array.from(text).filter((c) => c.trim() !== '').length);
  });
});

describe('faults of the font', () => {
  it('an unknown name lists the known ones and the nearest', () => {
    expect(fault({ text: 'Oak', font: 'varela-rund' })).toMatch(
      /^pattern\.font: "varela-rund" is not a bundled font; did you mean "varela-round"\? \(known: varela-round, /,
    );
  });

  it('what is no font, or none that is read, is refused in a line that says what to do', () => {
    const text = (s: string): Uint8Array => new TextEncoder().encode(s);
    expect(ofFile(text('{"name": "x"}'))).toBe(
      'pattern.font: "mine.ttf" is no font file that can be read; give a TTF, OTF or WOFF font',
    );
    expect(ofFile(new Uint8Array(0))).toMatch(/is no font file/);
    expect(ofFile(text('wOF2....'))).toMatch(
      /is a WOFF2 font, which is not read; convert it to TTF, OTF or WOFF/,
    );
    expect(ofFile(text('ttcf....'))).toMatch(
      /is a collection of fonts, which is not read; save the one font/,
    );
    expect(ofFile(new Uint8Array(20_000_001))).toMatch(/holds 20\.0 MB; a font is 20 MB at most/);
  });

  it('a font cut short is refused wherever it is cut', () => {
    const bytes = new Uint8Array(bytesOf('varela-round'));
    for (const n of [4, 11, 12, 100, 1000, bytes.length >> 1, bytes.length - 8])
      expect(ofFile(bytes.subarray(0, n)), `${n}`).toMatch(/^pattern\.font: "mine\.ttf" is a broken font: /);
  });

  it('the same shaper goes on after a broken font', () => {
    expect(() => withFonts.shaper?.open(new Uint8Array(64))).not.toThrow();
    expect(lettered({ text: 'Oak', height: 20 }, board, SMALL).pieces).toHaveLength(3);
  });
});
