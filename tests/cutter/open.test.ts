import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { build } from '../../src/build.js';
import { enforce } from '../../src/cutter/enforce.js';
import type { Safe } from '../../src/cutter/safe.js';
import { makePair } from '../../src/fit/split.js';
import { widthsAsked } from '../../src/fit/widths.js';
import type { Piece } from '../../src/geometry/artwork.js';
import {
  bounds,
  type Contour,
  circle,
  flatten,
  parts,
  polygon,
  reversedContour,
} from '../../src/geometry/region.js';
import type { Job } from '../../src/output/job.js';
import { readRecipe } from '../../src/recipe/read.js';
import { artworkWith, assets, outlineWith } from '../support/artwork.js';
import { letters } from '../support/letters.js';
import { proofOf } from '../support/proving.js';
import { randomPolygon, regular, seeded } from '../support/random.js';
import { closing, combined, opening, polygonArea, type Ring } from '../support/reference.js';
import { ringsOf } from '../support/rings.js';

const R = 1.5;
const rule = { r: R, thin: 'drop', touch: 'part' } as const;
const FIT = { clearance: 0.08, from: 'plug', face: 'up' } as const;
/** As wide as asked to this much, mm, and never narrower. */
const EXACT = 0.01;

/**
 * What a disc of radius Rr + a, here 3.46 mm, loses in a corner rounded to 1.8 mm of 40 degrees and more, mm2: by the closed
 * form (Rr + a)^2 (cot(a/2) - (pi - a)/2) less the same of 1.8 mm, rounded up.
 */
const CORNER = 14;

const piece = (name: string, ...contours: Contour[]): Piece => ({ name, region: { contours } });

function bar(name: string, x0: number, x1: number, y0 = 0, y1 = 60): Piece {
  return piece(name, box(x0, x1, y0, y1));
}

function box(x0: number, x1: number, y0: number, y1: number): Contour {
  return polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);
}

/** Left and right sides of each piece, mm, rounding aside. */
function sides(safe: Safe): [number, number][] {
  return safe.pieces.map((p) => {
    const { minX, maxX } = bounds(p.region.contours);
    return [minX, maxX].map((x) => Math.round(x * 1e9) / 1e9) as [number, number];
  });
}

/** Where a contour crosses the level y, in order, mm. */
function crossed(contour: Contour, y: number): number[] {
  const points = flatten(contour, 1e-4);
  return points
    .flatMap(([x0, y0], i) => {
      const [x1, y1] = points[(i + 1) % points.length]!;
      return y0 > y === y1 > y ? [] : [x0 + ((x1 - x0) * (y - y0)) / (y1 - y0)];
    })
    .sort((a, b) => a - b);
}

/** A width: what was asked, and no more than EXACT over it. */
function expectWidth(measured: number, asked: number, note = ''): void {
  expect(measured, note).toBeGreaterThanOrEqual(asked - 1e-8);
  expect(measured, note).toBeLessThanOrEqual(asked + EXACT);
}

/** Reads the written drawings back: shares no code with the pass. */
function expectProven(safe: Safe, note = ''): void {
  expect(proofOf(makePair(safe, FIT), { radius: R, clearance: FIT.clearance }).failures, note).toEqual([]);
}

function outers(rings: readonly Ring[]): number {
  return rings.filter((ring) => polygonArea([ring]) > 1e-3).length;
}

function holes(rings: readonly Ring[]): number {
  return rings.filter((ring) => polygonArea([ring]) < -1e-3).length;
}

/**
 * By JSTS (a port of the JTS Topology Suite): closed by a disc just under the gap asked, no two parts of the pattern
 * meet and none closes on itself; opened by one just under the limb, none comes apart or goes.
 */
function expectNoNeck({ region }: Safe, gap: number | null, limb: number | null, note = ''): void {
  const rings = ringsOf(region.contours, 0.001);
  const n = parts(region).length;
  const inside = region.contours.length - n;
  if (gap !== null) {
    const closed = closing('jsts', rings, gap / 2 - 0.02, 0.001);
    expect([outers(closed), holes(closed)], `${note} closed`).toEqual([n, inside]);
  }
  if (limb !== null) {
    const opened = opening('jsts', rings, limb / 2 - 0.02, 0.001);
    expect([outers(opened), holes(opened)], `${note} opened`).toEqual([n, inside]);
  }
}

