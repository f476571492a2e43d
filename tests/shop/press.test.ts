import { expect, it } from 'vitest';
import { fromPsi, toTons } from '../../src/shop/conversions.js';
import { crushLoad, warningLoad } from '../../src/shop/press.js';
import { densityOf, strengthOf, strengths } from '../../src/shop/strength.js';
import { findWood } from '../../src/shop/woods.js';

it('crushes 40 cm2 of walnut near 28 kN, 3.1 US tons', () => {
  // Wood Handbook FPL-GTR-190 table 5-3a, transcribed: 7,000 kPa; x 0.004 m2 = 28 kN (computed).
  const load = crushLoad('walnut', 4000)!;
  expect(load).toBe(28_000);
  expect(toTons(load, 'us')).toBeCloseTo(3.147, 3);
  expect(warningLoad('walnut', 4000)).toBe(14_000);
});

it('does not guess strengths', () => {
  for (const name of ['unobtainium', 'padauk', 'purpleheart', 'mahogany', 'red alder', 'constructor'])
    expect([crushLoad(name, 100), warningLoad(name, 100)], name).toEqual([null, null]);
  expect(strengthOf('maple')!.tension).toBeNull();
});

it('has the strengths of the inch-pound table within its rounding', () => {
  // Wood Handbook table 5-3b, psi: compression perpendicular and shear transcribed for the first five, the rest and all
  // tension from memory. Both tables are rounded: to 10 psi and to 100 kPa.
  const psi: Readonly<Record<string, readonly [number, number, number | null]>> = {
    'white ash': [1160, 1910, 940],
    basswood: [370, 990, 350],
    'American beech': [1010, 2010, 1010],
    'yellow birch': [970, 1880, 920],
    'black cherry': [690, 1700, 560],
    'black walnut': [1010, 1370, 690],
    'sugar maple': [1470, 2330, null],
    'northern red oak': [1010, 1780, 800],
    'white oak': [1070, 2000, 800],
    'yellow-poplar': [500, 1190, 540],
    'eastern white pine': [440, 900, 310],
  };
  for (const [name, [compression, shear, tension]] of Object.entries(psi)) {
    const s = strengthOf(name)!;
    expect(Math.abs(s.compression!.value - fromPsi(compression)), name).toBeLessThan(85);
    expect(Math.abs(s.shear!.value - fromPsi(shear)), name).toBeLessThan(85);
    if (tension === null) expect(s.tension).toBeNull();
    else expect(Math.abs(s.tension!.value - fromPsi(tension)), name).toBeLessThan(85);
  }
});

it('names woods of the table only', () => {
  for (const name of Object.keys(strengths)) expect(findWood(name)?.name).toBe(name);
});

it('gives density at 12 %', () => {
  // Wood Handbook equation 4-12, transcribed: cherry 0.50 -> 560 kg/m3 (computed).
  expect(densityOf('cherry')!.value).toBeCloseTo(560, 9);
  expect(densityOf('cherry')!.status).toBe('computed');
  expect(densityOf('padauk')).toBeNull();
  expect(densityOf('unobtainium')).toBeNull();
});
