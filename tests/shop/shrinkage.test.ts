import { expect, it } from 'vitest';
import { coefficientFromShrinkage, movementOf, movements } from '../../src/shop/shrinkage.js';
import { findWood, woods } from '../../src/shop/woods.js';

it('has one table reproduce the other where the two agree', () => {
  // C = 1 / (3000/S - 20) joins tables 4-3 and 13-5 of the Wood Handbook (FPL-GTR-190) to five decimals: computed. Both
  // figures published for ash, basswood, beech, birch, cherry, walnut, alder; one of them transcribed or from memory for
  // maple, poplar, pine.
  const agreeing = [
    'white ash',
    'basswood',
    'beech',
    'yellow birch',
    'cherry',
    'walnut',
    'alder',
    'maple',
    'poplar',
    'pine',
  ];
  for (const name of agreeing) {
    const { shrinkage, change } = movementOf(name)!;
    for (const way of ['radial', 'tangential'] as const)
      expect(Math.round(coefficientFromShrinkage(shrinkage[way].value) * 1e5), `${name} ${way}`).toBe(
        Math.round(change[way].value * 1e5),
      );
  }
  // White fir: 3.3 and 7.0 % published, 0.00112 and 0.00245 from memory.
  expect(coefficientFromShrinkage(3.3)).toBeCloseTo(0.00112, 5);
  expect(coefficientFromShrinkage(7)).toBeCloseTo(0.00245, 5);
  // Padauk and purpleheart, tangential: transcribed.
  for (const name of ['padauk', 'purpleheart']) {
    const { shrinkage, change } = movementOf(name)!;
    expect(coefficientFromShrinkage(shrinkage.tangential.value)).toBeCloseTo(change.tangential.value, 5);
  }
});

it('keeps the commercial oak rows, which no single species gives', () => {
  // Wood Handbook FPL-GTR-190 table 13-5, published; single species would give 0.00304 and 0.00376 (computed).
  expect(movementOf('red oak')!.change.tangential.value).toBe(0.00369);
  expect(movementOf('white oak')!.change.tangential.value).toBe(0.00365);
  expect(coefficientFromShrinkage(8.6)).toBeCloseTo(0.00304, 5);
  expect(coefficientFromShrinkage(10.5)).toBeCloseTo(0.00376, 5);
});

it('stands in volumetric shrinkage a little under the sum of both', () => {
  // Volumetric shrinkage, Wood Handbook FPL-GTR-190 table 4-3, published (maple transcribed; pine, red oak from memory).
  const volumetric = {
    cherry: 11.5,
    walnut: 12.8,
    'white ash': 13.3,
    basswood: 15.8,
    beech: 17.2,
    'yellow birch': 16.8,
    'white oak': 16.3,
    poplar: 12.7,
    alder: 12.6,
    maple: 14.7,
    pine: 8.2,
    'red oak': 13.7,
  };
  for (const [name, total] of Object.entries(volumetric)) {
    const { radial, tangential } = movementOf(name)!.shrinkage;
    expect(Math.abs(radial.value + tangential.value - total), name).toBeLessThan(1.2);
  }
});

it('knows every wood of the table, says where each figure is from, and guesses none', () => {
  for (const name of Object.keys(movements)) expect(findWood(name)?.name).toBe(name);
  for (const { name } of woods) {
    const { shrinkage, change } = movementOf(name)!;
    for (const f of [shrinkage.radial, shrinkage.tangential, change.radial, change.tangential])
      expect(f.source.length, name).toBeGreaterThan(10);
    expect(shrinkage.radial.value).toBeLessThan(shrinkage.tangential.value);
    expect(change.radial.value).toBeLessThan(change.tangential.value);
  }
  expect(movementOf('unobtainium')).toBeNull();
  expect(movementOf('constructor')).toBeNull();
});

it('says which figures are worked out or remembered', () => {
  expect(movementOf('mahogany')!.change.tangential.status).toBe('computed');
  expect(movementOf('padauk')!.change.radial.status).toBe('computed');
  expect(movementOf('teak')!.change.radial.status).toBe('memory');
  expect(movementOf('walnut')!.change.radial.status).toBe('published');
});
