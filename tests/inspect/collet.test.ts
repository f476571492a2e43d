import { describe, expect, it } from 'vitest';
import { type Contour, circle } from '../../src/geometry/region.js';
import { boardTooThin } from '../../src/inspect/board-too-thin.js';
import { colletMeets } from '../../src/inspect/collet-meets.js';
import { dustShoe } from '../../src/inspect/dust-shoe.js';
import { shortFlute } from '../../src/inspect/short-flute.js';
import { stickout } from '../../src/inspect/stickout.js';
import { leastPitch } from '../../src/inspect/sums/machine/collet.js';
import { cutsOf } from '../../src/inspect/sums/machine/cuts.js';
import { underBridge } from '../../src/inspect/under-bridge.js';
import { BROKEN, boxed, codesOf, setupOf } from '../support/by-hand.js';
import { seeded } from '../support/random.js';

/**
 * A face of 100 by 60, a rectangle of 90 by 30 about (3, 0), a 3 mm cutter that stands out 16, a plug of 12 cut 0.5 into
 * the board: the collet (19) is 16 - 12.5 = 3.5 above the plug's wood, 16 - 8 = 8 above the field's. All by hand.
 */
const PLAIN = {
  outline: { shape: 'rectangle', width: 100, height: 60, corner: 0, margin: 2 },
  cutter: { diameter: 3, flute: 14, stickout: 16 },
  roughing: undefined,
};
const PLATE = boxed(90, 30, 3);
const plain = (changes: Record<string, unknown> = {}, ...contours: Contour[]) =>
  setupOf({ ...PLAIN, ...changes }, ...(contours.length > 0 ? contours : [PLATE]));

describe('cuts', () => {
  it('go through a loose plug and a pocket with no wood below, into the board', () => {
    const deep = (changes: Record<string, unknown>, ...contours: Contour[]) => {
      const { recipe, pair } = plain(changes, ...contours);
      return cutsOf(recipe, pair).map((c) => [c.deep, c.through]);
    };
    expect(deep({})).toEqual([
      [8, false],
      [12.5, true],
    ]);
    expect(deep({ skin: 0, 'stock.field': 8, table: { over: 0.7 } })).toEqual([
      [8.7, true],
      [12.7, true],
    ]);
    // On a carrier: 8 - glue gap 0.5 + saw room 4.
    expect(deep({ 'stock.plug': 16, fit: { plug: 'carrier', sawRoom: 4 } })).toEqual([
      [8, false],
      [11.5, false],
    ]);
    const skin = { skin: 0, 'stock.field': 8, table: { onionSkin: 0.5 } };
    expect(deep(skin)[1]).toEqual([11.5, false]);
    expect(deep(skin)[0]).toEqual([8.5, true]);
    expect(deep(skin, circle(0, 0, 20), hole(0, 0, 10))[0]).toEqual([7.5, false]);
  });
});

function hole(x: number, y: number, r: number): Contour {
  return circle(x, y, r)
    .map((e) => ({ ...e, x0: e.x1, y0: e.y1, x1: e.x0, y1: e.y0, r: -e.r }))
    .reverse();
}

