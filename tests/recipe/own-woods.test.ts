import { describe, expect, it } from 'vitest';
import { readRecipe } from '../../src/recipe/read.js';
import { BadInput } from '../../src/schema/fault.js';
import { contrast } from '../../src/shop/contrast.js';
import { movementOf } from '../../src/shop/shrinkage.js';
import { densityOf, strengthOf } from '../../src/shop/strength.js';
import { exampleText } from './example.js';

const read = (woods: object) => readRecipe(exampleText({ woods }), 'x.json');
const faults = (woods: object): string[] => {
  try {
    read(woods);
  } catch (e) {
    if (e instanceof BadInput) return e.faults.map((f) => `${f.where}: ${f.message}`);
    throw e;
  }
  return [];
};

/** Figures of an invented wood. */
const pear = {
  density: '690kg/m3',
  hardness: '1660 lbf',
  tension: '5MPa',
  compression: '1000psi',
  radial: 3.7,
  tangential: 7.1,
  lightness: 62,
  colour: '#C8996B',
};

describe("a recipe's own woods", () => {
  const { woods } = read({ field: 'Pear', plug: 'black walnut', own: { pear } });
  const { own } = woods;

  it('may be named as field and plug, in upper and lower case', () => {
    expect(woods.field).toBe('pear');
    expect(read({ field: 'ash', plug: 'pear', own: { pear } }).woods.plug).toBe('pear');
    expect(read({ plugs: { star: 'PEAR' }, own: { pear } }).woods.plugs).toEqual([
      { pieces: 'star', wood: 'pear' },
    ]);
  });

  it('are read in kg/m3, N and kPa', () => {
    expect(densityOf('pear', own)!.value).toBe(690);
    // 1 lbf = 4.4482216152605 N exactly; 1 psi = 6.894757 kPa (NIST SP 811, from memory).
    expect(own![0]!.hardness).toBeCloseTo(1660 * 4.4482216152605, 9);
    expect(strengthOf('pear', own)!.tension!.value).toBe(5000);
    expect(strengthOf('pear', own)!.compression!.value).toBeCloseTo(6894.757, 3);
    expect(strengthOf('pear', own)!.shear).toBeNull();
    // 62.428 lb/ft3 is a metric ton a cubic metre (conversion tables, from memory).
    const heavy = read({ field: 'x', own: { x: { density: '62.428 lb/ft3' } } }).woods.own;
    expect(densityOf('x', heavy)!.value).toBeCloseTo(1000, 2);
  });

  it('move as a wood of that shrinkage does', () => {
    // Black cherry's shrinkage: Wood Handbook table 13-5 gives 0.00126 and 0.00248.
    const { change } = movementOf('pear', own)!;
    expect(change.radial.value).toBeCloseTo(0.00126, 5);
    expect(change.tangential.value).toBeCloseTo(0.00248, 5);
  });

  it('are compared by their lightness, and say nothing of what they do not know', () => {
    expect(contrast('pear', 'black walnut', own)!.fresh).toBe(25);
    const bare = read({ field: 'bog oak', own: { 'bog oak': {} } }).woods.own;
    expect(densityOf('bog oak', bare)).toBeNull();
    expect(movementOf('bog oak', bare)).toBeNull();
    expect(contrast('bog oak', 'black walnut', bare)).toBeNull();
  });

  it('go before a built-in wood of that name', () => {
    const mine = read({ field: 'cherry', own: { cherry: { density: '0.7g/cm3' } } }).woods;
    expect(mine.field).toBe('cherry');
    expect(densityOf(mine.field, mine.own)!.value).toBeCloseTo(700, 9);
  });
});

describe('faults of own woods', () => {
  it('name the wood, the key, the units and the range', () => {
    expect(faults({ own: { pear: { density: 690 } } })).toEqual([
      'woods.own.pear.density: must be a text with its unit (kg/m3, g/cm3, lb/ft3) such as "690kg/m3", not 690: 80 to 1400 kg/m3',
    ]);
    expect(faults({ own: { pear: { tension: '5 bar' } } })[0]).toContain('(kPa, MPa, psi)');
    expect(faults({ own: { pear: { density: '7kg/m3' } } })[0]).toContain('out of range: 80 to 1400 kg/m3');
    expect(faults({ own: { pear: { densty: '690kg/m3' } } })[0]).toContain('did you mean "density"');
    expect(faults({ own: { pear: { colour: 'brown' } } })[0]).toContain('is no colour: write "#b58a5c"');
    expect(faults({ own: { pear: { radial: 4 } } })[0]).toContain('radial and tangential, or neither');
    expect(faults({ own: { pear: 7 } })[0]).toContain('must be an object');
    expect(faults({ own: { ' ': {} } })[0]).toContain('is no name of a wood');
    expect(faults({ own: [] })[0]).toContain('must be an object');
  });

  it('offer the nearest names for a wood that is not known, own ones too', () => {
    expect(faults({ field: 'pearl', own: { pear } })[0]).toMatch(/woods\.field: "pearl".*"pear"/);
    expect(faults({ field: 'walnutt' })[0]).toMatch(/walnut/);
    expect(faults({ plugs: { star: 'peer' }, own: { pear } })[0]).toMatch(/"pear"/);
  });
});