describe('gaps between parallel bars', () => {
  it.each([3.2, 4, 5, 6.5, 6.98])('%d mm apart become exactly 7 mm, half from each', (gap) => {
    const x = [10, 10 + gap, 20 + gap, 20 + 2 * gap];
    const pieces = [bar('a', 0, x[0]!), bar('b', x[1]!, x[2]!), bar('c', x[3]!, x[3]! + 10)];
    const safe = enforce({ pieces }, { ...rule, gap: 7 });
    const [a, b, c] = sides(safe);
    expectWidth(b![0] - a![1], 7);
    expectWidth(c![0] - b![1], 7);
    expect(10 - a![1]).toBeCloseTo(b![0] - x[1]!, 3);
    expect([a![0], c![1]]).toEqual([0, x[3]! + 10]);
    expect(safe.changes.map((ch) => [ch.kind, ch.piece, ch.to])).toEqual([
      ['parted', 'a / b', 7],
      ['parted', 'b / c', 7],
    ]);
    expect(safe.tight).toEqual([]);
    // Lines and corners only: no step is left where the band ended.
    expect(safe.region.contours.map((ct) => ct.length)).toEqual([8, 8, 8]);
    expectProven(safe);
  });

  it('that touch are parted to what is asked, not to the cutter alone, and that is said once', () => {
    const safe = enforce({ pieces: [bar('a', 0, 10), bar('b', 10, 24)] }, { ...rule, gap: 7 });
    const [a, b] = sides(safe);
    expectWidth(b![0] - a![1], 7);
    expect(safe.changes.map((c) => [c.kind, c.to])).toEqual([['parted', 7]]);
  });

  it('take all from the side that has wood where the other has not', () => {
    const safe = enforce({ pieces: [bar('a', 0, 4), bar('b', 8, 24)] }, { ...rule, gap: 7 });
    const [a, b] = sides(safe);
    expect(a).toEqual([0, 4]);
    expectWidth(b![0], 11);
  });

  it('stay and are reported where neither side has', () => {
    const safe = enforce({ pieces: [bar('a', 0, 4), bar('b', 8, 12)] }, { ...rule, gap: 7 });
    expect(sides(safe)).toEqual([
      [0, 4],
      [8, 12],
    ]);
    expect(safe.changes).toEqual([]);
    expect(safe.tight).toHaveLength(1);
    expect(safe.tight![0]).toMatchObject({ kind: 'gap', piece: 'a / b', asked: 7 });
    expect(safe.tight![0]!.width).toBeCloseTo(4, 6);
  });

  it('leave 2r of a bar that two gaps want', () => {
    // 4.9 mm between two gaps that each want 1.5 of it: 1.9 would be left, so the outer bars give all.
    const pieces = [bar('a', 0, 20), bar('b', 24, 28.9), bar('c', 32.9, 50)];
    const safe = enforce({ pieces }, { ...rule, gap: 7 });
    const [a, b, c] = sides(safe);
    expect(b).toEqual([24, 28.9]);
    expectWidth(b![0] - a![1], 7);
    expectWidth(c![0] - b![1], 7);
    expectProven(safe);
  });
});

