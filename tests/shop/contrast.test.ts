import { expect, it } from 'vitest';
import { contrast, dustStains, lightnessOf, WEAK_UNDER } from '../../src/shop/contrast.js';
import { woods } from '../../src/shop/woods.js';

/** L* of an sRGB colour: CIE 1976, white D65 (from memory). */
function lightness(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const v = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  });
  return 116 * Math.cbrt(0.2126 * r! + 0.7152 * g! + 0.0722 * b!) - 16;
}

it('knows every wood of the table, near the colour it has in the picture', () => {
  // Both are our own choices; they must tell the same story.
  for (const w of woods) {
    const { fresh } = lightnessOf(w.name)!;
    expect(Math.abs(fresh - lightness(w.colour)), `${w.name} ${lightness(w.colour).toFixed(0)}`).toBeLessThan(
      12,
    );
  }
});

it('sees strong and weak pairs, and one that time weakens', () => {
  expect(contrast('maple', 'walnut')).toMatchObject({ weakFresh: false, weakAged: false });
  expect(contrast('padauk', 'walnut')).toMatchObject({ weakFresh: true, weakAged: true });
  // Cherry darkens, walnut fades: common practice, no source.
  expect(contrast('cherry', 'walnut')).toMatchObject({ weakFresh: false, weakAged: true });
  expect(contrast('cherry', 'walnut')).toEqual(contrast('walnut', 'cherry'));
  expect(contrast('ash', 'ash')).toMatchObject({ fresh: 0, aged: 0 });
  expect(contrast('ash', 'unobtainium')).toBeNull();
  expect(WEAK_UNDER).toBeGreaterThan(0);
});

it('ages as woods do', () => {
  // Common practice, no source: walnut fades, all others of the table darken.
  for (const { name } of woods) {
    const { fresh, aged } = lightnessOf(name)!;
    expect(aged > fresh, name).toBe(name === 'black walnut');
  }
});

it('knows whose dust stains whom', () => {
  // Common practice, no source: padauk, purpleheart and walnut on maple.
  for (const dusty of ['padauk', 'purpleheart', 'walnut'])
    expect(dustStains(dusty, 'maple'), dusty).toBe(true);
  expect(dustStains('maple', 'padauk')).toBe(false);
  expect(dustStains('padauk', 'walnut')).toBe(false);
  expect(dustStains('cherry', 'maple')).toBe(false);
  expect(dustStains('unobtainium', 'maple')).toBeNull();
  expect(dustStains('padauk', 'unobtainium')).toBeNull();
});
