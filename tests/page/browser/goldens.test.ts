import { readdirSync, statSync } from 'node:fs';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { chromiumPath, openBrowser } from '../../support/browser.js';
import { exact, pick } from '../../support/page.js';
import { differs, screen, withOneFont } from '../../support/screen.js';
import { opened, type Served, served } from '../../support/serve.js';

/** Share of pixels that may differ: letters' edges, which versions of a browser draw a little differently. */
const MAY_DIFFER = 0.01;

const LAPTOP = { width: 1440, height: 900 };

const look = (name: string) => async (page: Page) => {
  await page.getByRole('radio', { name, exact: true }).check({ force: true });
  await expect
    .poll(() => page.locator('.says').textContent(), { timeout: 15_000 })
    .not.toMatch(/drawing …|^$/);
};

const SCREENS: readonly [
  name: string,
  options: BrowserContextOptions,
  before: (page: Page) => Promise<unknown>,
][] = [
  ['laptop', { viewport: LAPTOP }, (page) => pick(page, 'pattern.gap')],
  ['laptop-dark', { viewport: LAPTOP, colorScheme: 'dark' }, (page) => pick(page, 'woods.plug')],
  ['small', { viewport: { width: 1024, height: 768 } }, look('Walls and grain')],
  [
    'tablet',
    { viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true },
    (page) => pick(page, 'pattern.gap'),
  ],
  ['coupon', { viewport: LAPTOP }, look('Coupon')],
  ['section', { viewport: LAPTOP }, look('Section')],
];

describe.skipIf(chromiumPath === null)(
  'the page looks as it was looked at and found good, in chromium',
  () => {
    let browser: Browser;
    let bench: Served;
    beforeAll(async () => {
      [browser, bench] = await Promise.all([openBrowser(), served(['tea-box-rosette'], 'tea-box-rosette')]);
    });
    afterAll(async () => {
      await browser.close();
      await bench.close();
    });

    test.each(SCREENS)('%s', async (name, options, before) => {
      const { page, faults } = await opened(browser, bench.url, { ...options, bypassCSP: true });
      await withOneFont(page);
      await exact(page);
      await before(page);
      await settled(page);
      expect(differs(name, await screen(page))).toBeLessThan(MAY_DIFFER);
      expect(faults).toEqual([]);
      await page.context().close();
    });

    it('sees a difference: another wood', async () => {
      const { page } = await opened(browser, bench.url, { viewport: LAPTOP, bypassCSP: true });
      await withOneFont(page);
      await exact(page);
      await pick(page, 'woods.plug');
      await page.locator('.tile', { hasText: 'purpleheart' }).click();
      await exact(page);
      await pick(page, 'pattern.gap');
      await settled(page);
      const share = differs('laptop', await screen(page), false);
      expect(share).toBeGreaterThan(MAY_DIFFER);
      await page.context().close();
    });

    it('keeps its pictures small', () => {
      const folder = new URL('../../golden/page/', import.meta.url);
      for (const f of readdirSync(folder)) expect(statSync(new URL(f, folder)).size, f).toBeLessThan(100_000);
    });
  },
);

/** The strip's small drawings come when the page has time: until nothing changes any more. */
async function settled(page: Page): Promise<void> {
  await page.mouse.move(2, 2);
  let before = '';
  for (let same = 0; same < 3; ) {
    await page.waitForTimeout(300);
    const now = await page.evaluate(() => document.querySelector('.card')!.outerHTML);
    same = now === before ? same + 1 : 0;
    before = now;
  }
}
