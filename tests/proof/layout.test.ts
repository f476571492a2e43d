import { describe, expect, it } from 'vitest';
import { type LayoutAsked, type LayoutProof, proveLayout } from '../../src/proof/index.js';
import { type Chain, circle, dxfOf, moved, reversed, rounded, type Sheet, svgOf, turned } from './drawn.js';

const BORDER = 16;
/** A board of 120 by 70 mm and its border. */
const LAYOUT: Sheet = { unit: 'mm', width: 120 + 2 * BORDER, height: 70 + 2 * BORDER };

const flag: Chain = rounded(
  [
    [0, 0],
    [30, 0],
    [30, 20],
    [18, 14],
    [0, 14],
  ],
  3,
);
const ring: readonly Chain[] = [circle(0, 0, 12), reversed(circle(0, 0, 6))];
const bar: Chain = rounded(
  [
    [0, 0],
    [25, 0],
    [25, 9],
    [0, 9],
  ],
  2,
);

/** The plug: a flag, a ring and a bar, its grain at 90 degrees (up). */
const source = svgOf('plug', [
  moved(flag, 40, 40),
  ...ring.map((c) => moved(c, 110, 60)),
  moved(bar, 60, 110),
]);

/** Each part with its grain along x: turned by -90 degrees. */
const laidFlag = moved(turned(flag, -Math.PI / 2), BORDER + 10, BORDER + 45);
const laidRing = ring.map((c) => moved(c, BORDER + 55, BORDER + 35));
/** Turned end for end as well, which the grain allows. */
const laidBar = moved(turned(bar, Math.PI / 2), BORDER + 90, BORDER + 20);

const asked = (change: Partial<LayoutAsked> = {}): LayoutAsked => ({
  part: 'plug',
  radius: 1.5,
  spacing: 5,
  board: { length: 120, width: 70, border: BORDER },
  grain: [0, 1],
  laid: [0, 1, 2],
  ...change,
});

const proof = (
  chains: readonly Chain[],
  change: Partial<LayoutAsked> = {},
  dxf = chains,
  sheet = LAYOUT,
): LayoutProof =>
  proveLayout({ svg: svgOf('plug', chains, sheet), dxf: dxfOf('plug', dxf), source }, asked(change));

const good = [laidFlag, ...laidRing, laidBar];

