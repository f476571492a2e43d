import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const SPREAD_EDGE = /\{\s*\.\.\.[^{}]*\b(?:x0|y0|x1|y1|cx|cy)\s*:[^{}]*\}/g;

describe('edges', () => {
  // Sums that meet an edge made so beside others put each number they read on the heap: the pass was a third slower for it.
  it('are never made by spreading one into another', () => {
    const src = join(import.meta.dirname, '../../src');
    // The proof has no edges of this kind: it keeps all its numbers in columns.
    const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(
      (f) => f.endsWith('.ts') && !f.startsWith('proof'),
    );
    expect(files.length).toBeGreaterThan(400);
    const found = files.flatMap((file) =>
      [...readFileSync(join(src, file), 'utf8').matchAll(SPREAD_EDGE)].map((m) => `${file}: ${m[0]}`),
    );
    expect(found).toEqual([]);
  });

  it('that are made so are found', () => {
    expect('out.push({ ...e, x0: x, y0: y });'.match(SPREAD_EDGE)).toEqual(['{ ...e, x0: x, y0: y }']);
    expect('({ ...stretch, edge: moved(e, x0, y0, x1, y1) })'.match(SPREAD_EDGE)).toBeNull();
  });
});
