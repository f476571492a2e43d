import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';

/* The page as it is built into the package: dist is built before the tests. */

const built = new URL('../../dist/page/', import.meta.url);
const files = (readdirSync(built, { recursive: true, encoding: 'utf8' }) as string[])
  .map((f) => f.replaceAll('\\', '/'))
  .filter((f) => /\.\w+$/.test(f));
const text = (file: string): string => readFileSync(new URL(file, built), 'utf8');
const code = files.filter((f) => /\.(html|js|css)$/.test(f));
const html = text('index.html');

/** Most that the page may fetch before it is used, packed as gzip does, bytes. */
const MOST = 500_000;

/**
 * What looks like an address and is a name: namespaces of XML that the readers of drawings know and never ask for, and
 * where css-tree wants its own faults reported.
 */
const NAMES = [/^http:\/\/www\.w3\.org\//, /^https:\/\/github\.com\/csstree\/csstree\/issues$/];

/** What a file has the browser fetch at once: what it imports (not where it is run: `import(...)`), and its worker. */
function fetchedBy(file: string): string[] {
  if (file === 'index.html') return addressesIn(html).filter((f) => /\.(js|css)$/.test(f));
  if (!file.endsWith('.js')) return [];
  const said = text(file);
  const forms = [
    /(?:\bfrom|\bimport)\s*["'`]\.\/([^"'`]+)["'`]/g,
    /\bnew Worker\(\s*new URL\((?:\s*new URL\()?\s*["'`](?:\.\/)?([^"'`]+)["'`]/g,
  ];
  return forms.flatMap((form) => [...said.matchAll(form)].map(([, name]) => `assets/${name}`));
}

function addressesIn(page: string): string[] {
  return [...page.matchAll(/\b(?:src|href)="\.\/([^"]*)"/g)].map(([, at]) => at);
}

/** All that is fetched before anything is asked of the page, but for what it fetches as data. */
function atFirst(): string[] {
  const all = ['index.html'];
  for (const f of all) all.push(...fetchedBy(f).filter((g) => !all.includes(g)));
  return all;
}

describe('the built page', () => {
  it('has a page, its script, its style and a worker, which are fetched at first', () => {
    const all = atFirst();
    for (const kind of [/^index\.html$/, /^assets\/index-.*\.js$/, /\.css$/, /^assets\/worker-.*\.js$/])
      expect(all.filter((f) => kind.test(f))).toHaveLength(1);
    for (const f of all) expect(files).toContain(f);
  });

  it(`fetches under ${MOST} bytes at first, but for fonts and the engine that shapes text`, () => {
    const sizes = atFirst().map(
      (f) => [f, gzipSync(readFileSync(new URL(f, built)), { level: 9 }).length] as const,
    );
    const sum = sizes.reduce((n, [, size]) => n + size, 0);
    expect(sum, sizes.map(([f, size]) => `${f} ${size}`).join(', ')).toBeLessThan(MOST);
    for (const [f, size] of sizes) expect(size, f).toBeGreaterThan(100);
  });

  it('asks nothing of any other host', () => {
    const addresses = [...code, ...files.filter((f) => f.endsWith('.svg'))].flatMap((f) =>
      [...text(f).matchAll(/\b(?:https?|wss?|ftp):\/\/[^\s"'`\\)<>]+/g)].map(([address]) => address),
    );
    expect(addresses.length).toBeGreaterThan(0);
    expect(addresses.filter((a) => !NAMES.some((n) => n.test(a)))).toEqual([]);
  });

  it('names files by their place beside it, which are there', () => {
    const named = [...html.matchAll(/\b(?:src|href)="([^"]*)"/g)].map(([, at]) => at);
    expect(named.length).toBeGreaterThan(2);
    for (const at of named) {
      expect(at).toMatch(/^\.\//);
      expect(existsSync(new URL(at, built)), at).toBe(true);
    }
    for (const f of files.filter((f) => f.endsWith('.css'))) {
      expect(text(f)).not.toMatch(/@import/);
      for (const [, at] of text(f).matchAll(/url\(\s*["']?([^"')]*)/g))
        expect(at).toMatch(/^(#|data:|\.?\/?[\w-]+)/);
    }
  });

  it('has no script or style in its text, which its policy would not let run', () => {
    const scripts = [...html.matchAll(/<script\b([^>]*)>(.*?)<\/script>/gs)];
    expect(scripts).toHaveLength(1);
    for (const [, attributes, inside] of scripts) {
      expect(attributes).toMatch(/\bsrc="/);
      expect(inside.trim()).toBe('');
    }
    expect(html).not.toMatch(/<style\b|\sstyle=|\son\w+=|javascript:/i);
  });

  it('makes no code out of text', () => {
    for (const f of code) {
      expect(text(f).match(/(?<![\w$.])eval\s*\(.{0,40}/)?.[0], f).toBeUndefined();
      expect(text(f).match(/(?<![\w$.])(?:new\s+)?Function\s*\(.{0,40}/)?.[0], f).toBeUndefined();
      expect(text(f).match(/\bimportScripts\s*\(.{0,40}/)?.[0], f).toBeUndefined();
    }
  });
});
