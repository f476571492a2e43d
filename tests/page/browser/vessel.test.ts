import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chromiumPath, openBrowser } from '../../support/browser.js';
import { exact, pick, shown, type } from '../../support/page.js';
import { opened, type Served, served } from '../../support/serve.js';

describe.skipIf(chromiumPath === null)('a vessel on the page, in chromium', () => {
  let browser: Browser;
  let bench: Served;
  let page: Page;
  let faults: string[];
  const requests: string[] = [];

  beforeAll(async () => {
    [browser, bench] = await Promise.all([openBrowser(), served(['fruit-bowl-wave'], 'fruit-bowl-wave')]);
    ({ page, faults } = await opened(browser, bench.url));
    page.on('request', (r) => requests.push(new URL(r.url()).pathname));
    await exact(page);
  });
  afterAll(async () => {
    await browser.close();
    await bench.close();
  });

  /** Shares of the picture that are walnut and maple, by their colour. */
  async function seen(): Promise<{ plug: number; field: number }> {
    const { data, width, height } = PNG.sync.read(await page.locator('.turned canvas').screenshot());
    let [plug, field] = [0, 0];
    for (let k = 0; k < data.length; k += 4) {
      const [r, g, b] = [data[k]!, data[k + 1]!, data[k + 2]!];
      // Wood is warm, and the paper is lighter than any of it.
      if (r - b < 12 || r + g + b > 720) continue;
      if (r < 125) plug++;
      else field++;
    }
    return { plug: plug / (width * height), field: field / (width * height) };
  }

  it('is loaded only when it is looked at, turned by hand and key, and looked into', async () => {
    expect(requests.filter((r) => /scene|vessel/.test(r))).toEqual([]);
    await page.getByRole('radio', { name: 'Vessel' }).check({ force: true });
    await expect.poll(async () => (await seen()).field, { timeout: 20_000 }).toBeGreaterThan(0.05);
    expect(requests.some((r) => /scene/.test(r))).toBe(true);
    const outside = await seen();
    expect(outside.plug).toBeGreaterThan(0.002);
    const before = await page.locator('.turned canvas').screenshot();
    await page.locator('.turned canvas').focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await expect
      .poll(async () => (await page.locator('.turned canvas').screenshot()).equals(before))
      .toBe(false);
    await page.getByRole('button', { name: 'cut away' }).click();
    await expect.poll(async () => Math.abs((await seen()).field - outside.field)).toBeGreaterThan(0.005);
    await page.getByRole('button', { name: 'inside', exact: true }).click();
    const box = (await page.locator('.turned canvas').boundingBox())!;
    const still = await page.locator('.turned canvas').screenshot();
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 40, box.y + box.height / 2 + 60, { steps: 5 });
    await page.mouse.up();
    await expect
      .poll(async () => (await page.locator('.turned canvas').screenshot()).equals(still))
      .toBe(false);
  });

  it('follows the card, and goes when another view is chosen', async () => {
    const before = await page.locator('.turned canvas').screenshot();
    await pick(page, 'bowl.height');
    await type(page, '70');
    await exact(page);
    await expect
      .poll(async () => (await page.locator('.turned canvas').screenshot()).equals(before), {
        timeout: 20_000,
      })
      .toBe(false);
    await page.getByRole('radio', { name: 'Piece', exact: true }).check({ force: true });
    expect(await page.locator('.turned').count()).toBe(0);
    expect(await shown(page, 'bowl.sides')).toBe('12');
  });

  it('is made whole: models, jigs and sheets', async () => {
    await page.getByRole('button', { name: 'Make', exact: true }).click();
    await page.getByRole('heading', { name: 'Made and proven' }).waitFor({ timeout: 60_000 });
    const files = readdirSync(join(bench.out, 'fruit-bowl-wave'));
    for (const f of ['vessel.glb', 'vessel.html', 'jig-low.svg']) expect(files).toContain(f);
    // What the graphics of this machine mutter is none of ours.
    expect(faults.filter((f) => !/WebGL|GPU|GL Driver/.test(f))).toEqual([]);
  });
});
