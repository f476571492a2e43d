import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { chromiumPath, openBrowser } from '../../support/browser.js';
import { exact, pick, shown, type } from '../../support/page.js';
import { opened, type Served, served } from '../../support/serve.js';

const noFace = JSON.stringify({ outline: { shape: 'blob' }, pattern: { generator: 'tiling' } });

describe.skipIf(chromiumPath === null)('the pattern book, in chromium', () => {
  let browser: Browser;
  let bench: Served;
  let page: Page;
  let faults: string[];

  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    bench = await served(['star-trivet']);
    writeFileSync(join(bench.folder, 'no-face.json'), noFace);
    ({ page, faults } = await opened(browser, bench.url));
    await entry('face:ring').waitFor();
  });
  afterEach(async () => {
    await page.context().close();
    await bench.close();
    expect(faults).toEqual([]);
  });

  const entry = (key: string) => page.locator(`[data-entry="${key}"]`);
  const keys = () =>
    page.locator('[data-entry]').evaluateAll((all) => all.map((b) => (b as HTMLElement).dataset.entry));
  const focused = () =>
    page.evaluate(() => {
      const at = document.activeElement as HTMLElement;
      return at.dataset.entry ?? at.getAttribute('type') ?? at.tagName;
    });
  const press = async (...names: string[]) => {
    for (const name of names) await page.keyboard.press(name);
  };
  const openBook = async () => {
    await page.getByRole('button', { name: 'Pattern book', exact: true }).click();
    await entry('face:ring').waitFor();
  };
  /** A card that is not saved: a pattern's sample. */
  const startTiling = async () => {
    await entry('pattern:tiling').click();
    await exact(page);
  };
  const name = () => page.locator('.card h1').textContent();

  it('is gone through by arrow keys from the search field and back, and chosen from by Enter', async () => {
    expect(await focused()).toBe('search');
    await press('ArrowDown');
    expect(await focused()).toBe('folder:no-face.json');
    await press('ArrowRight', 'ArrowRight');
    expect(await focused()).toBe('shipped:acorn-box-lid');
    await press('ArrowDown', 'ArrowUp', 'Control+End');
    expect(await focused()).toBe('face:ring');
    await press('Control+Home', 'ArrowUp');
    expect(await focused()).toBe('search');
    await press('ArrowDown', 'ArrowRight', 'Enter');
    await exact(page);
    expect(await name()).toBe('star trivet');
    expect(await page.locator('.file').textContent()).toBe('star-trivet.json');
    expect(await page.locator('dialog[open]').count()).toBe(0);
    await page.waitForFunction(() => document.activeElement?.tagName === 'H1');
  });

  it('shows what words fit, says how many, and says when none do', async () => {
    const said = page.locator('dialog [role=status]').first();
    await page.keyboard.type('star wal');
    await said.getByText('3 fit.').waitFor();
    expect(await keys()).toEqual([
      'folder:star-trivet.json',
      'shipped:star-trivet',
      'shipped:tea-chest-border',
    ]);
    await page.keyboard.type('zz');
    await said.getByText('None fits.').waitFor();
    await page.getByRole('button', { name: 'Show all again' }).click();
    await entry('face:ring').waitFor();
    expect(await focused()).toBe('search');
  });

  it('closes by Escape, and the focus is where it was', async () => {
    await startTiling();
    await openBook();
    await press('ArrowDown', 'Escape');
    await page.waitForFunction(() => document.activeElement?.textContent === 'Pattern book');
    expect(await name()).toBe('tiling');
  });

  it('draws what is in sight and nothing else, and says why one cannot be drawn', async () => {
    await entry('shipped:acorn-box-lid').locator('svg').waitFor();
    await entry('folder:no-face.json').getByText('Not drawn:').waitFor();
    // Long enough for a dozen more drawings, were they asked for.
    await page.waitForTimeout(1500);
    const beyond = await page.locator('[data-entry]').evaluateAll((all) => {
      const end = document.querySelector('.pages')!.getBoundingClientRect().bottom;
      return all
        .filter((b) => b.getBoundingClientRect().top > end + 300 && b.querySelector('svg'))
        .map((b) => (b as HTMLElement).dataset.entry);
    });
    expect(beyond).toEqual([]);
    await page.getByRole('button', { name: /^Turn to Your own drawing/ }).click();
    // Its sample names an acorn that ships.
    await entry('pattern:drawing').locator('svg').waitFor();
  });

  it('asks before changes that are not saved go, and goes back', async () => {
    await startTiling();
    await openBook();
    await entry('pattern:rosette').click();
    const asks = page.getByRole('dialog', { name: 'The card has changes that are not saved.' });
    await asks.waitFor();
    await press('Escape');
    await page.waitForFunction(() => document.querySelectorAll('dialog[open]').length === 1);
    expect(await focused()).toBe('pattern:rosette');
    expect(await name()).toBe('tiling');
    await press('Enter');
    await asks.getByRole('button', { name: 'Leave them' }).click();
    await exact(page);
    expect(await name()).toBe('rosette');
    expect(await page.locator('dialog[open]').count()).toBe(0);
  });

  it('saves them first when told, and stays when the name is not given', async () => {
    await startTiling();
    await openBook();
    await entry('folder:star-trivet.json').click();
    const first = page.getByRole('button', { name: 'Save them first' });
    await first.click();
    await page.getByRole('button', { name: 'Not now' }).click();
    expect(await name()).toBe('tiling');
    await first.click();
    await page.getByRole('textbox', { name: 'File in the served folder' }).fill('floor');
    await press('Enter');
    await page.locator('.file', { hasText: 'star-trivet.json' }).waitFor();
    await openBook();
    expect((await keys()).slice(0, 3)).toEqual([
      'folder:floor.json',
      'folder:no-face.json',
      'folder:star-trivet.json',
    ]);
  });

  it('lets Ctrl Z in the search field be the field’s own', async () => {
    await entry('pattern:rosette').click();
    await exact(page);
    await pick(page, 'pattern.gap');
    await type(page, '3.5');
    await exact(page);
    expect(await shown(page, 'pattern.gap')).toMatch(/^3\.5/);
    await openBook();
    await page.keyboard.type('a');
    await press('Control+z', 'Escape', 'Escape');
    await page.waitForFunction(() => document.querySelector('dialog[open]') === null);
    expect(await shown(page, 'pattern.gap')).toMatch(/^3\.5/);
  });
});