describe('least pitch', () => {
  const pitch = (changes: Record<string, unknown>, ...contours: Contour[]) => {
    const { recipe, outline, pair } = plain(changes, ...contours);
    const { x, y, met } = leastPitch(recipe, outline, pair);
    return [x, y, met.length];
  };
  it('is box and cutter as long as the collet stays above the neighbour', () => {
    expect(pitch({})).toEqual([103, 63, 0]);
    expect(pitch({ table: { neighbours: 3.5 } })).toEqual([103, 63, 0]);
  });
  it('is reach, half the collet and half the box when it does not', () => {
    // x: 48 + 1.5 + 9.5 + 50; y: 15 + 1.5 + 9.5 + 30 = 56, which box and cutter exceed.
    expect(pitch({ table: { neighbours: 3.51 } })).toEqual([109, 63, 1]);
    // A wider nut: 15 + 1.5 + 20 + 30.
    expect(pitch({ table: { neighbours: 3.51 }, machine: { collet: 40 } })).toEqual([119.5, 66.5, 1]);
  });
  it('looks to the further side, mirrored or not', () => {
    const table = { neighbours: 4 };
    expect(pitch({ table }, boxed(90, 30, -3))).toEqual([109, 63, 1]);
    expect(pitch({ table, 'fit.face': 'down' })).toEqual([109, 63, 1]);
  });
  it('in the pocket reaches less far: 48 - 1.5 + 9.5 + 50', () => {
    const table = { neighbours: 5 };
    expect(pitch({ table, depth: 13, 'stock.field': 15, fit: { plug: 'loose' }, 'stock.plug': 10 })).toEqual([
      106, 63, 1,
    ]);
  });
  it('counts the allowance that a roughing cutter leaves: 48 + 3 + 0.4 + 9.5 + 50', () => {
    const roughing = { diameter: 6, flute: 14, stickout: 14 };
    const [x] = pitch({
      roughing,
      'cutter.stickout': 30,
      passes: { allowance: 0.4 },
      table: { neighbours: 4 },
    });
    expect(x).toBeCloseTo(110.9, 9);
  });
  it('agrees with discs swept round circles and tried against the neighbour', () => {
    const random = seeded(7);
    for (let k = 0; k < 25; k++) {
      const r = 5 + 12 * random();
      const [cx, cy] = [(random() - 0.5) * 60, (random() - 0.5) * 20];
      const collet = 30 + 40 * random();
      const setup = plain({ table: { neighbours: 6 }, machine: { collet } }, circle(cx, cy, r));
      const { x, y } = leastPitch(setup.recipe, setup.outline, setup.pair);
      const meets = (dx: number, dy: number): boolean => {
        for (let i = 0; i < 3600; i++) {
          const a = (i * Math.PI) / 1800;
          for (const way of [1, -1]) {
            const px = cx + (r + 1.5) * Math.cos(a) - way * dx;
            const py = cy + (r + 1.5) * Math.sin(a) - way * dy;
            // Distance to the neighbour's box of 100 by 60.
            const d = Math.hypot(Math.max(0, Math.abs(px) - 50), Math.max(0, Math.abs(py) - 30));
            if (d < collet / 2) return true;
          }
        }
        return false;
      };
      expect(meets(x + 0.001, 0)).toBe(false);
      expect(meets(0, y + 0.001)).toBe(false);
      if (x > 103) expect(meets(x - 0.001, 0)).toBe(true);
      if (y > 63) expect(meets(0, y - 0.001)).toBe(true);
    }
  });
});

describe('collet', () => {
  const found = (changes: Record<string, unknown>) => colletMeets(plain(changes));
  it('meets a neighbour at too small a pitch, with the pitch and the stickout that clear', () => {
    const [f] = found({ table: { neighbours: 4, pitch: 60 } });
    expect(codesOf([f!])).toEqual(['collet-meets-neighbour warn']);
    expect(f!.numbers).toMatchObject({ above: 3.5, leastPitchX: 109, leastPitchY: 63, clears: 18.5 });
    expect(f!.do).toContain('at least 109 mm along x or 63 mm along y; or let the cutter stand out 18.5 mm');
    expect(codesOf(found({ table: { neighbours: 4, pitch: 109 } }))).toEqual([]);
    expect(codesOf(found({ table: { neighbours: 4, pitch: 60 }, 'cutter.stickout': 18.5 }))).toEqual([
      'pieces-overlap warn',
    ]);
  });
  it('only notes a neighbour that it meets in one direction, or at a pitch not given', () => {
    for (const face of ['up', 'down']) {
      const [row] = found({ table: { neighbours: 4, pitch: 108.9 }, 'fit.face': face });
      expect(codesOf([row!])).toEqual(['collet-meets-neighbour note']);
      expect(row!.do).toContain('in a row along x');
      // The axis may go to 108.9 - 50 - 9.5 and goes to 49.5, on the right, however the plug is drawn.
      const xs = row!.zone!.areas!.contours.flat().map((e) => e.x0);
      expect(Math.min(...xs)).toBeCloseTo(49.4, 9);
      expect(Math.max(...xs)).toBeCloseTo(49.5, 9);
    }
    expect(codesOf(found({ table: { neighbours: 4 } }))).toEqual(['collet-meets-neighbour note']);
  });
  it('is silent of pieces that have room one way, and says when they have none', () => {
    expect(codesOf(found({ table: { pitch: 63 } }))).toEqual([]);
    expect(codesOf(found({ table: { pitch: 62.9 } }))).toEqual(['pieces-overlap warn']);
  });
  it('meets clamps: axis 2 - 1.5 from the edge, so half the nut less that', () => {
    const table = { clamps: 5, clampsAway: 8.9 };
    const [f] = found({ table });
    expect(codesOf([f!])).toEqual(['collet-meets-clamps warn']);
    expect(f!.numbers.needed).toBeCloseTo(9, 9);
    expect(f!.where![0]).toBeCloseTo(48, 9);
    expect(f!.zone!.lines!.length).toBeGreaterThan(0);
    expect(found({ table: { ...table, clampsAway: 9 } })).toEqual([]);
    expect(found({ table: { clamps: 3.5, clampsAway: 0 } })).toEqual([]);
    expect(codesOf(found({ table: { clamps: 3.6, clampsAway: 0 } }))).toEqual(['collet-meets-clamps warn']);
    expect(found({ table, 'cutter.stickout': 17.5 })).toEqual([]);
  });
  it('meets clamps in the pocket less easily: axis 2 + 1.5 from the edge', () => {
    const deep = { depth: 13, 'stock.field': 15, 'stock.plug': 9, fit: { glueGap: 5 } };
    const at = (clampsAway: number) => found({ ...deep, table: { clamps: 5, clampsAway } });
    expect(codesOf(at(5.9))).toEqual(['collet-meets-clamps warn']);
    expect(at(6)).toEqual([]);
  });
  it('turns a mirrored plug back to say where', () => {
    const [f] = found({ table: { clamps: 5, clampsAway: 1 }, 'fit.face': 'down' });
    expect(f!.where![0]).toBeCloseTo(48, 9);
  });
  it('is worse where the pattern runs over the edge', () => {
    const setup = plain({ table: { clamps: 5, clampsAway: 16 } }, boxed(110, 20));
    // 5 beyond the edge and 1.5: clamps 9.5 + 6.5 away.
    expect(colletMeets(setup)).toEqual([]);
    const near = plain({ table: { clamps: 5, clampsAway: 15.9 } }, boxed(110, 20));
    expect(colletMeets(near)[0]!.numbers.needed).toBeCloseTo(16, 9);
  });
  it('nearly touches the face under 2 mm and runs into it under none', () => {
    expect(found({ 'cutter.stickout': 14.5 })).toEqual([]);
    expect(codesOf(found({ 'cutter.stickout': 14.4 }))).toEqual(['collet-meets-face note']);
    const low = found({ cutter: { diameter: 3, flute: 12, stickout: 12.4 } });
    expect(codesOf(low)).toEqual(['collet-meets-face warn']);
    expect(low[0]!.do).toContain('0.1 mm below the face');
    // As long as its flutes is what is taken when nothing is given.
    expect(found({ cutter: { diameter: 3, flute: 14 } })).toEqual([]);
  });
});

