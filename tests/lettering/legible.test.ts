import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cutText, faceNamed, leastHeight, textFor } from '../support/legible.js';
import { openReader, type Reader } from '../support/ocr.js';

/**
 * What is cut can be read. The judge is Tesseract (reader.test.ts tries it first). One face, whose limits are
 * found quickly; the long tests take them all.
 */
let reader: Reader;
beforeAll(async () => {
  reader = await openReader();
});
afterAll(() => reader?.close());

describe('lettering cut with a 1/8 in cutter', () => {
  it('reads in Righteous at its least height, and not at half of it', async () => {
    const face = faceNamed('righteous');
    const least = leastHeight(face)!;
    expect(await reader.read(await cutText(face, least))).toBe(textFor(face));
    expect(await reader.read(await cutText(face, least / 2))).not.toBe(textFor(face));
  });
});
