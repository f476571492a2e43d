import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { build } from '../../src/build.js';
import { draw } from '../../src/output/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { assets } from '../support/artwork.js';
import { chromiumPath, openBrowser } from '../support/browser.js';
import { testRenderer } from '../support/renderer.js';

/** Paper, CSS pixels (96 an inch), and the printable width within the page's margins of 12 mm. */
const MM = 96 / 25.4;
const PAPER = { A4: [210, 297], Letter: [215.9, 279.4] } as const;

describe.skipIf(chromiumPath === null)('the sheet on paper, by a browser', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
  });

  const sheetOf = async (name: string, set: readonly string[] = []): Promise<string> => {
    const recipe = readRecipe(readFileSync(`patterns/${name}.json`, 'utf8'), name, set);
    return draw(build(recipe, assets), await testRenderer()).get('sheet.html') as string;
  };

  it.each(['tea-box-rosette', 'sewing-box-blocks', 'gate-name-board', 'fish-tray', 'bread-board-band'])(
    'words in the drawings of %s are not cut off by their edges',
    async (name) => {
      const page = await browser.newPage();
      await page.setContent(await sheetOf(name));
      const cutOff = () =>
        page.evaluate(() =>
          [...document.querySelectorAll('svg text')].flatMap((text) => {
            const edge = text.closest('svg')!.getBoundingClientRect();
            const box = text.getBoundingClientRect();
            const across = Math.max(edge.left - box.left, box.right - edge.right);
            const off = Math.max(across, edge.top - box.top, box.bottom - edge.bottom);
            return off > 0.5 ? [`${text.textContent}: ${off.toFixed(1)} pixels`] : [];
          }),
        );
      // The browser here falls back to a wide font, so that others have room.
      expect(await cutOff()).toEqual([]);
      await page.addStyleTag({ content: 'svg text { font-size: 6px }' });
      expect((await cutOff()).length).toBeGreaterThan(0);
      await page.close();
    },
  );

  describe.each(['A4', 'Letter'] as const)('%s', (format) => {
    it.each(['tea-box-rosette', 'sewing-box-blocks', 'gate-name-board'])(
      '%s keeps within the paper',
      async (name) => {
        const page = await browser.newPage();
        const [width, height] = PAPER[format];
        await page.setViewportSize({ width: Math.floor((width - 24) * MM), height: Math.floor(height * MM) });
        await page.emulateMedia({ media: 'print' });
        await page.setContent(await sheetOf(name));
        // Nothing sticks out to the right, where paper would cut it off.
        const measure = () =>
          page.evaluate(() => ({
            page: document.documentElement.clientWidth,
            most: Math.max(
              ...[...document.querySelectorAll('body *')].map((e) => e.getBoundingClientRect().right),
            ),
          }));
        const wide = await measure();
        expect(wide.most).toBeLessThanOrEqual(wide.page + 0.5);
        // And the measure does see what sticks out.
        await page.addStyleTag({ content: '.settings { width: 260mm !important }' });
        const wider = await measure();
        expect(wider.most).toBeGreaterThan(wider.page + 0.5);
        await page.addStyleTag({ content: '.settings { width: 100% !important }' });
        const pdf = await page.pdf({ format, preferCSSPageSize: false });
        const text = Buffer.from(pdf).toString('latin1');
        const boxes = [...text.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map((m) => [
          Number(m[1]),
          Number(m[2]),
        ]);
        // Points are 1/72 in. ISO 216: A4 is 210 by 297 mm; US Letter is 8.5 by 11 in.
        expect(boxes.length).toBeGreaterThanOrEqual(3);
        expect(boxes.length).toBeLessThanOrEqual(9);
        for (const [w, h] of boxes) {
          expect(Math.abs(w! - (width / 25.4) * 72)).toBeLessThan(1);
          expect(Math.abs(h! - (height / 25.4) * 72)).toBeLessThan(1);
        }
        await page.close();
      },
    );
  });
});
