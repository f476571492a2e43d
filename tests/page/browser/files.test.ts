import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { chromiumPath, openBrowser } from '../../support/browser.js';
import { exact, pick, shown, type } from '../../support/page.js';
import { opened, type Served, served } from '../../support/serve.js';

describe.skipIf(chromiumPath === null)('files under the card, in chromium', () => {
  let browser: Browser;
  let bench: Served;
  let page: Page;
  let faults: string[];
  const file = (): string => join(bench.folder, 'trivet-dots.json');
  const onDisk = (): { [key: string]: unknown } => JSON.parse(readFileSync(file(), 'utf8'));

  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    bench = await served(['trivet-dots'], 'trivet-dots');
    ({ page, faults } = await opened(browser, bench.url));
    await exact(page);
  });
  afterEach(async () => {
    await page.context().close();
    await bench.close();
    expect(faults).toEqual([]);
  });

  it('saves one changed value and leaves the rest of the file as its author laid it out', async () => {
    const before = readFileSync(file(), 'utf8');
    await pick(page, 'depth');
    await type(page, '7.25');
    await exact(page);
    expect(readFileSync(file(), 'utf8')).toBe(before);
    await page.keyboard.press('Control+s');
    await expect.poll(() => onDisk().depth).toBe(7.25);
    const changed = before.replace(/"depth": [\d.]+/, '"depth": 7.25');
    expect(readFileSync(file(), 'utf8')).toBe(changed);
    expect(await page.locator('.file').textContent()).not.toContain('not saved');
  });

  it('shows what an editor changes on disk, live, and lets it be undone', async () => {
    const text = readFileSync(file(), 'utf8').replace(/"depth": [\d.]+/, '"depth": 6.5');
    // As editors do: a new file beside it, moved over the old one.
    writeFileSync(`${file()}.new`, text);
    renameSync(`${file()}.new`, file());
    await expect.poll(() => shown(page, 'depth')).toBe('6.5 mm');
    await exact(page);
    await page.keyboard.press('Control+z');
    await expect.poll(() => shown(page, 'depth')).not.toBe('6.5 mm');
  });

  it('asks before it overwrites what changed underneath; the file can win', async () => {
    await pick(page, 'depth');
    await type(page, '7.25');
    writeFileSync(file(), readFileSync(file(), 'utf8').replace(/"depth": [\d.]+/, '"depth": 6.5'));
    const ask = page.getByRole('alertdialog');
    await ask.waitFor();
    await page.keyboard.press('Control+s');
    await page.waitForTimeout(300);
    expect(onDisk().depth).toBe(6.5);
    await ask.getByRole('button', { name: 'Take the file' }).click();
    await expect.poll(() => shown(page, 'depth')).toBe('6.5 mm');
    expect(await ask.count()).toBe(0);
  });

  it('asks before it overwrites what changed underneath; the card can win', async () => {
    await pick(page, 'depth');
    await type(page, '7.25');
    writeFileSync(file(), readFileSync(file(), 'utf8').replace(/"depth": [\d.]+/, '"depth": 6.5'));
    const ask = page.getByRole('alertdialog');
    await ask.getByRole('button', { name: 'Keep mine' }).click();
    expect(onDisk().depth).toBe(6.5);
    await page.keyboard.press('Control+s');
    await expect.poll(() => onDisk().depth).toBe(7.25);
  });

  it('takes a dropped drawing: kept beside the recipe, and drawn', async () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40"><circle cx="20" cy="20" r="15"/></svg>';
    await drop(page, 'leaf.svg', svg, 'image/svg+xml');
    await kept(page);
    await expect.poll(() => shown(page, 'pattern.generator')).toBe('Drawing');
    const at = (onDiskPattern(await cardText(page)) as { file: string }).file;
    expect(readFileSync(join(bench.folder, at), 'utf8')).toBe(svg);
  });

  it('takes a dropped font: kept beside the recipe, and set', async () => {
    const font = readFileSync(
      new URL(
        '../../../node_modules/@expo-google-fonts/arvo/400Regular/Arvo_400Regular.ttf',
        import.meta.url,
      ),
    );
    await drop(page, 'shop sign.ttf', font, 'font/ttf');
    await kept(page);
    const { generator, font: at } = onDiskPattern(await cardText(page)) as {
      generator: string;
      font: string;
    };
    expect(generator).toBe('lettering');
    expect(readFileSync(join(bench.folder, at)).equals(font)).toBe(true);
  });

  it('takes a dropped recipe as a card that has no file yet', async () => {
    const recipe = readFileSync(new URL('../../../patterns/hexagon-coaster.json', import.meta.url), 'utf8');
    await drop(page, 'mine.json', recipe, 'application/json');
    await expect.poll(() => page.locator('.file').textContent()).toBe('not saved yet');
    await exact(page);
    await page.keyboard.press('Control+s');
    await page.getByRole('textbox', { name: 'File in the served folder' }).fill('coasters/mine');
    await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click();
    await expect.poll(() => existsSync(join(bench.folder, 'coasters', 'mine.json'))).toBe(true);
  });

  it('does not let a dropped recipe take changes away that are not saved', async () => {
    await pick(page, 'depth');
    await type(page, '7.25');
    const recipe = readFileSync(new URL('../../../patterns/hexagon-coaster.json', import.meta.url), 'utf8');
    await drop(page, 'mine.json', recipe, 'application/json');
    await expect.poll(() => page.locator('.notice').textContent()).toContain('drop mine.json again');
    expect(await shown(page, 'depth')).toBe('7.25 mm');
  });

  it('turns away what is none of these, in a line', async () => {
    await drop(page, 'notes.txt', 'hello', 'text/plain');
    await expect
      .poll(() => page.locator('.notice').textContent())
      .toContain('notes.txt is none of what a card takes');
  });

  /** What stands on the card, saved to find it out. */
  async function cardText(p: Page): Promise<string> {
    await p.keyboard.press('Control+s');
    await p.waitForFunction(() => !document.querySelector('.file')?.textContent?.includes('not saved'));
    return readFileSync(file(), 'utf8');
  }
});

function onDiskPattern(text: string): unknown {
  return JSON.parse(text).pattern;
}

/** A dropped file is kept once the page says where, and then drawn. */
async function kept(page: Page): Promise<void> {
  await page.locator('.notice', { hasText: 'is kept as' }).waitFor();
  await exact(page);
}

/** Drops a file on the page, as a file manager does. */
async function drop(page: Page, name: string, content: string | Buffer, type: string): Promise<void> {
  const base64 = Buffer.from(content).toString('base64');
  await page.evaluate(
    ([n, data, t]) => {
      const bytes = Uint8Array.from(atob(data!), (c) => c.charCodeAt(0));
      const transfer = new DataTransfer();
      transfer.items.add(new File([bytes], n!, { type: t! }));
      for (const what of ['dragover', 'drop'])
        document.body.dispatchEvent(
          new DragEvent(what, { dataTransfer: transfer, bubbles: true, cancelable: true }),
        );
    },
    [name, base64, type],
  );
}
