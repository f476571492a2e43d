import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const DIST = new URL('../../dist/', import.meta.url);
const names = readdirSync(new URL('bin/', DIST));
const texts = new Map(names.map((name) => [name, readFileSync(new URL(`bin/${name}`, DIST), 'utf8')]));

describe('the command as it is put together', () => {
  it('is what is started, and holds all of its own that it loads', () => {
    const cli = readFileSync(new URL('cli.js', DIST), 'utf8');
    expect(cli).toMatch(/^#!\/usr\/bin\/env node\n/);
    const loaded = [...cli.matchAll(/import\("(\.[^"]+)"\)/g)].map((m) => m[1]!);
    expect(loaded).toHaveLength(1);
    expect(existsSync(new URL(loaded[0]!, DIST))).toBe(true);
    for (const [name, text] of texts)
      for (const [, from] of text.matchAll(/(?:\bfrom |\bimport\(|^import )"(\.[^"]*)"/gm))
        expect(names, `${name} loads ${from}`).toContain(from!.replace(/^\.\//, ''));
  });

  it('has a file for every thread and folder that is looked for beside it', () => {
    const beside = [...texts].flatMap(([name, text]) =>
      [...text.matchAll(/new URL\("([^"]+)", import\.meta\.url\)/g)].map((m) => ({ name, path: m[1]! })),
    );
    const threads = beside.filter(({ path }) => path.endsWith('-thread.js'));
    expect(new Set(threads.map((t) => t.path))).toEqual(
      new Set(['./make-thread.js', './piece-thread.js', './vessel-thread.js']),
    );
    for (const { name, path } of beside) {
      const place = new URL(path, new URL(`bin/${name}`, DIST));
      expect(existsSync(path.endsWith('.js') ? place : new URL('./', place)), `${name}: ${path}`).toBe(true);
    }
  });
});
