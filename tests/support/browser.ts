import { spawnSync } from 'node:child_process';
import { type Browser, chromium } from 'playwright-core';

/** Where Debian's chromium is, or null where there is none: then what needs a browser is skipped. */
export const chromiumPath: string | null = found();

function found(): string | null {
  const which = spawnSync('which', ['chromium'], { encoding: 'utf8' });
  return which.status === 0 ? which.stdout.trim() : null;
}

export function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: chromiumPath!,
    // Root may not use the sandbox.
    args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
  });
}
