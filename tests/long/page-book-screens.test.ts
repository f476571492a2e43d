import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumPath, openBrowser } from '../support/browser.js';
import { opened, type Served, served } from '../support/serve.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const screen = (width: number, height: number): BrowserContextOptions => ({ viewport: { width, height } });
const TOUCH = { hasTouch: true, isMobile: true } as const;
const SCREENS: [string, BrowserContextOptions][] = [
  ['a laptop', screen(1440, 900)],
  ['a laptop at night', { ...screen(1440, 900), colorScheme: 'dark' }],
  ['a tablet', { ...screen(1024, 768), ...TOUCH }],
  ['a tablet held upright', { ...screen(768, 1024), ...TOUCH, reducedMotion: 'reduce' }],
  ['a larger one at night', { ...screen(820, 1180), ...TOUCH, colorScheme: 'dark' }],
];

describe.skipIf(chromiumPath === null)('the pattern book', () => {
  let browser: Browser;
  let bench: Served;
  beforeAll(async () => {
    [browser, bench] = await Promise.all([openBrowser(), served(['star-trivet'])]);
  });
  afterAll(async () => {
    await browser.close();
    await bench.close();
  });

  async function on(options: BrowserContextOptions, then: (page: Page) => Promise<void>): Promise<void> {
    // The page's policy lets no other script in, not even the one that looks for faults.
    const { page, faults } = await opened(browser, bench.url, { ...options, bypassCSP: true });
    await page.locator('[data-entry="face:ring"]').waitFor();
    await page.locator('[data-entry="shipped:acorn-box-lid"] svg').waitFor();
    await then(page);
    expect(faults).toEqual([]);
    await page.context().close();
  }

  test.each(SCREENS)('fits %s, and fingers', (_, options) =>
    on(options, async (page) => {
      const { width, height } = options.viewport!;
      for (const part of ['.book', '.book-search input', '.book-close', '.contents', '.pages']) {
        const box = (await page.locator(part).boundingBox())!;
        expect(box.x, part).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width, part).toBeLessThanOrEqual(width);
        expect(box.y + box.height, part).toBeLessThanOrEqual(height);
      }
      const wide = await page.locator('.pages').evaluate((p) => p.scrollWidth - p.clientWidth);
      expect(wide).toBe(0);
      if (!options.hasTouch) return;
      // 44 px: WCAG 2.2, 2.5.5 Target Size (Enhanced).
      const low = await page
        .locator('dialog.book > :not(dialog) :is(button, input)')
        .evaluateAll((all) =>
          all.filter((b) => b.getBoundingClientRect().height < 44).map((b) => b.textContent),
        );
      expect(low).toEqual([]);
    }),
  );

  test.each(SCREENS)('keeps its place while drawings come, on %s', (_, options) =>
    on(options, async (page) => {
      const drawn = page.locator('[data-entry="shipped:acorn-box-lid"]');
      const undrawn = page.locator('[data-entry="shipped:vase-stave-rope"]');
      expect(await undrawn.locator('svg').count()).toBe(0);
      const plate = async (of: typeof drawn) => {
        const { width, height } = (await of.locator('.plate').boundingBox())!;
        return { width, height };
      };
      expect(await plate(undrawn)).toEqual(await plate(drawn));
    }),
  );

  test.each(SCREENS)('has no serious fault of accessibility on %s', (_, options) =>
    on(options, async (page) => {
      await page.addScriptTag({ content: axe });
      expect(await faultsOf(page)).toEqual([]);
      await page.locator('.book-search input').fill('zzz');
      await page.getByRole('button', { name: 'Show all again' }).waitFor();
      expect(await faultsOf(page)).toEqual([]);
    }),
  );
});

/** Serious and critical violations of the Web Content Accessibility Guidelines 2.2 AA and of good practice. */
async function faultsOf(page: Page): Promise<string[]> {
  const { violations } = await page.evaluate(() =>
    (
      globalThis as unknown as {
        axe: { run(): Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }> };
      }
    ).axe.run(),
  );
  return violations
    .filter((v) => v.impact === 'serious' || v.impact === 'critical')
    .map((v) => `${v.id}: ${v.nodes[0]!.html.slice(0, 160)}`);
}