describe('stickout', () => {
  const found = (changes: Record<string, unknown>) => stickout(plain(changes));
  it('is long over 1.5 times what flutes, depth and obstacles need, and bends by the cube', () => {
    // Needed: 12.5 + 2.
    expect(found({ 'cutter.stickout': 21.75 })).toEqual([]);
    expect(codesOf(found({ 'cutter.stickout': 21.8 }))).toEqual(['long-stickout note']);
    expect(found({ 'cutter.stickout': 29 })[0]!.numbers.times).toBeCloseTo(8, 9);
    expect(found({ 'cutter.stickout': 29, table: { clamps: 5 } })).toEqual([]);
  });
  it('is too short where the collet grips flutes', () => {
    expect(codesOf(found({ 'cutter.stickout': 13.9 }))).toEqual(['clamped-on-flutes warn']);
    expect(found({ 'cutter.stickout': 14 })).toEqual([]);
  });
});

describe('flute', () => {
  const found = (changes: Record<string, unknown>) => shortFlute(plain(changes));
  const rough = { diameter: 6, flute: 13.5 };
  it('stands a millimetre above the deepest cut, of both cutters', () => {
    expect(found({ 'cutter.flute': 13.5 })).toEqual([]);
    expect(codesOf(found({ 'cutter.flute': 13.4 }))).toEqual(['short-flute warn']);
    expect(found({ roughing: rough })).toEqual([]);
    const [f] = found({ roughing: { ...rough, flute: 12 } });
    expect(f!.code).toBe('short-flute');
    expect(f!.do).toMatch(/^The roughing cutter's flute \(12 mm\) does not reach the depth of 12.5 mm/);
  });
  it('ends within the cut under a thicker shank: that alone is said', () => {
    const thick = { ...rough, flute: 12.4, stickout: 20, shank: 6.1 };
    expect(codesOf(found({ roughing: thick }))).toEqual(['shank-rubs warn']);
    expect(codesOf(found({ roughing: { ...thick, flute: 12.5 } }))).toEqual(['short-flute warn']);
    expect(codesOf(found({ roughing: { ...thick, shank: 6 } }))).toEqual(['short-flute warn']);
  });
});

describe('machine', () => {
  it('passes wood, board and clamps under its bridge: 12 + 12 + 5', () => {
    const at = (bridge: number) => underBridge(plain({ machine: { bridge }, table: { clamps: 5 } }));
    expect(at(29)).toEqual([]);
    expect(codesOf(at(28.9))).toEqual(['under-bridge warn']);
  });
  it('lifts the tip from the deepest cut over clamps: 12.5 + 5 + 5', () => {
    const at = (lift: number) => underBridge(plain({ machine: { lift }, table: { clamps: 5 } }));
    expect(at(22.5)).toEqual([]);
    expect(codesOf(at(22.4))).toEqual(['short-lift warn']);
  });
  it('has a dust shoe that clears face, clamps and neighbours, or is said what it meets', () => {
    const at = (shoeAbove: number, table = {}) =>
      dustShoe(plain({ machine: { shoe: 80, shoeAbove }, table }));
    expect(at(12.5)).toEqual([]);
    expect(at(12.4)[0]!.do).toContain('meets the face. Set it 12.5 mm');
    expect(at(17.5, { clamps: 5 })).toEqual([]);
    // 40 - 0.5 from the axis at its nearest.
    expect(at(17.4, { clamps: 5, clampsAway: 39.5 })).toEqual([]);
    expect(at(17.4, { clamps: 5, clampsAway: 39.4 })[0]!.do).toContain('meets clamps 5 mm high');
    // 49.5 + 40 + 50 and 16.5 + 40 + 30 between middles.
    expect(at(15, { neighbours: 5, pitch: 86.5 })).toEqual([]);
    expect(at(15, { neighbours: 5, pitch: 86.4 })[0]!.do).toContain('uncut wood 5 mm high');
    expect(dustShoe(plain({ table: { clamps: 5, clampsAway: 0 } }))).toEqual([]);
  });
  it('has a board three millimetres thicker than cuts run into it', () => {
    const at = (table: Record<string, unknown>, more = {}) => boardTooThin(plain({ table, ...more }));
    expect(at({ board: 3.5 })).toEqual([]);
    expect(at({ board: 3.4 })[0]!.do).toContain('set the depth of cut to 12.5 mm for the plug');
    expect(at({ board: 0 })[0]!.do).toContain('there is none under the work');
    expect(at({ board: 0, onionSkin: 0.4 })).toEqual([]);
    expect(at({ board: 0 }, { 'stock.plug': 16, 'fit.plug': 'carrier' })).toEqual([]);
    const both = at({ board: 0 }, { skin: 0, 'stock.field': 8 });
    expect(both[0]!.do).toContain('8.5 mm for the pocket and 12.5 mm for the plug');
  });
});

describe('in inches', () => {
  it('all of it is said in inches, and nothing is broken', () => {
    const setup = setupOf(
      {
        ...PLAIN,
        units: 'in',
        outline: { shape: 'rectangle', width: 4, height: 2.4, corner: 0, margin: 0.1 },
        pattern: { generator: 'rosette', points: 12, seed: 1 },
        depth: 0.32,
        skin: 0,
        stock: { field: 0.32, plug: 0.5 },
        cutter: { diameter: 0.125, flute: 0.5, stickout: 0.51, cuts: null },
        roughing: { diameter: 0.25, flute: 0.4, shank: 0.5, stickout: 2 },
        table: { clamps: 0.2, clampsAway: 0.01, neighbours: 0.2, pitch: 2, board: 0.05 },
        machine: { shoe: 3, shoeAbove: 0.4, bridge: 0.5, lift: 0.5 },
        fit: { clearance: 0.003, plug: 'loose' },
      },
      boxed(95, 50),
    );
    const all = [shortFlute, stickout, colletMeets, dustShoe, underBridge, boardTooThin].flatMap((f) =>
      f(setup),
    );
    expect(codesOf(all)).toEqual([
      'short-flute warn',
      'shank-rubs warn',
      'long-stickout note',
      'collet-meets-face warn',
      'collet-meets-clamps warn',
      'collet-meets-neighbour warn',
      'dust-shoe-meets warn',
      'under-bridge warn',
      'short-lift warn',
      'board-too-thin warn',
    ]);
    for (const f of all) {
      expect(f.do).toMatch(/\d in\b/);
      expect(f.do).not.toMatch(/ mm\b/);
      expect(f.do).not.toMatch(BROKEN);
      for (const n of Object.values(f.numbers)) expect(Number.isFinite(n)).toBe(true);
    }
  });
});
