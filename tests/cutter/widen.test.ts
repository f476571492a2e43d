import { describe, expect, it } from 'vitest';
import { enforce } from '../../src/cutter/enforce.js';
import type { Safe } from '../../src/cutter/safe.js';
import { tightPlaces } from '../../src/cutter/tight.js';
import { makePair } from '../../src/fit/split.js';
import type { Piece } from '../../src/geometry/artwork.js';
import { curveArcs } from '../../src/geometry/parametric.js';
import { area, parts, type Region } from '../../src/geometry/region.js';
import { stroke } from '../../src/geometry/stroke.js';
import { Refusal } from '../../src/schema/fault.js';
import { letters } from '../support/letters.js';
import { proofOf } from '../support/proving.js';
import { seeded } from '../support/random.js';

const R = 1;
const TEXT = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789&@%';
const FIT = { clearance: 0.05, from: 'plug', face: 'up' } as const;

function widened(piece: Piece, r = R): Safe {
  return enforce({ pieces: [piece] }, { r, thin: 'widen', touch: 'part' });
}

/** Parts and holes. */
function shape(region: Region): string {
  const n = parts(region).length;
  return `${n} parts, ${region.contours.length - n} holes`;
}

/** Reads the written drawings back: shares no code with the pass. */
function expectProven(safe: Safe, note: string, r = R): void {
  expect(tightPlaces(safe.region.contours, r), note).toEqual([]);
  expect(proofOf(makePair(safe, FIT), { radius: r, clearance: FIT.clearance }).failures, note).toEqual([]);
}

describe('thin: "widen"', () => {
  it('keeps every letter that has room for the cutter whole, and proves all', () => {
    // The bundled face's strokes are 0.130 of its capitals' height: 0.78 of the cutter's width at 12 r, 1.04 at 16 r.
    // Which letters have no room was reckoned by hand: three strokes and two counters of 2r need 10 r of height, more
    // than an 'e' of 9.7 r (12 r capitals) has, and so on; they may fill, and are named by a change.
    const tight: Record<number, string> = { 12: 'ae%', 14: '@%', 16: '@%' };
    for (const [height, may] of Object.entries(tight))
      for (const piece of letters(TEXT, Number(height) * R)) {
        const safe = widened(piece);
        const note = `${piece.name} at ${height} r`;
        expectProven(safe, note);
        if (may.includes(piece.name)) continue;
        expect(shape(safe.region), note).toBe(shape(piece.region));
      }
  });

  it('says what it widened, as a note and not as a loss', () => {
    const [piece] = letters('H', 12);
    const safe = widened(piece!);
    expect(safe.changes.map((c) => c.kind)).toEqual(['widened', 'widened', 'widened']);
    expect(area(safe.region)).toBeGreaterThan(1.15 * area(piece!.region));
  });

  it('does nothing to a letter with strokes wider than the cutter', () => {
    const [piece] = letters('O', 30);
    expect(widened(piece!)).toEqual(enforce({ pieces: [piece!] }, { r: R, thin: 'drop', touch: 'part' }));
  });

  it('passes the proof on random strokes and letters, or refuses', () => {
    const random = seeded(4711);
    const seen = { proven: 0, refused: [] as string[] };
    for (let k = 0; k < 150; k++) {
      const piece = k % 3 === 0 ? randomLetter(random) : randomStroke(random, k);
      try {
        const safe = widened(piece);
        expect(safe.region.contours.length, `case ${k}`).toBeGreaterThan(0);
        expectProven(safe, `case ${k} ${piece.name}`);
        seen.proven++;
      } catch (e) {
        if (!(e instanceof Refusal)) throw new Error(`case ${k} ${piece.name}: ${e}`, { cause: e });
        seen.refused.push(`case ${k} ${piece.name}: ${e.message}`);
      }
    }
    expect(seen.refused).toEqual([]);
    expect(seen.proven).toBe(150);
  });
});

function randomLetter(random: () => number): Piece {
  const character = TEXT[Math.floor(random() * TEXT.length)]!;
  return letters(character, 5 + random() * 20)[0]!;
}

/** A wavy stroke that may cross itself, of 0.2 to 1.1 of the cutter's width, with one of the caps. */
function randomStroke(random: () => number, k: number): Piece {
  const [a, b, c, d] = [random() * 6, random() * 4, random() * 3, 1 + random() * 2];
  const [p, q] = [random() * 6, random() * 6];
  const path = curveArcs(
    {
      point: (t) => [7 * t + b * Math.cos(d * t + p), a * Math.sin(t + q) + c * Math.sin(2 * d * t)],
      tangent: (t) => [
        7 - b * d * Math.sin(d * t + p),
        a * Math.cos(t + q) + 2 * c * d * Math.cos(2 * d * t),
      ],
    },
    0,
    1 + random() * 4,
    16,
  );
  const cap = (['butt', 'round', 'square'] as const)[k % 3]!;
  return { name: `stroke ${k}`, region: stroke(path, 2 * (0.2 + 0.9 * random()), { closed: false, cap }) };
}
