import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

/** Every finding's code, as the source has it: `code: 'thin-skin'`, `code: over ? 'a' : 'b'`, `slenderFinding('x', ...)`. */
function codes(): Set<string> {
  const files = ['src/inspect', 'src/generators'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((f) => f.endsWith('.ts'))
      .map((f) => readFileSync(join(folder, f), 'utf8')),
  );
  const found = files.flatMap((text) =>
    [...text.matchAll(/(?:\bcode: |slenderFinding\()([^,\n]*)/g)].flatMap((m) =>
      [...m[1]!.matchAll(/'([a-z]+(?:-[a-z]+)+)'/g)].map((c) => c[1]!),
    ),
  );
  return new Set(found);
}

it('the guide to findings names every one of them, and none that is not', () => {
  const guide = readFileSync('docs/findings.md', 'utf8');
  const tables = guide.slice(guide.indexOf('## The findings'), guide.indexOf('## Limits'));
  const named = new Set([...tables.matchAll(/`([a-z]+(?:-[a-z]+)+)`/g)].map((m) => m[1]!));
  expect([...named].sort()).toEqual([...codes()].sort());
  expect(named.size).toBeGreaterThan(40);
});
