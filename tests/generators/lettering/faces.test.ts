import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import opentype from 'opentype.js';
import { describe, expect, it } from 'vitest';
import { type Face, faces, licenceFile, packageOf } from '../../../src/generators/lettering/faces.js';
import { bundled, bytesOf, capOf, otherFont } from '../../support/bundled-fonts.js';

const require = createRequire(import.meta.url);

/** Licences that let a font be shipped with this program and cut in wood for sale. */
const ALLOWED = ['OFL-1.1', 'Apache-2.0', 'MIT'];

/** What each licence's own text says of itself (the words of the licences, from openfontlicense.org and spdx.org). */
const WORDS: Readonly<Record<string, RegExp>> = {
  'OFL-1.1': /licensed under the SIL Open Font License, Version 1\.1[\s\S]*PERMISSION & CONDITIONS/,
  'Apache-2.0': /Apache License\s+Version 2\.0/,
  MIT: /a copy\s+of this software and associated documentation files/,
};

const PUNCTUATION = [...`.,:;!?'"()-+/#*=–—‘’“”`];
/** U+00C0 to U+00FF, the accented letters of Latin-1, without its two operators × and ÷. */
const ACCENTED = Array.from({ length: 64 }, (_, i) => String.fromCodePoint(0xc0 + i)).filter(
  (c) => c !== '×' && c !== '÷',
);
const CAPITALS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
const SMALL = [...'abcdefghijklmnopqrstuvwxyz'];

function packageFolder(face: Face): string {
  return join(dirname(require.resolve(`${packageOf(face)}/package.json`)));
}

it('has names that are told apart, and all that a list shows', () => {
  expect(new Set(faces.map((f) => f.name)).size).toBe(faces.length);
  for (const f of faces) {
    expect(f.name).toMatch(/^[a-z]+(-[a-z]+)*$/);
    for (const words of [f.title, f.style, f.suits]) expect(words, f.name).toMatch(/\S{3}/);
  }
});

describe.each(bundled)('%s', (_, face) => {
  const bytes = bytesOf(face);
  const font = otherFont(face);

  it('is read alike by opentype.js and fontkit', () => {
    const read = opentype.parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
    expect(read.getEnglishName('fontFamily')).toBe(font.familyName);
    expect(read.unitsPerEm).toBe(font.unitsPerEm);
    expect(read.numGlyphs).toBe(font.numGlyphs);
    expect(face.title.startsWith(font.familyName.replace(/ (Medium|Black)$/, ''))).toBe(true);
  });

  it('holds letters, figures, punctuation and the accented letters of Latin-1, each with ink', () => {
    const wanted = [...CAPITALS, ...SMALL, ...'0123456789&@%', ...PUNCTUATION, ...ACCENTED];
    const without = wanted.filter((c) => {
      const code = c.codePointAt(0)!;
      return !font.hasGlyphForCodePoint(code) || font.glyphForCodePoint(code).path.commands.length < 4;
    });
    expect(without).toEqual([]);
  });

  it('has small letters that are capitals, or not, as said', () => {
    // The small g, p and y hang below the base line in every alphabet that has small letters; capitals do not.
    const hanging = [...'gpy'].filter((c) => {
      const { minY, maxY } = font.glyphForCodePoint(c.codePointAt(0)!).bbox;
      return minY < -0.15 * (maxY - minY);
    });
    expect(hanging).toEqual(face.capitalsOnly ? [] : ['g', 'p', 'y']);
  });

  it('has the cap height of its flat capitals', () => {
    // I is the one capital that has neither bowl nor tail in any of these faces; 2 % for rounded or slanted ends.
    const top = font.glyphForCodePoint(0x49).bbox.maxY;
    expect(Math.abs(capOf(face, font) / top - 1)).toBeLessThan(0.02);
    // A figure in the registry is there only because the file's own is wrong.
    if (face.capHeight !== undefined) expect(Math.abs(font.capHeight / top - 1)).toBeGreaterThan(0.1);
  });

  it('is free to ship: the licence named is that of its package, whose text goes with it', () => {
    expect(ALLOWED).toContain(face.licence);
    const folder = packageFolder(face);
    expect(readFileSync(join(folder, licenceFile), 'utf8')).toMatch(WORDS[face.licence]!);
    const { license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    expect(license.split(' AND ')).toContain(face.licence);
  });

  it('is a dependency, with its licence in the table of patterns/fonts', () => {
    const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8'));
    expect(Object.keys(dependencies)).toContain(packageOf(face));
    expect(existsSync('patterns/fonts/README.md')).toBe(true);
    const row = readFileSync('patterns/fonts/README.md', 'utf8')
      .split('\n')
      .find((line) => line.includes(`\`${face.name}\``))!;
    const cells = row.split('|').map((c) => c.trim());
    for (const words of [face.title, face.style, face.licence, `\`${packageOf(face)}\``])
      expect(cells).toContain(words);
    expect(existsSync(`patterns/fonts/${face.name}.png`)).toBe(true);
  });
});
