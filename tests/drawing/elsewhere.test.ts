import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checked, makeShipped, SHIPPED, TOOLS } from '../../scripts/elsewhere.mjs';

/** What `npm test` installs where it may; a machine without them skips their lines. */
const missing = Object.entries(TOOLS).filter(([, tool]) => !tool.has());
for (const [name] of missing)
  console.warn(`${name} is not installed, so what it says of our files is not checked`);

describe('what other programs say of the files we write', () => {
  const out = mkdtempSync(join(tmpdir(), 'elsewhere-'));
  beforeAll(() => makeShipped(out));
  afterAll(() => rmSync(out, { recursive: true }));

  // Group codes 10 to 59 of a DXF are floating-point numbers, by the format's reference.
  it.each(SHIPPED)('every coordinate of $name is one number', ({ name }) => {
    for (const part of ['pocket', 'plug']) {
      const lines = readFileSync(join(out, name, `${part}.dxf`), 'utf8').split(/\r?\n/);
      const numbers = lines.filter((_, i) => i % 2 === 1 && /^ *[1-5]\d$/.test(lines[i - 1]));
      expect(numbers.length).toBeGreaterThan(100);
      expect(numbers.filter((n) => !/^ *-?\d+(\.\d+)?$/.test(n))).toEqual([]);
    }
  });

  for (const [name, tool] of Object.entries(TOOLS)) {
    for (const piece of SHIPPED)
      it.skipIf(!tool.has())(`${name} finds ${piece.name} as large as its recipe says, and sound`, () => {
        for (const part of ['pocket', 'plug']) {
          const { wrong, line } = checked(name as keyof typeof TOOLS, piece, part, join(out, piece.name));
          expect(wrong, line).toBe(false);
        }
      });

    it.skipIf(!tool.has())(`${name} would notice another unit, and a drawing of another size`, () => {
      for (const piece of SHIPPED) {
        const folder = join(out, piece.name);
        const file = join(folder, `pocket.${tool.reads}`);
        const text = readFileSync(file, 'utf8');
        try {
          writeFileSync(file, inAnotherUnit(text));
          const { wrong, line } = checked(name as keyof typeof TOOLS, piece, 'pocket', folder);
          expect(line).toContain('WRONG');
          expect(line).toContain('face');
          expect(wrong).toBe(true);
        } finally {
          writeFileSync(file, text);
        }
        const larger = { ...piece, width: piece.width + 0.5 };
        expect(checked(name as keyof typeof TOOLS, larger, 'pocket', folder).wrong).toBe(true);
      }
    });
  }
});

/** The same drawing, with another unit named. */
function inAnotherUnit(text: string): string {
  if (text.startsWith('<svg'))
    return text.replace(/(width|height)="([\d.]+)(mm|in)"/g, (_, side, n, unit) =>
      unit === 'mm' ? `${side}="${n}pt"` : `${side}="${n}mm"`,
    );
  return text.replace(
    /(\$INSUNITS\r?\n *70\r?\n *)(\d)/,
    (_, head, unit) => head + (unit === '4' ? '1' : '4'),
  );
}