describe('the proof of a layout', () => {
  it('holds for parts laid along the grain, either way round, and measures them', () => {
    const found = proof(good);
    expect(found.failures).toEqual([]);
    expect(found.holds).toBe(true);
    expect(found.strays).toBeLessThan(0.0001);
    // The flag ends 30 mm from the board's end, the ring begins at 43; the bar stands 14 mm from the ring.
    expect(found.between).toBe(10);
    // Bar: 90 - 9 to 90; flag: 10 to 30 along, 15 to 45 across; ring: 23 to 47 across.
    expect(found.edge).toBeCloseTo(10, 4);
    expect(found.reach).toBe(3);
    expect(found.svgDxf).toBeLessThan(1e-5);
  });

  const fails = (found: LayoutProof, message: RegExp): void => {
    expect(found.holds).toBe(false);
    expect(found.failures.join('\n')).toMatch(message);
    expect(found.failures.join('\n')).not.toMatch(/NaN|Infinity|undefined/);
  };

  it('fails when a part strays by more than half a thousandth of a millimetre', () => {
    const bent = (by: number): Chain[] => [
      laidFlag.map(([x, y, b], i) => (i === 2 ? [x + by, y, b] : [x, y, b])),
      ...laidRing,
      laidBar,
    ];
    fails(proof(bent(0.002)), /laid at .* strays by 0\.002 mm from part 1 of plug\.svg/);
    expect(proof(bent(0.0003)).failures.join()).not.toMatch(/strays/);
  });

  it('fails when a part lies across the grain, or is the mirror image', () => {
    const across = moved(flag, BORDER + 8, BORDER + 20);
    fails(proof([across, ...laidRing, laidBar]), /strays by .* from part 1/);
    const mirror = reversed(laidFlag.map(([x, y, b]) => [2 * (BORDER + 20) - x, y, -b] as const));
    fails(proof([mirror, ...laidRing, laidBar]), /strays by .* from part 1/);
  });

  it('fails when neighbours or the edge are nearer than stated', () => {
    const near = moved(laidBar, -11.01, 0);
    const found = proof([laidFlag, ...laidRing, near]);
    // Closest: the ring's right end at 67 and the bar's left side at 69.99, at heights that face each other.
    expect(found.between).toBeCloseTo(2.99, 3);
    fails(found, /neighbours are 2\.99 mm apart, and 5 were stated/);
    expect(proof([laidFlag, ...laidRing, near], { spacing: 2.98, radius: 1.4 }).holds).toBe(true);
    fails(
      proof([moved(laidFlag, -6, 0), ...laidRing, laidBar]),
      /only 4 mm to the board's edge, and 5 were stated/,
    );
  });

  it('fails when a part is missing, is there twice, or is another than asked for', () => {
    fails(proof([laidFlag, ...laidRing]), /holds 2 things laid out, and 3 were asked for/);
    fails(proof([...good, moved(laidBar, 14.5, 0)]), /holds 4 things/);
    fails(proof([laidBar, ...laidRing, laidFlag]), /strays by/);
    expect(proof([laidFlag, laidBar], { laid: [0, 2] }).holds).toBe(true);
  });

  it('fails when the cutter does not get round a part', () => {
    fails(proof(good, { radius: 8 }), /the reach from outside is .* and the cutter needs 8/);
  });

  it('fails when SVG and DXF differ, the board is another, or a file is none', () => {
    fails(
      proof(good, {}, [laidFlag, ...laidRing, moved(laidBar, 0, 0.001)]),
      /SVG and DXF differ by 0\.001 mm/,
    );
    fails(proof(good, {}, good, { ...LAYOUT, width: LAYOUT.width + 1 }), /the sheet is 1 mm off the board/);
    fails(
      proveLayout({ svg: 'no drawing', dxf: dxfOf('plug', good), source }, asked()),
      /plug-layout\.svg cannot be read back/,
    );
    fails(
      proveLayout({ svg: svgOf('pocket', good, LAYOUT), dxf: dxfOf('plug', good), source }, asked()),
      /it holds a pocket, not a plug/,
    );
  });

  it('fails when two parts cross', () => {
    fails(proof([laidFlag, ...laidRing, moved(laidBar, -30, 0)]), /a boundary crosses or touches another/);
  });
});

describe('the proof of a layout of pockets', () => {
  /** One pocket of two parts on a face of 60 by 40 mm round the middle of a sheet of 92 by 72. */
  const parts: readonly Chain[] = [moved(flag, 22, 30), moved(bar, 56, 22)];
  const sheet: Sheet = { unit: 'mm', width: 92, height: 72 };
  const pieces = (pitch: number): Chain[] =>
    [0, 1].flatMap((k) => parts.map((c) => moved(c, BORDER + 5 + 30 - 46 + k * pitch, BORDER + 5 + 20 - 36)));
  const prove = (chains: readonly Chain[], spacing: number): LayoutProof => {
    const board: Sheet = { unit: 'mm', width: 140 + 2 * BORDER, height: 60 + 2 * BORDER };
    return proveLayout(
      {
        svg: svgOf('pocket', chains, board),
        dxf: dxfOf('pocket', chains),
        source: svgOf('pocket', parts, sheet),
      },
      asked({
        part: 'pocket',
        radius: 1.5,
        spacing,
        board: { length: 140, width: 60, border: BORDER },
        grain: [1, 0],
        laid: [0, 0],
        face: [-30, -20, 30, 20],
      }),
    );
  };

  it('measures the room between the faces, not between the pockets', () => {
    const found = prove(pieces(65), 5);
    expect(found.failures).toEqual([]);
    expect(found.between).toBeCloseTo(5, 4);
    expect(found.edge).toBeCloseTo(5, 4);
    expect(prove(pieces(64.9), 5).failures.join()).toMatch(/neighbours are 4\.9 mm apart, and 5 were stated/);
  });

  it('fails when a pocket of one piece is out of place', () => {
    const [a, b, c, d] = pieces(65);
    expect(prove([a!, b!, c!, moved(d!, 0.01, 0)], 5).failures.join()).toMatch(
      /strays by 0\.0\d* mm from part 1 of pocket\.svg/,
    );
  });
});
