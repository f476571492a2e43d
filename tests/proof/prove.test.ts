import { describe, expect, test } from 'vitest';
import { type Proof, prove } from '../../src/proof/index.js';
import {
  type Chain,
  circle,
  dxfOf,
  type Point,
  reversed,
  rounded,
  SHEET,
  starPoints,
  svgOf,
} from './drawn.js';

const c = 0.08;
const r = 2;
const asked = { radius: 1.8, clearance: c, carrier: false };

type Pair = { pocket: Chain[]; plug: Chain[] };

/** A star scaled so that its sides lie `inset` inside those of the star R, q. */
function star(inset: number): [number, number][] {
  const [R, q, n] = [24, 14, 6];
  const [bx, by] = [q * Math.cos(Math.PI / n), q * Math.sin(Math.PI / n)];
  const away = (R * by) / Math.hypot(R - bx, by);
  return starPoints(60, 60, n, (R * (away - inset)) / away, (q * (away - inset)) / away);
}

const dumbbell = (w: number, inset: number, own?: number): Point[] => {
  const [a, y] = [inset, w / 2 - inset];
  return [
    [110 + a, 40 + a],
    [135 - a, 40 + a],
    [135 - a, 60 - y, own],
    [150 + a, 60 - y, own],
    [150 + a, 40 + a],
    [175 - a, 40 + a],
    [175 - a, 80 - a],
    [150 + a, 80 - a],
    [150 + a, 60 + y],
    [135 - a, 60 + y],
    [135 - a, 80 - a],
    [110 + a, 80 - a],
  ];
};

function pair(w = 5): Pair {
  return {
    pocket: [
      rounded(star(0), r),
      rounded(dumbbell(w, 0), r),
      circle(60, 130, 20),
      reversed(circle(60, 130, 11)),
    ],
    plug: [
      rounded(star(c), r - c, r + c),
      rounded(dumbbell(w, c), r - c, r + c),
      circle(60, 130, 20 - c),
      reversed(circle(60, 130, 11 + c)),
    ],
  };
}

const files = ({ pocket, plug }: Pair) => ({
  pocketSvg: svgOf('pocket', pocket),
  plugSvg: svgOf('plug', plug),
  pocketDxf: dxfOf('pocket', pocket),
  plugDxf: dxfOf('plug', plug),
});

/** The pair with one vertex of one contour changed. */
function changed(
  p: Pair,
  which: keyof Pair,
  contour: number,
  vertex: number,
  by: (v: Chain[number]) => Chain[number],
): Pair {
  return {
    ...p,
    [which]: p[which].map((ch, k) => (k === contour ? ch.map((v, i) => (i === vertex ? by(v) : v)) : ch)),
  };
}

function expectFails(proof: Proof, ...about: RegExp[]) {
  expect(proof.holds).toBe(false);
  for (const a of about) expect(proof.failures.join('\n')).toMatch(a);
}

