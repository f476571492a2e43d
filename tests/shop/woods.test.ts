import { expect, it } from 'vitest';
import { findWood, woods } from '../../src/shop/woods.js';

it('finds woods by name, other names, case and hyphens', () => {
  expect(findWood('Black  Walnut')?.name).toBe('black walnut');
  expect(findWood('yellow poplar')?.name).toBe('yellow-poplar');
  expect(findWood('hard maple')?.name).toBe('sugar maple');
  expect(findWood('unobtainium')).toBeUndefined();
});

it('gives no name to two woods', () => {
  const names = woods.flatMap((w) => [w.name, ...w.also]).map((n) => n.toLowerCase().replaceAll('-', ' '));
  expect(new Set(names).size).toBe(names.length);
});

it('has the hardness of the inch-pound table within its rounding', () => {
  // Side hardness, lbf: Wood Handbook table 5-3b, values read in quotations of it. 1 lbf = 4.4482216152605 N exactly.
  const pounds = {
    'sugar maple': 1450,
    'northern red oak': 1290,
    'white oak': 1360,
    'white ash': 1320,
    'black walnut': 1010,
  };
  for (const [name, lbf] of Object.entries(pounds))
    expect(Math.abs(findWood(name)!.hardness! - lbf * 4.4482216152605)).toBeLessThan(60);
});

it('has a face colour lighter than its grain lines', () => {
  const light = (hex: string) => [1, 3, 5].reduce((s, i) => s + Number.parseInt(hex.slice(i, i + 2), 16), 0);
  for (const w of woods) expect(light(w.colour), w.name).toBeGreaterThan(light(w.grain));
});
