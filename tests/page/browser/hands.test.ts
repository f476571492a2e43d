import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { chromiumPath, openBrowser } from '../../support/browser.js';
import { dragTo, exact, pick, shown, type } from '../../support/page.js';
import { opened, type Served, served } from '../../support/serve.js';

describe.skipIf(chromiumPath === null)('the card under hand and key, in chromium', () => {
  let browser: Browser;
  let bench: Served;
  let page: Page;
  let faults: string[];

  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    bench = await served(['tea-box-rosette'], 'tea-box-rosette');
    ({ page, faults } = await opened(browser, bench.url));
    await exact(page);
  });
  afterEach(async () => {
    await page.context().close();
    await bench.close();
    expect(faults).toEqual([]);
  });

  const figure = (): Promise<string | null> => page.locator('.let-in').first().getAttribute('d');
  /** What has the focus: a value's key, else its words. */
  const focus = (): Promise<string> =>
    page.evaluate(() => {
      const on = document.activeElement as HTMLElement;
      return on.dataset.key ?? on.getAttribute('aria-label') ?? on.textContent ?? '';
    });

  it('does the whole job by keyboard: reach a value, step it, type it, save', async () => {
    for (let k = 0; (await focus()) !== 'pattern.gap'; k++) {
      expect(k, 'tabs until the value is reached').toBeLessThan(60);
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => shown(page, 'pattern.gap')).toBe('4.25 mm');
    await page.keyboard.press('Shift+ArrowDown');
    await expect.poll(() => shown(page, 'pattern.gap')).toBe('3.75 mm');
    await page.keyboard.press('Escape');
    expect(await focus()).toBe('pattern.gap');
    await page.keyboard.press('Enter');
    await page.keyboard.type('5.5');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    expect(await focus()).toBe('pattern.gap');
    expect(await shown(page, 'pattern.gap')).toBe('5.5 mm');
    await page.keyboard.press('Control+s');
    const gap = (): unknown =>
      JSON.parse(readFileSync(join(bench.folder, 'tea-box-rosette.json'), 'utf8')).pattern.gap;
    await expect.poll(gap).toBe(5.5);
  });

  it('looks about in the drawing by keyboard, and measures', async () => {
    const at = (): Promise<string | null> =>
      page.locator('.sight > g[role="img"]:not(.scale-bar)').getAttribute('transform');
    await page.locator('.sight').focus();
    const before = await at();
    await page.keyboard.press('+');
    await expect.poll(at).not.toBe(before);
    const near = await at();
    await page.keyboard.press('ArrowLeft');
    await expect.poll(at).not.toBe(near);
    await page.keyboard.press('0');
    await expect.poll(at).toBe(before);
    await page.keyboard.press('m');
    // The disc in the eye is 15 mm across, less the gap all round where the plug gives way.
    await expect.poll(() => page.locator('.measured text').textContent()).toMatch(/^1[45](\.\d+)? mm wide: /);
  });

  it('goes from mark to mark on the piece by keyboard', async () => {
    await page.locator('.sight').focus();
    await page.keyboard.press('Tab');
    const number = (): Promise<string | undefined> =>
      page.evaluate(() => (document.activeElement as SVGElement).dataset.number);
    expect(await number()).toBe('1');
    await page.keyboard.press('ArrowRight');
    expect(Number(await number())).toBeGreaterThan(1);
    const on = await number();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.chosen .mark-number').textContent()).toBe(on);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.chosen').count()).toBe(0);
  });

  it('shows a dimension under a resting pointer, where it rests', async () => {
    const paper = (await page.locator('.paper').boundingBox())!;
    await page.mouse.move(paper.x + paper.width / 2, paper.y + paper.height / 2);
    await page.locator('.measured text').waitFor();
    const text = await page.locator('.measured text').textContent();
    await page.locator('.switch label').nth(1).click();
    await page.mouse.move(paper.x + paper.width / 2 + 2, paper.y + paper.height / 2);
    await expect.poll(() => page.locator('.measured text').textContent()).toMatch(/ in wide: /);
    expect(text).toMatch(/ mm wide: /);
  });

  it('takes a whole drag back in one step, and does it again', async () => {
    const before = await figure();
    await pick(page, 'pattern.gap');
    await dragTo(page, [0.2, 0.25, 0.22]);
    await exact(page);
    const after = await figure();
    const gap = await shown(page, 'pattern.gap');
    expect(after).not.toBe(before);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(figure).toBe(before);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Redo' }).click();
    await expect.poll(figure).toBe(after);
    expect(await shown(page, 'pattern.gap')).toBe(gap);
  });

  it('says coarse while it is dragged and exact once it rests', async () => {
    await pick(page, 'pattern.gap');
    const slide = (await page.locator('.slide').boundingBox())!;
    await page.mouse.move(slide.x + slide.width * 0.3, slide.y + slide.height * 0.7);
    await page.mouse.down();
    await page.mouse.move(slide.x + slide.width * 0.22, slide.y + slide.height * 0.7, { steps: 5 });
    await expect.poll(() => page.locator('.stamp').textContent()).toMatch(/^coarse: /);
    await page.mouse.up();
    await exact(page);
  });

  it('shows lengths in inches at a click, the recipe unchanged', async () => {
    await page.locator('.switch label').nth(1).click();
    // 96 mm / 25.4 mm, the international inch.
    expect(await shown(page, 'outline.diameter')).toBe('3.7795 in');
    expect(await shown(page, 'cutter.diameter')).toBe('1/8 in');
    await pick(page, 'outline.diameter');
    await type(page, '4');
    await exact(page);
    await page.locator('.switch label').nth(0).click();
    expect(await shown(page, 'outline.diameter')).toBe('101.6 mm');
  });

  it('draws the recipe in inches, every size the same, when its unit is changed', async () => {
    const before = await figure();
    await pick(page, 'units');
    await page.locator('.tile', { hasText: 'in' }).click();
    await exact(page);
    expect(await figure()).toBe(before);
    await page.keyboard.press('Control+s');
    const onDisk = (): { units: string; depth: unknown } =>
      JSON.parse(readFileSync(join(bench.folder, 'tea-box-rosette.json'), 'utf8'));
    await expect.poll(() => onDisk().units).toBe('in');
    expect(onDisk().depth).toBe('8mm');
  });

  it('tells a value that cannot be in words at its place, keeps the drawing as it was, and leads there', async () => {
    await pick(page, 'pattern.points');
    await type(page, '2000');
    const fault = page.locator('.faults');
    await fault.waitFor();
    expect(await fault.textContent()).toContain('out of range');
    expect(await page.locator('.stamp').textContent()).toBe('as it was before the fault');
    expect(await page.locator('[data-key="pattern.points"]').getAttribute('aria-invalid')).toBe('true');
    await page.keyboard.press('Escape');
    await fault.getByRole('button', { name: 'pattern.points' }).click();
    await type(page, '9');
    await exact(page);
    expect(await fault.count()).toBe(0);
  });

  it('leads from a mark on the piece to its words, and back', async () => {
    const mark = page.locator('.mark').first();
    const number = await mark.getAttribute('data-number');
    await mark.click();
    const words = page.locator('.findings li.picked');
    expect(await words.textContent()).toContain(`${number}, `);
    await words.getByRole('button').click();
    expect(await page.locator('.findings li.picked').count()).toBe(0);
    expect(await page.locator('.chosen').count()).toBe(0);
    await page.locator('.findings ol').first().locator('li').first().getByRole('button').click();
    await expect.poll(() => page.locator('.chosen .mark-number').textContent()).toBe('1');
  });

  it('changes shape and pattern for another, and keeps what fits', async () => {
    await pick(page, 'outline.shape');
    await page.locator('.tile', { hasText: 'polygon' }).click();
    await exact(page);
    expect(await shown(page, 'outline.margin')).toBe('6 mm');
    // A ring's opening is larger than this disc: it is drawn at its own size instead.
    await page.locator('.tile', { hasText: 'Ring' }).locator('.stamp-size').waitFor();
    await page.locator('.tile', { hasText: 'Ring' }).click();
    await exact(page);
    await pick(page, 'pattern.generator');
    await page.locator('.tile', { hasText: /^Dots/ }).click();
    await expect.poll(() => shown(page, 'pattern.generator')).toMatch(/^Dots/);
    await page.getByRole('button', { name: 'One more layer' }).click();
    await expect.poll(() => page.locator('[data-key="pattern.1.generator"]').count()).toBe(1);
    await page.getByRole('button', { name: 'Take the last layer out' }).click();
    await expect.poll(() => page.locator('[data-key="pattern.generator"]').count()).toBe(1);
  });

  it('shows every view, each in words and at its own size', async () => {
    const says = new Set<string>();
    for (const name of [
      'Piece',
      'Pocket',
      'Plug',
      'Gap',
      'Where cutters get to',
      'Walls and grain',
      'Section',
      'Coupon',
    ]) {
      await page.getByRole('radio', { name, exact: true }).check({ force: true });
      const words = page.locator('.says');
      await expect.poll(() => words.textContent(), { timeout: 15_000 }).not.toMatch(/drawing …|^$/);
      says.add((await words.textContent())!);
      expect(
        await page.locator('.sight > g[role="img"]:not(.scale-bar) :is(path, image)').count(),
      ).toBeGreaterThan(0);
    }
    expect(says.size).toBe(8);
  });
});