describe('a sound pair', () => {
  test('is proven, with its numbers', () => {
    const proof = prove(files(pair()), asked);
    expect(proof.failures).toEqual([]);
    expect(proof.holds).toBe(true);
    expect(proof.required).toBe(1.8);
    expect(proof.pocket).toMatchObject({ side: 'inside', holds: true });
    expect(proof.pocket.reach).toBeGreaterThan(2);
    expect(proof.pocket.reach).toBeLessThan(2.0006);
    // The plug's inside corners are those of radius r + c.
    expect(proof.plug.reach).toBeGreaterThan(2.08);
    expect(proof.plug.reach).toBeLessThan(2.0806);
    expect(proof.joints.worst).toBeLessThan(0.001);
    expect(proof.gap.least).toBeCloseTo(c, 4);
    expect(proof.gap.most).toBeCloseTo(c, 4);
    expect(proof.svgDxf).toBeLessThan(5e-6);
  });

  test('on a carrier: the mirrored plug is turned back over, and fails if it was not mirrored', () => {
    const p = pair();
    const flipped = p.plug.map((ch) => ch.map(([x, y, b]) => [SHEET.width - x, y, -b] as const));
    const carrier = { ...asked, carrier: true };
    expect(prove(files({ ...p, plug: flipped }), carrier).failures).toEqual([]);
    expectFails(prove(files(p), carrier), /gap/);
    expectFails(prove(files({ ...p, plug: flipped }), asked), /gap/);
  });

  test('in inches', () => {
    const p = pair();
    const inch = (chains: Chain[]) =>
      chains.map((ch) => ch.map(([x, y, b]) => [x / 25.4, y / 25.4, b] as const));
    const sheet = { unit: 'in', width: 8, height: 6.5 } as const;
    const [a, b] = [inch(p.pocket), inch(p.plug)];
    const proof = prove(
      {
        pocketSvg: svgOf('pocket', a, sheet),
        plugSvg: svgOf('plug', b, sheet),
        pocketDxf: dxfOf('pocket', a, 'in'),
        plugDxf: dxfOf('plug', b, 'in'),
      },
      asked,
    );
    expect(proof.failures).toEqual([]);
  });

  test('fails for a cutter a little too big, or another clearance', () => {
    expect(prove(files(pair()), { ...asked, radius: 2 }).holds).toBe(true);
    expectFails(prove(files(pair()), { ...asked, radius: 2.001 }), /pocket's reach from inside is 2\.0003/);
    expectFails(prove(files(pair()), { ...asked, clearance: 0.083 }), /gap is only 0\.08/);
    expectFails(prove(files(pair()), { ...asked, clearance: 0.077 }), /gap is 0\.08/);
    expectFails(prove(files(pair()), { ...asked, radius: Number.NaN }), /no radius/);
  });
});

describe('every fault is noticed', () => {
  const base = pair();

  test('a vertex nudged by 0.02 mm, any of them, in pocket or plug', () => {
    for (const which of ['pocket', 'plug'] as const) {
      base[which].forEach((chain, k) => {
        for (let i = 0; i < chain.length; i++) {
          const a = i * 1.3;
          const p = changed(base, which, k, i, ([x, y, b]) => [
            x + 0.02 * Math.cos(a),
            y + 0.02 * Math.sin(a),
            b,
          ]);
          expect(prove(files(p), asked).holds, `${which} ${k} ${i}`).toBe(false);
        }
      });
    }
  });

  test('a vertex nudged in the SVG alone', () => {
    const p = changed(base, 'plug', 0, 3, ([x, y, b]) => [x + 0.0005, y, b]);
    const proof = prove({ ...files(base), plugSvg: files(p).plugSvg }, asked);
    expectFails(proof, /SVG and DXF differ by 0\.0005/);
  });

  test('one arc of too small a radius, in both parts, smoothly joined', () => {
    const sharp = (inset: number, own: number): Point[] =>
      star(inset).map(([x, y], i) => (i === 2 ? [x, y, own] : [x, y]));
    const p = pair();
    p.pocket[0] = rounded(sharp(0, 1.7), r);
    p.plug[0] = rounded(sharp(c, 1.7 - c), r - c, r + c);
    expectFails(prove(files(p), asked), /pocket's reach from inside is 1\.70/);
    const q = pair();
    const inner = (inset: number, own: number): Point[] =>
      star(inset).map(([x, y], i) => (i === 3 ? [x, y, own] : [x, y]));
    q.pocket[0] = rounded(inner(0, 1.6), r);
    q.plug[0] = rounded(inner(c, 1.6 + c), r - c, r + c);
    expectFails(prove(files(q), asked), /plug's reach from outside is 1\.68/);
  });

  test("one arc's radius shrunk in the text of the file", () => {
    const sound = files(base);
    const text = sound.pocketSvg.replace('A2 2 ', 'A1.95 1.95 ');
    expect(text).not.toBe(sound.pocketSvg);
    expectFails(prove({ ...sound, pocketSvg: text }, asked), /degrees/, /SVG and DXF/);
  });

  test('a neck narrower than the cutter', () => {
    expect(prove(files(pair(3.7)), asked).failures).toEqual([]);
    const proof = prove(files(pair(3.5)), asked);
    expectFails(proof, /pocket's reach from inside is 1\.7503 mm at/);
    expect(proof.failures).toHaveLength(1);
    expect(Math.abs(proof.pocket.at[0] - (142.5 - 100))).toBeLessThan(9.6);
    expect(Math.abs(proof.pocket.at[1] - (60 - 80))).toBeLessThan(1.8);
  });

  test('a sweep flag the other way', () => {
    for (const key of ['pocketSvg', 'plugSvg'] as const) {
      const sound = files(base);
      const text = sound[key].replace(/(A\S+ \S+ 0 0 )([01])/, (_, a, f) => `${a}${f === '1' ? '0' : '1'}`);
      expect(text).not.toBe(sound[key]);
      expectFails(prove({ ...sound, [key]: text }, asked), /degrees/, /gap/);
    }
  });

  test('a part missing from the plug, from the pocket, or a hole from either', () => {
    const without = (which: keyof Pair, k: number) =>
      files({ ...base, [which]: base[which].filter((_, i) => i !== k) });
    expectFails(prove(without('plug', 1), asked), /3 parts and the plug 2/, /gap/);
    expectFails(prove(without('pocket', 1), asked), /2 parts and the plug 3/, /gap/);
    expectFails(prove(without('plug', 3), asked), /1 holes and the plug 0/, /gap/);
    expectFails(prove(without('pocket', 3), asked), /0 holes and the plug 1/, /gap/);
  });

  test('nothing drawn, an open contour, a wrong file: never a pass for want of anything to measure', () => {
    const sound = files(base);
    const empty = '<svg width="200mm" height="160mm" viewBox="0 0 200 160"><g id="pocket"></g></svg>';
    expectFails(
      prove({ ...sound, pocketSvg: empty }, asked),
      /pocket\.svg cannot be read back: nothing is drawn/,
    );
    expectFails(prove({ ...sound, pocketSvg: sound.pocketSvg.replace('Z', '') }, asked), /open contour/);
    expectFails(prove({ ...sound, plugSvg: sound.pocketSvg }, asked), /holds a pocket, not a plug/);
    expectFails(prove({ ...sound, plugDxf: '' }, asked), /plug\.dxf cannot be read back/);
    const all = files({ pocket: [], plug: [] });
    expectFails(prove(all, asked), /cannot be read back/);
  });

  test('contours that cross, or lie on each other', () => {
    const crossed = {
      pocket: [circle(60, 60, 20), circle(85, 60, 20)],
      plug: [circle(60, 60, 20 - c), circle(85, 60, 20 - c)],
    };
    expectFails(prove(files(crossed), asked), /pocket's boundary crosses/, /plug's boundary crosses/);
    const twice = { pocket: [...base.pocket, base.pocket[0]!], plug: [...base.plug, base.plug[0]!] };
    expectFails(prove(files(twice), asked), /crosses or touches/);
  });

  test('what bounds no region has no reach and no gap', () => {
    const twice = { pocket: [...base.pocket, base.pocket[0]!], plug: base.plug };
    const proof = prove(files(twice), asked);
    expect([proof.pocket.reach, proof.plug.reach, proof.gap.least, proof.joints.worst]).toEqual(
      Array(4).fill(Number.NaN),
    );
  });

  test('sheets that differ, units that differ', () => {
    const other = svgOf('plug', base.plug, { ...SHEET, width: 201 });
    expectFails(prove({ ...files(base), plugSvg: other }, asked), /sheets of different size/);
    const inches = dxfOf('plug', base.plug, 'in');
    expectFails(prove({ ...files(base), plugDxf: inches }, asked), /SVG and DXF differ/);
  });
});