describe('gaps inside one piece', () => {
  it('opens a slot to exactly what is asked, no deeper', () => {
    const comb = polygon([
      [0, 0],
      [40, 0],
      [40, 60],
      [22, 60],
      [22, 20],
      [18, 20],
      [18, 60],
      [0, 60],
    ]);
    const safe = enforce({ pieces: [piece('u', comb)] }, { ...rule, gap: 7 });
    const [left, right] = crossed(safe.region.contours[0]!, 45).slice(1, 3);
    expectWidth(right! - left!, 7);
    // The bottom of the slot stays: nothing of the piece there is lost.
    const bottom = Math.min(
      ...flatten(safe.region.contours[0]!, 1e-4).flatMap(([, y]) => (y > 1.6 ? [y] : [])),
    );
    expect(bottom).toBeGreaterThan(20 - EXACT);
    expect(safe.changes.map((c) => [c.kind, c.to])).toEqual([['opened', 7]]);
    expectNoNeck(safe, 7, null);
    expectProven(safe);
  });

  it('opens holes that no disc of the width fits in, round or three-cornered, and reports one with no wood about it', () => {
    const hole = (c: Contour): Contour => reversedContour(c);
    const plate = piece('p', box(0, 90, 0, 40), hole(circle(20, 20, 2.5)), hole(regular(3, 45, 20, 5.6)));
    const safe = enforce({ pieces: [plate] }, { ...rule, gap: 7 });
    expect(safe.region.contours).toHaveLength(3);
    expect(safe.changes.map((c) => [c.kind, c.to])).toEqual([
      ['opened', 7],
      ['opened', 7],
    ]);
    expect(safe.tight).toEqual([]);
    // A hair less than 7: JSTS drops what is left of a hole at a few hundredths of a millimetre.
    expectNoNeck(safe, 6.9, null);
    expectProven(safe);
    const strip = piece('s', box(0, 40, 0, 12), hole(circle(20, 6, 2.5)));
    const left = enforce({ pieces: [strip] }, { ...rule, gap: 7 });
    expect(left.changes).toEqual([]);
    expect(left.tight!.map((t) => [t.kind, t.piece])).toEqual([['gap', 's']]);
    expect(left.tight![0]!.width).toBeCloseTo(5, 6);
  });

  it('leaves a slot where the disc would cut through what lies before its ends', () => {
    // 3.5 mm of wood before each end; a disc of 7 mm over a slot of 5 mm would leave 2.5 mm, under 2r.
    const plate = piece('p', box(0, 60, 14, 26), reversedContour(box(28.4, 31.6, 17.5, 22.5)));
    const safe = enforce({ pieces: [plate] }, { ...rule, gap: 7 });
    expect(safe.changes).toEqual([]);
    expect(safe.region.contours).toHaveLength(2);
    expect(safe.tight!.map((t) => t.kind)).toEqual(['gap']);
  });

  it('opens a slot that the cutter alone would fill', () => {
    const plate = piece('p', box(0, 60, 0, 60), reversedContour(box(29, 31, 15, 45)));
    const kinds = (safe: Safe): string[] => safe.changes.map((c) => c.kind);
    expect(kinds(enforce({ pieces: [plate] }, rule))).toEqual(['filled']);
    const safe = enforce({ pieces: [plate] }, { ...rule, gap: 5 });
    expect([kinds(safe), safe.tight]).toEqual([['opened'], []]);
    expect(bounds([safe.region.contours.find((c) => c[0]!.x0 > 20 && c[0]!.x0 < 40)!]).maxX).toBeCloseTo(
      32.5,
      1,
    );
  });

  it('opens the gap between rings to exactly what is asked, all round', () => {
    const ring = (outer: number, inner: number): Contour[] => [
      circle(0, 0, outer),
      reversedContour(circle(0, 0, inner)),
    ];
    const safe = enforce(
      { pieces: [piece('out', ...ring(40, 30)), piece('in', ...ring(26, 16))] },
      { ...rule, gap: 7 },
    );
    const radii = safe.pieces.map((p) => {
      const at = p.region.contours.flat().map((e) => Math.hypot(e.x0, e.y0));
      return [Math.min(...at), Math.max(...at)];
    });
    // The middle line is the circle half way, radius 28; arcs follow it to 0.002 mm.
    expect(Math.abs(radii[0]![0]! - 31.5)).toBeLessThan(EXACT);
    expect(Math.abs(radii[1]![1]! - 24.5)).toBeLessThan(EXACT);
    expectNoNeck(safe, 7, null);
    expectProven(safe);
  });
});

describe('limbs', () => {
  it('grow to exactly what is asked on both sides, whatever `thin` says', () => {
    for (const thin of ['drop', 'refuse', 'widen'] as const) {
      const safe = enforce({ pieces: [bar('a', 0, 4), bar('b', 30, 32)] }, { ...rule, thin, limb: 7 });
      const [a, b] = sides(safe);
      expectWidth(a![1] - a![0], 7, thin);
      expectWidth(b![1] - b![0], 7, thin);
      expect((a![0] + a![1]) / 2).toBeCloseTo(2, 2);
      expect(safe.tight).toEqual([]);
      expectNoNeck(safe, null, 7, thin);
      expectProven(safe, thin);
    }
  });

  it('stay where the gap beside them would close, and are reported', () => {
    const safe = enforce({ pieces: [bar('a', 0, 4), bar('b', 7.2, 11.2)] }, { ...rule, limb: 7 });
    expect(sides(safe)).toEqual([
      [0, 4],
      [7.2, 11.2],
    ]);
    expect(safe.tight!.map((t) => [t.kind, t.piece]).sort()).toEqual([
      ['limb', 'a'],
      ['limb', 'b'],
    ]);
  });

  it('stay where their corner would come too near to another piece', () => {
    // Grown by 1.5 mm, the corner would come within 2.57 mm of the disc (7.07 - 1.5 - 3), under 2r.
    const corner = polygon([
      [0, 0],
      [40, 0],
      [40, 4],
      [4, 4],
      [4, 40],
      [0, 40],
    ]);
    const safe = enforce(
      { pieces: [piece('l', corner), piece('o', circle(-5, -5, 3))] },
      { ...rule, limb: 7 },
    );
    expect(safe.changes.map((c) => c.kind)).not.toContain('parted');
    expect(safe.tight!.map((t) => t.piece)).toContain('l');
    expectProven(safe);
  });

  it('yield to gaps where both do not fit', () => {
    const safe = enforce({ pieces: [bar('a', 0, 8), bar('b', 12, 20)] }, { ...rule, gap: 9, limb: 9 });
    const [a, b] = sides(safe);
    expectWidth(b![0] - a![1], 9);
    expect(new Set(safe.tight!.map((t) => t.kind))).toEqual(new Set(['limb']));
  });

  it('and gaps both come out where they fit', () => {
    const safe = enforce({ pieces: [bar('a', 0, 5), bar('b', 9, 30)] }, { ...rule, gap: 7, limb: 7 });
    const [a, b] = sides(safe);
    expectWidth(a![1] - a![0], 7);
    expectWidth(b![0] - a![1], 7);
    expect(safe.tight).toEqual([]);
  });
});

