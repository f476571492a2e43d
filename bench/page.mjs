import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

/*
 * How long a dragged value takes to be seen: from the slider's input event to the frame that shows the new figure, on
 * every shipped recipe, in Chromium. And the longest the page's own thread was kept from the maker meanwhile.
 */

const root = fileURLToPath(new URL('../', import.meta.url));
const CLI = process.env.INLAYWRIGHT_BENCH_CLI ?? join(root, 'dist', 'cli.js');
const STEPS = Number(process.env.INLAYWRIGHT_BENCH_STEPS ?? 40);
const only = process.argv.slice(2);

const recipes = readdirSync(join(root, 'patterns'))
  .filter((f) => f.endsWith('.json'))
  .map((f) => f.replace('.json', ''))
  .filter((n) => only.length === 0 || only.includes(n));

const folder = mkdtempSync(join(tmpdir(), 'inlaywright-bench-'));
cpSync(join(root, 'patterns'), folder, { recursive: true });
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
});
try {
  const all = [];
  const blocks = [];
  console.log(
    'recipe'.padEnd(28),
    'value'.padEnd(24),
    'median',
    '  p95',
    ' block',
    ' ms; rounded while dragging, %',
  );
  for (const name of recipes) {
    const got = await dragged(name);
    if (!got) {
      console.log(name.padEnd(28), 'no value whose change is seen');
      continue;
    }
    all.push(...got.times);
    blocks.push(got.block);
    console.log(
      name.padEnd(28),
      got.key.padEnd(24),
      ...[share(got.times, 0.5), share(got.times, 0.95), got.block].map((v) => v.toFixed(0).padStart(6)),
      `${got.rounded.toFixed(0).padStart(8)} %`,
    );
  }
  console.log(
    `all ${recipes.length} recipes, ${all.length} steps: median ${share(all, 0.5).toFixed(0)} ms, p95 ${share(all, 0.95).toFixed(0)} ms; longest block of the page's thread ${Math.max(0, ...blocks).toFixed(0)} ms`,
  );
} finally {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}

function share(values, at) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(at * sorted.length) - 1)] ?? 0;
}

function served(name) {
  const server = spawn(process.execPath, [
    CLI,
    'serve',
    join(folder, `${name}.json`),
    '--no-open',
    '--out',
    join(folder, 'out'),
  ]);
  return new Promise((done) => {
    let said = '';
    server.stdout.on('data', (d) => {
      said += d;
      const found = /http:\/\/127\S+/.exec(said)?.[0];
      if (found) done({ address: found, stop: () => server.kill('SIGINT') });
    });
  });
}

async function dragged(name) {
  const { address, stop } = await served(name);
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  try {
    await page.addInitScript(() => {
      globalThis.blocks = [];
      new PerformanceObserver((list) => {
        for (const e of list.getEntries()) globalThis.blocks.push({ at: e.startTime, took: e.duration });
      }).observe({ entryTypes: ['longtask'] });
    });
    await page.goto(address);
    await exact(page);
    const keys = await page.$$eval('[data-key^="pattern"]', (all) => all.map((b) => b.dataset.key));
    for (const key of keys.filter((k) => !/seed|generator|shape|turn$/.test(k))) {
      await page.locator(`[data-key="${key}"]`).evaluate((b) => b.click());
      if ((await page.locator('.slide').count()) === 0) continue;
      // Dragged from where it lies, a little up and down again.
      const got = await page.evaluate(drag, STEPS);
      if (got) return { key, ...got };
      await page.keyboard.press('Control+z');
      await exact(page);
    }
    return null;
  } finally {
    await page.close();
    stop();
  }
}

function exact(page) {
  return page.waitForFunction(() => document.querySelector('.stamp')?.textContent === 'exact', null, {
    timeout: 60_000,
  });
}

/** Runs in the page. */
async function drag(steps) {
  const slide = document.querySelector('.slide');
  const step = Number(slide.step);
  const start = slide.valueAsNumber;
  const seen = () =>
    [...document.querySelectorAll('.hollow, .let-in')].map((p) => p.getAttribute('d')).join();
  const painted = () => new Promise((go) => requestAnimationFrame(() => setTimeout(go, 0)));
  const times = [];
  let rounded = 0;
  const began = performance.now();
  for (let k = 1; k <= steps + 3; k++) {
    // Up ten steps, down ten, and so on.
    const up = 10 - Math.abs(10 - (k % 20));
    slide.value = String(start + up * step);
    const before = seen();
    const from = performance.now();
    slide.dispatchEvent(new Event('input', { bubbles: true }));
    while (seen() === before && performance.now() - from < 1500) await painted();
    if (seen() === before) {
      if (times.length > 5) continue;
      slide.dispatchEvent(new Event('change', { bubbles: true }));
      return null;
    }
    // The first steps warm the workers, as a hand does before it drags on.
    if (k <= 3) continue;
    times.push(performance.now() - from);
    if (document.querySelector('.stamp').textContent.includes('corners rounded')) rounded++;
  }
  slide.dispatchEvent(new Event('change', { bubbles: true }));
  const block = Math.max(0, ...globalThis.blocks.filter((b) => b.at > began).map((b) => b.took));
  return { times, block, rounded: (100 * rounded) / steps };
}
