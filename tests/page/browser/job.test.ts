import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { unzipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { chromiumPath, openBrowser } from '../../support/browser.js';
import { dragTo, exact, pick, shown } from '../../support/page.js';
import { opened, type Served, served } from '../../support/serve.js';

const cli = fileURLToPath(new URL('../../../dist/cli.js', import.meta.url));

describe.skipIf(chromiumPath === null)('the job, in chromium', () => {
  let browser: Browser;
  let bench: Served;
  let page: Page;
  let faults: string[];

  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    bench = await served();
    ({ page, faults } = await opened(browser, bench.url));
  });
  afterEach(async () => {
    await page.context().close();
    await bench.close();
    expect(faults).toEqual([]);
  });

  it('goes from a pattern of the book to files that are byte for byte the command line’s', async () => {
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /^Rosette Drops/ })
      .click();
    await exact(page);

    // Walls dragged thin: the page says coarse while it is dragged, then finds what that does.
    await pick(page, 'pattern.gap');
    await dragTo(page, [0.3, 0.05]);
    await exact(page);
    expect(Number.parseFloat((await shown(page, 'pattern.gap'))!)).toBeLessThan(2);
    const thin = page.locator('.findings li', { hasText: /wall/i }).first();
    expect(await thin.textContent()).toMatch(/mm/);
    const before = await page.locator('.findings li').count();

    // Put right: the finding goes.
    await page.getByRole('button', { name: /^Back to/ }).click();
    await exact(page);
    expect(await page.locator('.findings li').count()).toBeLessThan(before);

    await page.getByRole('button', { name: 'Make', exact: true }).click();
    await page.getByRole('textbox', { name: 'File in the served folder' }).fill('first');
    await page.keyboard.press('Enter');
    const done = page.getByRole('heading', { name: 'Made and proven' });
    await done.waitFor({ timeout: 60_000 });

    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: /as one zip/ }).click();
    const zip = unzipSync(readFileSync(await (await download).path()));
    const made = spawnSync(
      process.execPath,
      [cli, 'make', join(bench.folder, 'first.json'), '--out', join(bench.folder, 'by-command')],
      { encoding: 'utf8' },
    );
    expect(made.status).toBe(0);
    const [name] = readdirSync(join(bench.folder, 'by-command'));
    const there = join(bench.folder, 'by-command', name!);
    const files = readdirSync(there).sort();
    expect(files.length).toBeGreaterThan(5);
    expect(Object.keys(zip).sort()).toEqual(files.map((f) => `${name}/${f}`));
    for (const f of files)
      expect(Buffer.from(zip[`${name}/${f}`]!).equals(readFileSync(join(there, f))), f).toBe(true);
  });

  it('stops making when told, and leaves nothing', async () => {
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /^Lettering/ })
      .first()
      .click();
    await exact(page);
    await page.getByRole('button', { name: 'Make', exact: true }).click();
    await page.getByRole('textbox', { name: 'File in the served folder' }).fill('stopped');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.locator('.notice', { hasText: 'Stopped: nothing was written.' }).waitFor();
    expect(readdirSync(bench.folder)).not.toContain('out');
  });
});
