import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chromiumPath, openBrowser } from '../support/browser.js';
import { exact, pick } from '../support/page.js';
import { opened, type Served, served } from '../support/serve.js';

const CHANGES = 500;
/** Changes before the first measure: caches fill and engines settle. */
const WARM = 60;
/** How much more may be held after all changes than after the first. */
const MORE = 1.2;

/** Bytes that the page and each of its workers hold once everything let go of is gone. */
async function held(page: Page): Promise<number[]> {
  const session = await page.context().newCDPSession(page);
  const ids: string[] = [];
  const answers = new Map<number, (result: { usedSize: number }) => void>();
  session.on('Target.attachedToTarget', ({ sessionId, targetInfo }) => {
    if (targetInfo.type === 'worker') ids.push(sessionId);
  });
  session.on('Target.receivedMessageFromTarget', ({ message }) => {
    const { id, result } = JSON.parse(message);
    answers.get(id)?.(result);
  });
  // What ended a moment ago is let go of in the next turns, which may take their time on a busy machine.
  for (let k = 0; k < 3; k++) {
    await new Promise((next) => setTimeout(next, 300));
    await session.send('HeapProfiler.collectGarbage');
  }
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await session.send('Target.setAutoAttach', {
    autoAttach: true,
    waitForDebuggerOnStart: false,
    flatten: false,
  });
  let last = 0;
  const ask = (sessionId: string, method: string): Promise<{ usedSize: number }> =>
    new Promise((done) => {
      const id = ++last;
      answers.set(id, done);
      void session.send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id, method }) });
    });
  const workers: number[] = [];
  for (const id of ids) {
    await ask(id, 'HeapProfiler.collectGarbage');
    workers.push((await ask(id, 'Runtime.getHeapUsage')).usedSize);
  }
  await session.detach();
  return [usedSize, ...workers];
}

describe.skipIf(chromiumPath === null)('the page through a long evening, in chromium', () => {
  let browser: Browser;
  let bench: Served;
  beforeAll(async () => {
    browser = await openBrowser();
    bench = await served(['tea-box-rosette'], 'tea-box-rosette');
  });
  afterAll(async () => {
    await browser.close();
    await bench.close();
  });

  it(`holds no more after ${CHANGES} changes than after ${WARM}, and says nothing in its console`, async () => {
    const { page, faults } = await opened(browser, bench.url);
    await exact(page);
    const keys = ['pattern.gap', 'pattern.turn', 'pattern.ring', 'depth', 'fit.clearance', 'outline.margin'];
    const views = ['pocket', 'gap', 'reach', 'walls', 'section', 'piece'];
    const change = async (k: number): Promise<void> => {
      if (k % 20 === 0) {
        await pick(page, keys[(k / 20) % keys.length]!);
        await page
          .locator(`.small-view input[value=${views[(k / 20) % views.length]}]`)
          .check({ force: true });
      }
      // Dragged and let go, up and down by turns.
      await page.locator('.slide').evaluate((s, n) => {
        const slide = s as HTMLInputElement;
        const step = Number(slide.step);
        for (let i = 1; i <= 3; i++) {
          slide.value = String(slide.valueAsNumber + (n % 2 === 0 ? step : -step));
          slide.dispatchEvent(new Event('input', { bubbles: true }));
        }
        slide.dispatchEvent(new Event('change', { bubbles: true }));
      }, k);
      await exact(page);
    };
    for (let k = 0; k < WARM; k++) await change(k);
    const before = await held(page);
    for (let k = WARM; k < CHANGES; k++) await change(k);
    const after = await held(page);
    expect(before.length).toBe(4);
    console.log(`bytes held, page and workers: ${before.join(', ')} before, ${after.join(', ')} after`);
    before.forEach((b, k) => {
      expect(b).toBeGreaterThan(100_000);
      expect(after[k]! / b).toBeLessThan(MORE);
    });
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
