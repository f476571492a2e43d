import { describe, expect, it } from 'vitest';
import { type Contour, circle, polygon, reversedContour } from '../../src/geometry/region.js';
import { placed } from '../../src/geometry/transform.js';
import { looseParts } from '../../src/inspect/loose-parts.js';
import { spiral } from '../../src/inspect/spiral.js';
import { stance } from '../../src/inspect/sums/machine/stance.js';
import { thinSkin } from '../../src/inspect/thin-skin.js';
import { tapeHold } from '../../src/shop/holding.js';
import { BROKEN, boxed, codesOf, setupOf } from '../support/by-hand.js';

/** A plug of 12 mm, loose, on tape of 50 kPa, 10 N of side force; a floor of 3 mm under the pocket. */
const PLAIN = { 'outline.diameter': 300, cutter: { diameter: 3, flute: 14 }, roughing: undefined };
const loose = (changes: Record<string, unknown>, ...contours: Contour[]) =>
  looseParts(setupOf({ ...PLAIN, ...changes }, ...contours));
const hole = (x: number, y: number, r: number) => reversedContour(circle(x, y, r));

describe('tape', () => {
  it('holds area times shear: 6 cm2 at 50 kPa is 30 N', () => {
    expect(tapeHold(600, 50)).toBeCloseTo(30, 12);
    expect(() => tapeHold(-1, 50)).toThrow();
  });
});

describe('stance', () => {
  it('is the least width of what a part spans: circle, bar at any angle, ring, equilateral triangle', () => {
    expect(Math.abs(stance(circle(3, 4, 10)) - 20)).toBeLessThan(0.02);
    for (const turn of [0, 0.3, 1, 2]) expect(stance(placed(boxed(50, 6), 9, -4, turn))).toBeCloseTo(6, 9);
    const h = Math.sqrt(3) / 2;
    const triangle = polygon([
      [0, 0],
      [20, 0],
      [10, 20 * h],
    ]);
    // An equilateral triangle's least width is its height.
    expect(stance(triangle)).toBeCloseTo(20 * h, 9);
  });
});

describe('loose plug parts', () => {
  it('are flagged under 6 cm2, exactly: circles of 13.8 and 13.82 mm radius', () => {
    const [f] = loose({}, circle(0, 0, 13.8), circle(50, 0, 13.82));
    expect(codesOf([f!])).toEqual(['loose-small-parts warn']);
    expect(f!.numbers).toMatchObject({ parts: 1, of: 2 });
    expect(f!.numbers.smallest).toBeCloseTo(Math.PI * 13.8 * 13.8, 6);
    expect(f!.numbers.ratio).toBeCloseTo((Math.PI * 13.8 * 13.8 * 50) / 1000 / 10, 6);
    expect(f!.do).toMatch(/^Part 1 is small for tape, under 6 cm2 \(6 cm2\): the tape holds about 30 N/);
    expect(f!.zone!.areas!.contours).toHaveLength(1);
    expect(loose({}, circle(0, 0, 13.82))).toEqual([]);
  });
  it('are flagged on less than half their height, at any angle; a slender ring stands wide', () => {
    expect(codesOf(loose({}, placed(boxed(110, 5.9), 0, 0, 0.5)))).toEqual(['loose-small-parts warn']);
    expect(loose({}, placed(boxed(110, 6), 0, 0, 0.5))).toEqual([]);
    expect(loose({}, circle(0, 0, 40), hole(0, 0, 36))).toEqual([]);
  });
  it('are flagged where tape holds less than twice the side force', () => {
    const plate = boxed(50, 40);
    // 2000 mm2 x 10 kPa = 20 N.
    expect(loose({ table: { tape: 10 } }, plate)).toEqual([]);
    const [f] = loose({ table: { tape: 9.9 } }, plate);
    expect(f!.do).toContain('is weakly held: the tape holds about 20 N against 10 N');
    expect(loose({ table: { tape: 9.9 }, machine: { sideForce: 9.9 } }, plate)).toEqual([]);
    expect(codesOf(loose({ machine: { sideForce: 0 } }, boxed(10, 10)))).toEqual(['loose-small-parts warn']);
  });
  it('are many in one finding, the smallest first, all in the zone', () => {
    const dots = Array.from({ length: 40 }, (_, k) =>
      circle((k % 8) * 20 - 70, Math.floor(k / 8) * 20 - 40, k === 17 ? 4 : 5),
    );
    const found = loose({}, ...dots);
    expect(found).toHaveLength(1);
    expect(found[0]!.numbers.parts).toBe(40);
    expect(found[0]!.where![0]).toBeCloseTo(-50, 6);
    expect(found[0]!.zone!.areas!.contours).toHaveLength(40);
  });
  it('lie where the pocket has them when the plug is mirrored', () => {
    const [f] = loose({ 'fit.face': 'down' }, circle(40, 10, 5));
    expect(f!.where![0]).toBeCloseTo(40, 6);
    expect(Math.max(...f!.zone!.areas!.contours.flat().map((e) => e.x0))).toBeCloseTo(45, 6);
  });
  it('are held by a carrier, by nothing among clamps, by little on vacuum', () => {
    const small = circle(0, 0, 5);
    const large = boxed(60, 60);
    expect(loose({ 'stock.plug': 16, 'fit.plug': 'carrier' }, small)).toEqual([]);
    expect(loose({ table: { hold: 'clamps' } }, large)[0]!.do).toContain('held by nothing once cut free');
    expect(loose({ table: { hold: 'vacuum' } }, large)).toEqual([]);
    expect(loose({ table: { hold: 'vacuum' } }, small)[0]!.do).toContain('too small for a vacuum table');
  });
});

