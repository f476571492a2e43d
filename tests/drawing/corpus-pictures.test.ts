import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSvg } from '../../src/generators/drawing/read-svg.js';
import { area, perimeter, type Region } from '../../src/geometry/region.js';
import { placedRegion } from '../../src/geometry/transform.js';
import { regionSvg } from '../generators/drawing/support.js';
import { chromiumPath, openBrowser } from '../support/browser.js';
import { byBrowser, byResvg, ink, unlike } from './pictures.js';
import { corpusText } from './support.js';

/** Of every kind: arcs, curves, holes, strokes, clips, use, classes, gradients, maps, flags, written by a dozen programs. */
const FILES = [
  'bs-gear-wide-connected.svg',
  'cairo-flag-gb.svg',
  'fig2dev-shapes.svg',
  'flag-kr.svg',
  'flag-za.svg',
  'flower-lines.svg',
  'gear-filled.svg',
  'gnuplot-waves.svg',
  'graphviz-graph.svg',
  'map-italy-regions.svg',
  'oc-triangle-knot.svg',
  'oc-triskell.svg',
  'oc-biohazard.svg',
  'potrace-butterfly.svg',
];

const WIDTH = 400;

/** What is read of a drawing, drawn as filled outlines on the drawing's own page, or some pixels to the right of it. */
function read(file: string, pixels = 0): { region: Region; svg: string; paper: number } {
  const drawing = readSvg(corpusText(file), file);
  const { width, height } = drawing.page!;
  const asRead = { contours: drawing.figures(1).flatMap((p) => p.region.contours) };
  const region = placedRegion(asRead, (pixels * width) / WIDTH, 0);
  return { region, svg: regionSvg(drawing, region), paper: width * height };
}

/** Pixels on an edge may fall to either side of half: this share of all pixels. */
const SAME = 0.004;

describe('pictures of drawings before and after they are read', () => {
  let browser: Browser | undefined;
  let page: Page | undefined;
  beforeAll(async () => {
    if (!chromiumPath) return;
    browser = await openBrowser();
    page = await browser.newPage();
  });
  afterAll(() => browser?.close());

  it.each(FILES)('%s looks the same by resvg, and its ink measures the same', async (file) => {
    const { region, svg, paper } = read(file);
    const [before, after] = [await byResvg(corpusText(file), WIDTH), await byResvg(svg, WIDTH)];
    expect([after.width, after.height]).toEqual([before.width, before.height]);
    expect(ink(before)).toBeGreaterThan(0.01);
    expect(unlike(before, after)).toBeLessThan(SAME);
    // A tenth of a pixel along every edge.
    const pixel = Math.sqrt(paper / (before.width * before.height));
    const edges = perimeter(region) * pixel * 0.1;
    expect(Math.abs(ink(before) * paper - area(region))).toBeLessThan(edges);
  });

  it('would look different had the figure moved by a pixel', async () => {
    for (const file of FILES) {
      const moved = await byResvg(read(file, 1).svg, WIDTH);
      expect(unlike(await byResvg(corpusText(file), WIDTH), moved), file).toBeGreaterThan(SAME);
    }
  });

  it.skipIf(!chromiumPath)('all look the same by a browser, and by a browser as by resvg', async () => {
    for (const file of FILES) {
      const { svg } = read(file);
      const ours = await byResvg(svg, WIDTH);
      const before = await byBrowser(corpusText(file), page!, ours);
      expect(unlike(before, await byBrowser(svg, page!, ours)), file).toBeLessThan(SAME);
      expect(unlike(before, ours), file).toBeLessThan(SAME);
    }
  });
});
