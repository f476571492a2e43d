import { readFileSync } from 'node:fs';

/** The package's version, from the nearest package.json above this file that is ours. */
export function version(): string {
  for (let dir = new URL('./', import.meta.url); ; dir = new URL('../', dir)) {
    try {
      const found: unknown = JSON.parse(readFileSync(new URL('package.json', dir), 'utf8'));
      const { name, version: v } = found as { name?: unknown; version?: unknown };
      if (name === 'inlaywright' && typeof v === 'string') return v;
    } catch {
      // No package.json here, or not one of ours: look further up.
    }
    if (dir.pathname === new URL('../', dir).pathname) return 'unknown';
  }
}
