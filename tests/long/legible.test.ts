import { afterAll, beforeAll, expect, it } from 'vitest';
import { faces } from '../../src/generators/lettering/faces.js';
import { cutText, leastHeight, ownText, textFor } from '../support/legible.js';
import { openReader, type Reader } from '../support/ocr.js';

/** Every bundled face reads, cut with a 1/8 in cutter at the least height that the limits advise for it. */
let reader: Reader;
beforeAll(async () => {
  reader = await openReader();
});
afterAll(() => reader?.close());

for (const face of faces)
  it(`reads in ${face.title} as in the font's own outlines`, async () => {
    expect(await reader.read(await ownText(face)), "the font's own outlines").toBe(textFor(face));
    const least = leastHeight(face);
    expect(least, 'a height at which nothing is lost').not.toBeNull();
    expect(await reader.read(await cutText(face, least!)), `cut ${least} mm high`).toBe(textFor(face));
  });