describe('patterns, against a geometry library', () => {
  it('a field of squares and one of hexagons', () => {
    const grid = Array.from({ length: 9 }, (_, k) =>
      piece(
        `s${k}`,
        box(18 * (k % 3), 18 * (k % 3) + 14, 18 * Math.floor(k / 3), 18 * Math.floor(k / 3) + 14),
      ),
    );
    const hexagons = Array.from({ length: 9 }, (_, k) => {
      const row = Math.floor(k / 3);
      return piece(
        `h${k}`,
        regular(6, 20 * (k % 3) + (row % 2) * 10, 10 * Math.sqrt(3) * row, 9.3, Math.PI / 6),
      );
    });
    for (const pieces of [grid, hexagons]) {
      const safe = enforce({ pieces }, { ...rule, gap: 6 });
      expect(safe.tight).toEqual([]);
      expect(safe.pieces).toHaveLength(9);
      expectNoNeck(safe, 6, null, pieces[0]!.name);
      expectProven(safe, pieces[0]!.name);
    }
  });

  it('a generated star in a ring', () => {
    const outline = outlineWith('polygon', { sides: 8, across: 180, margin: 8 });
    const values = { style: 'star', points: 8, step: 3, rings: 1, ring: 5, gap: 5, bands: 1, strap: 5 };
    const drawn = artworkWith('rosette', { ...values, eye: 0, disc: 0, pip: 9 }, outline);
    const safe = enforce(drawn, { ...rule, gap: 7 });
    expect(safe.tight).toEqual([]);
    expect(parts(safe.region)).toHaveLength(parts(enforce(drawn, rule).region).length);
    expectNoNeck(safe, 7, null);
    expectProven(safe);
  });

  it('lettering: strokes of the bundled face, and the spaces between', () => {
    const drawn = letters('ORNE', 44).map((p, k) => ({
      name: `${p.name}${k}`,
      region: {
        contours: p.region.contours.map((c) =>
          c.map((e) => ({ ...e, x0: e.x0 + 52 * k, x1: e.x1 + 52 * k, cx: e.cx + 52 * k })),
        ),
      },
    }));
    // Strokes are 0.130 of the height: 5.7 mm.
    const safe = enforce({ pieces: drawn }, { ...rule, gap: 5, limb: 6.4 });
    expect(safe.changes.filter((c) => c.kind === 'widened' && c.to === 6.4).length).toBeGreaterThanOrEqual(4);
    expect(safe.tight).toEqual([]);
    expectNoNeck(safe, 5, 6.4);
    expectProven(safe);
  });

  it('random patterns: no throw, proven, and what is narrow is reported', () => {
    const random = seeded(20240611);
    let clean = 0;
    for (let k = 0; k < 24; k++) {
      const pieces = Array.from({ length: 6 }, (_, i): Piece => {
        const [x, y] = [24 * (i % 3) + 4 * random(), 24 * Math.floor(i / 3) + 4 * random()];
        const shape = i % 3 === 0 ? circle(x, y, 6 + 6 * random()) : randomPolygon(random, x, y, 13);
        return piece(`p${i}`, shape);
      });
      const asked = { gap: 3.5 + 3 * random(), ...(k % 2 ? { limb: 3.5 + 2 * random() } : {}) };
      const safe = enforce({ pieces }, { ...rule, ...asked });
      expectProven(safe, `case ${k}`);
      if (safe.tight!.some((t) => t.kind === 'gap')) continue;
      clean++;
      expectNoNeck(safe, asked.gap, null, `case ${k}`);
    }
    expect(clean).toBeGreaterThan(8);
  });
});

