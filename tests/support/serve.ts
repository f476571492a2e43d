import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** A folder of the test's own, served by the command as a maker would start it. */
export interface Served {
  readonly folder: string;
  readonly out: string;
  /** The address as printed, with its key. */
  readonly url: string;
  close(): Promise<void>;
}

/** Starts `inlaywright serve` on a new folder that holds copies of some recipes that ship. `open`: one to open first. */
export async function served(recipes: readonly string[] = [], open?: string): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), 'inlaywright-page-'));
  for (const name of recipes) cpSync(join(root, 'patterns', `${name}.json`), join(folder, `${name}.json`));
  const out = join(folder, 'out');
  const child = spawn(
    process.execPath,
    [
      join(root, 'dist', 'cli.js'),
      'serve',
      open === undefined ? folder : join(folder, `${open}.json`),
      '--no-open',
      '--out',
      out,
    ],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  const url = await printed(child);
  return {
    folder,
    out,
    url,
    async close() {
      const gone = new Promise((done) => child.once('exit', done));
      child.kill('SIGINT');
      await gone;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function printed(child: ChildProcess): Promise<string> {
  return new Promise((done, failed) => {
    let said = '';
    let errors = '';
    child.stdout!.on('data', (d) => {
      said += d;
      const url = /http:\/\/127\.0\.0\.1:\d+\/#\S+/.exec(said)?.[0];
      if (url) done(url);
    });
    child.stderr!.on('data', (d) => (errors += d));
    child.once('exit', (code) => failed(new Error(`serve ended with ${code}: ${said}${errors}`)));
  });
}

/** Opens the page; `faults` gathers what goes wrong in it: errors of scripts and of the console. */
export async function opened(
  browser: Browser,
  url: string,
  options: BrowserContextOptions = {},
): Promise<{ page: Page; faults: string[] }> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (e) => faults.push(`page: ${e.message}`));
  page.on('console', (m) => {
    if (m.type() === 'error' || m.type() === 'warning') faults.push(`console: ${m.text()}`);
  });
  await page.goto(url);
  return { page, faults };
}
