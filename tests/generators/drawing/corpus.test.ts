import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Region } from '../../../src/geometry/region.js';
import { placedRegion } from '../../../src/geometry/transform.js';
import { expectSound } from '../../support/artwork.js';
import { corpusFolder, corpusText, darkness, read, regionSvg } from './support.js';

const names = readdirSync(corpusFolder).map((f) => f.replace('.svg', ''));

/** Pixels across a picture of about 25 mm to 100 mm. */
const WIDTH = 800;

/** The largest difference of any pixel's darkness between a drawing and a region, both drawn by resvg. */
async function difference(text: string, region: (of: ReturnType<typeof read>) => Region): Promise<number> {
  const drawing = read(text);
  const theirs = await darkness(text, WIDTH);
  const ours = await darkness(regionSvg(drawing, region(drawing)), WIDTH);
  expect(ours.length).toBe(theirs.length);
  expect(theirs.reduce((a, b) => a + b, 0)).toBeGreaterThan(0.05 * theirs.length);
  return theirs.reduce((worst, d, i) => Math.max(worst, Math.abs(d - ours[i])), 0);
}

const asRead = (drawing: ReturnType<typeof read>): Region => ({
  contours: drawing.figures(1).flatMap((p) => p.region.contours),
});

/** An edge that lies wrong by half a pixel shows as 0.5; its smoothing by a renderer alone as 0.3 or so. */
const SAME = 0.4;

describe('a corpus of hard drawings', () => {
  it.each(names)('shows %s as resvg does, to half a pixel', async (name) => {
    expect(await difference(corpusText(name), asRead)).toBeLessThan(SAME);
  });

  it('would see a figure moved by a pixel', async () => {
    const moved = (drawing: ReturnType<typeof read>): Region =>
      placedRegion(asRead(drawing), (drawing.page!.width / WIDTH) * 0.8, 0);
    for (const name of names) expect(await difference(corpusText(name), moved)).toBeGreaterThan(SAME);
  });

  it.each(names)('draws %s as closed contours that do not cross', (name) => {
    expectSound(asRead(read(corpusText(name))));
  });
});