describe('asked by a recipe', () => {
  const star = readFileSync(new URL('../../patterns/star-trivet.json', import.meta.url), 'utf8');
  const job = (more: object): Job =>
    build(readRecipe(JSON.stringify({ ...JSON.parse(star), ...more }), 'star'), assets);
  const codes = (j: Job): string[] => j.findings.map((f) => f.code);

  it('widths are those of pocket and plug, whichever gives up the clearance', () => {
    // By hand: a wall of field is thinner than the pattern's gap by what the pocket gains on both sides, a limb of the
    // plug than the pattern's by what the plug loses; the roughing cutter of 6 mm clears 6.6 mm with 0.3 mm left twice.
    const walls = { least: 5, limbs: 6 };
    const asked = (from: 'plug' | 'pocket' | 'both', open: boolean) =>
      widthsAsked({
        walls: open ? { least: null, limbs: null } : walls,
        roughing: { diameter: 6, open },
        passes: { allowance: 0.3 },
        fit: { clearance: 0.1, from },
      });
    expect(asked('plug', false)).toEqual({ gap: 5, limb: 6.2 });
    expect(asked('pocket', false)).toEqual({ gap: 5.2, limb: 6 });
    expect(asked('both', false)).toEqual({ gap: 5.1, limb: 6.1 });
    expect(asked('plug', true).gap).toBeCloseTo(6.4, 12);
    expect(asked('plug', true).limb).toBeCloseTo(6.6, 12);
    expect(asked('pocket', true).gap).toBeCloseTo(6.6, 12);
    expect(asked('pocket', true).limb).toBeCloseTo(6.4, 12);
  });

  it('walls.least: the field left between pockets has it, by JSTS', () => {
    const { pair, safe } = job({ walls: { least: 6.5 } });
    expect(safe.tight).toEqual([]);
    const closed = closing('jsts', ringsOf(pair.pocket.contours, 0.001), 3.25 - 0.02, 0.001);
    expect(outers(closed)).toBe(parts(pair.pocket).length);
  });

  it('roughing.open: the roughing cutter passes with the allowance, or the place is reported, by JSTS', () => {
    const { pair, safe, findings } = job({ roughing: { diameter: '1/4in', open: true } });
    const half = 3.175 + 0.3 - 0.02;
    // No gap of the plug is under the cutter and its allowance.
    const closed = closing('jsts', ringsOf(pair.plug.contours, 0.001), half, 0.001);
    expect(outers(closed)).toBe(parts(pair.plug).length);
    // What the pocket loses by opening is corners, or lies at a limb that is reported.
    const rings = ringsOf(pair.pocket.contours, 0.001);
    const lost = combined('difference', rings, opening('jsts', rings, half, 0.001));
    const reported = safe.tight!.filter((t) => t.kind === 'limb');
    const far = lost.filter((ring) => {
      if (polygonArea([ring]) < CORNER) return false;
      const [x, y] = ring[0]!;
      return !reported.some((t) => Math.hypot(t.at[0] - x, t.at[1] - y) < t.length + 7);
    });
    expect(far).toEqual([]);
    expect(findings.filter((f) => f.code === 'still-tight').map((f) => f.numbers.places)).toEqual([
      reported.length,
    ]);
  });

  it('more than there is wood for: made all the same, and reported', () => {
    const j = job({ walls: { least: 40, limbs: 40 } });
    expect(codes(j)).toContain('still-tight');
    expect(j.safe.tight!.length).toBeGreaterThan(0);
    for (const f of j.findings) expect(f.do).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('no more than the cutter gives anyway: nothing is said', () => {
    const j = job({ walls: { least: 2, limbs: 2 } });
    expect(j.safe).toEqual(job({}).safe);
    expect(codes(j)).not.toContain('still-tight');
  });
});

describe('without the keys', () => {
  it('nothing changes, nor with widths that the cutter gives anyway', () => {
    const pieces = [bar('a', 0, 10), bar('b', 12, 22), piece('c', ...[circle(40, 20, 9)])];
    const plain = enforce({ pieces }, rule);
    expect(enforce({ pieces }, { ...rule, gap: 2 * R, limb: 1 })).toEqual(plain);
    expect('tight' in plain).toBe(false);
  });
});
