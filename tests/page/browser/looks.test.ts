import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { chromiumPath, openBrowser } from '../../support/browser.js';
import { exact, pick } from '../../support/page.js';
import { opened, type Served, served } from '../../support/serve.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const SCREENS: readonly [name: string, options: BrowserContextOptions][] = [
  ['a laptop', { viewport: { width: 1440, height: 900 } }],
  ['a laptop in the dark', { viewport: { width: 1440, height: 900 }, colorScheme: 'dark' }],
  ['a small screen', { viewport: { width: 1024, height: 768 } }],
  ['a tablet held upright', { viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true }],
  [
    'a tablet lying',
    { viewport: { width: 1180, height: 820 }, hasTouch: true, isMobile: true, colorScheme: 'dark' },
  ],
];

describe.skipIf(chromiumPath === null)('the page as it looks, in chromium', () => {
  let browser: Browser;
  let bench: Served;
  beforeAll(async () => {
    [browser, bench] = await Promise.all([openBrowser(), served(['tea-box-rosette'], 'tea-box-rosette')]);
  });
  afterAll(async () => {
    await browser.close();
    await bench.close();
  });

  async function on(options: BrowserContextOptions, work: (page: Page) => Promise<void>): Promise<void> {
    // axe is not part of the page: its policy would not let it in.
    const { page, faults } = await opened(browser, bench.url, { ...options, bypassCSP: true });
    await exact(page);
    await work(page);
    expect(faults).toEqual([]);
    await page.context().close();
  }

  test.each(SCREENS)(
    'holds together on %s: nothing sticks out, and piece, rule and findings are in sight',
    (_, options) =>
      on(options, async (page) => {
        await pick(page, 'pattern.gap');
        const { width, height } = options.viewport!;
        const wide = await page.evaluate(() => [
          document.documentElement.scrollWidth,
          document.body.scrollHeight,
        ]);
        expect(wide).toEqual([width, height]);
        for (const part of [
          '.paper',
          '.strip',
          '.ruled',
          '.foremost',
          '[data-key="pattern.gap"]',
          '.head .main',
        ]) {
          const box = (await page.locator(part).first().boundingBox())!;
          expect(box.x, part).toBeGreaterThanOrEqual(0);
          expect(box.y, part).toBeGreaterThanOrEqual(0);
          expect(box.x + box.width, part).toBeLessThanOrEqual(width);
          expect(box.y + box.height, part).toBeLessThanOrEqual(height + 1);
        }
        const paper = (await page.locator('.paper').boundingBox())!;
        expect(paper.height).toBeGreaterThan(250);
      }),
  );

  test.each(SCREENS)('has no serious fault of accessibility on %s', (name, options) =>
    on(options, async (page) => {
      await page.addScriptTag({ content: axe });
      expect(await faultsOf(page)).toEqual([]);
      // Each kind of value once by day and once by night: what differs between screens is where things stand.
      const keys = /dark|upright/.test(name)
        ? ['pattern.gap', 'outline.shape', 'woods.plug', 'name', 'cutter.diameter']
        : ['pattern.gap'];
      for (const key of keys) {
        await pick(page, key);
        expect(await faultsOf(page), key).toEqual([]);
      }
      await page.getByRole('button', { name: 'Pattern book' }).click();
      await page.getByRole('dialog').waitFor();
      expect(await faultsOf(page)).toEqual([]);
    }),
  );

  it('finds faults of accessibility where there are some', () =>
    on({}, async (page) => {
      await page.addScriptTag({ content: axe });
      await page.evaluate(() => {
        const field = document.createElement('input');
        document.querySelector('.words')!.append(field);
      });
      expect(await faultsOf(page)).toContain('label');
    }));
});

/** Serious and critical violations of the Web Content Accessibility Guidelines 2.2 AA and of good practice, by rule. */
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
    .map((v) => (v.id === 'label' ? v.id : `${v.id}: ${v.nodes[0]!.html.slice(0, 160)}`));
}