describe('onion skin', () => {
  const small = circle(0, 0, 5);
  it('holds from 0.3 mm on, and is to be sanded off: 12 - 0.3 high, 0.3 less proud', () => {
    expect(codesOf(loose({ table: { onionSkin: 0.29 } }, small))).toEqual(['loose-small-parts warn']);
    const [f] = loose({ table: { onionSkin: 0.3 } }, small);
    expect(codesOf([f!])).toEqual(['onion-skin note']);
    expect(f!.numbers.height).toBeCloseTo(11.7, 9);
    expect(f!.numbers.proud).toBeCloseTo(4.2, 9);
    expect(f!.do).toContain('cut the plug 11.7 mm deep');
  });
  it('warns where the sanded plug lies below the face: 8 - 0.5 + 0.4 of stock', () => {
    const at = (plug: number) => codesOf(loose({ table: { onionSkin: 0.4 }, 'stock.plug': plug }, small));
    expect(at(7.9)).toEqual(['onion-skin note']);
    expect(at(7.8)).toEqual(['onion-skin warn']);
  });
  it('has nothing to hold on a carrier', () => {
    const carrier = { 'stock.plug': 16, 'fit.plug': 'carrier', table: { onionSkin: 0.4 } };
    expect(loose(carrier, small)).toEqual([]);
  });
});

describe('field inside a through pocket', () => {
  const through = { skin: 0, 'stock.field': 8 };
  const ring = (r: number) => [circle(0, 0, 60), hole(0, 0, r)];
  const field = (changes: Record<string, unknown>, ...contours: Contour[]) =>
    loose({ ...through, ...changes }, ...contours).filter((f) => f.code === 'loose-field-parts');
  it('comes loose, and is small under 6 cm2, less pockets in it', () => {
    const [f] = field({}, ...ring(10), circle(0, 0, 3));
    expect(f!.severity).toBe('warn');
    expect(f!.numbers.smallest).toBeCloseTo(Math.PI * (100 - 9), 6);
    expect(field({}, ...ring(13.8))[0]!.severity).toBe('warn');
    expect(field({}, ...ring(13.82))[0]!.severity).toBe('note');
    expect(f!.zone!.areas!.contours).toHaveLength(2);
  });
  it('does not where wood is left below, or no field is enclosed', () => {
    expect(loose({}, ...ring(20))).toEqual([]);
    expect(field({}, circle(0, 0, 60))).toEqual([]);
  });
  it('is held by an onion skin, which takes the place of the note on a through pocket', () => {
    const skin = { ...PLAIN, ...through, table: { onionSkin: 0.4 } };
    const setup = setupOf(skin, ...ring(10));
    expect(looseParts(setup)[0]!.do).toContain('the pocket 7.6 mm deep');
    expect(thinSkin(setup)).toEqual([]);
    expect(thinSkin(setupOf(skin, circle(0, 0, 60)))[0]!.do).toContain('set its depth of cut to 8.5 mm');
  });
});

describe('spiral', () => {
  const found = (changes: Record<string, unknown>) =>
    spiral(setupOf({ ...PLAIN, ...changes }, boxed(60, 60)));
  const both = (way: string) => ({
    cutter: { diameter: 3, flute: 14, spiral: way },
    roughing: { diameter: 6, flute: 14, spiral: way },
  });
  it('up frays the face that shows: one calm note, whatever roughs, unless taped', () => {
    expect(codesOf(found(both('up')))).toEqual(['frayed-face note']);
    expect(found({ ...both('up'), table: { topTape: true } })).toEqual([]);
    expect(found({ 'cutter.spiral': 'straight' })).toEqual([]);
  });
  it("says where the plug's frayed edge goes", () => {
    expect(found({})[0]!.do).toContain('planed off with the 4.5 mm that stand proud');
    expect(found({ 'stock.plug': 7.9 })[0]!.do).toContain('too little proud');
    expect(found({ 'stock.plug': 16, 'fit.plug': 'carrier' })[0]!.do).toContain('edge down, unseen');
    const open = { skin: 0, 'stock.field': 8, 'fit.face': 'down' };
    expect(found(open)[0]!.do).toContain('shows on the other face');
  });
  it('down packs chips in slots over two diameters, of both cutters in one finding', () => {
    // 12.5 mm deep, 0.5 of it in the board.
    const at = (diameter: number) =>
      codesOf(found({ cutter: { diameter, flute: 14, spiral: 'down' }, 'cutter.ease': 0.3 }));
    expect(at(6.25)).toEqual([]);
    expect(at(6.2)).toEqual(['down-cut-packs warn']);
    const [f, ...more] = found(both('down'));
    expect(more).toEqual([]);
    expect(f!.do).toContain('flutes of both cutters');
  });
  it('down frays the lower face where the pocket goes through', () => {
    const open = { skin: 0, 'stock.field': 8, cutter: { diameter: 8, flute: 14, spiral: 'down' } };
    expect(codesOf(found(open))).toEqual(['frayed-below note']);
  });
  it('compression wants its tip, a diameter, below the face from the first pass on', () => {
    const at = (passes: Record<string, number>) => codesOf(found({ ...both('compression'), passes }));
    expect(at({})).toEqual([]);
    expect(at({ finishingStep: 3, roughingStep: 6 })).toEqual([]);
    expect(at({ finishingStep: 2.9 })).toEqual(['compression-shallow note']);
    expect(at({ roughingStep: 5.9 })).toEqual(['compression-shallow note']);
  });
});

describe('in inches', () => {
  it('areas and skins are said in inches', () => {
    const setup = setupOf(
      {
        ...PLAIN,
        'outline.diameter': 12,
        'outline.margin': 0.2,
        units: 'in',
        depth: 0.3,
        skin: 0,
        stock: { field: 0.3, plug: 0.5 },
        cutter: { diameter: 0.125, flute: 0.6, spiral: 'down' },
        fit: { clearance: 0.003, plug: 'loose' },
      },
      circle(0, 0, 13),
      hole(0, 0, 5),
    );
    const all = [...looseParts(setup), ...spiral(setup)];
    expect(codesOf(all)).toEqual([
      'loose-small-parts warn',
      'loose-field-parts warn',
      'down-cut-packs warn',
      'frayed-below note',
    ]);
    // pi (169 - 25) mm2 over 645.16.
    expect(all[0]!.do).toContain('under 0.93 sq in (0.7 sq in)');
    for (const f of all) {
      expect(f.do).not.toMatch(/ mm\b|cm2/);
      expect(f.do).not.toMatch(BROKEN);
    }
  });
});
