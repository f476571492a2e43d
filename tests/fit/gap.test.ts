import { describe, expect, it } from 'vitest';
import { enforce } from '../../src/cutter/enforce.js';
import { makePair } from '../../src/fit/split.js';
import type { Edge } from '../../src/geometry/edge.js';
import type { Region } from '../../src/geometry/region.js';
import type { FitSetup } from '../../src/recipe/recipe.js';
import { Refusal } from '../../src/schema/fault.js';
import { boundaryGap } from '../support/engines/jsts-gap.mjs';
import { randomPolygon, seeded } from '../support/random.js';

type Point = [number, number];

/** Chords of arcs stray by less than this, mm. */
const CHORD = 0.0005;
/** What issue and proof allow the gap to be off, mm. */
const WITHIN = 0.003;

/** An edge as points, by library trigonometry and not by our own: start first, end left out. */
function points(e: Edge): Point[] {
  if (e.r === 0) return [[e.x0, e.y0]];
  const radius = Math.abs(e.r);
  const a = Math.atan2(e.y0 - e.cy, e.x0 - e.cx);
  const b = Math.atan2(e.y1 - e.cy, e.x1 - e.cx);
  const turn = 2 * Math.PI;
  const sweep = e.r > 0 ? (b - a + 2 * turn) % turn : -((a - b + 2 * turn) % turn);
  const n = Math.max(1, Math.ceil(Math.abs(sweep) / (2 * Math.acos(1 - CHORD / radius))));
  return Array.from({ length: n }, (_, k): Point => {
    const t = a + (sweep * k) / n;
    return [e.cx + radius * Math.cos(t), e.cy + radius * Math.sin(t)];
  });
}

const rings = (region: Region): Point[][] => region.contours.map((c) => c.flatMap(points));
/** x -> -x by hand; the order of points is of no matter to a distance. */
const mirrored = (all: Point[][]): Point[][] => all.map((ring) => ring.map(([x, y]): Point => [-x, y]));

/** One pattern of one to three sharp polygons, some too near each other, cut with a random corner radius. */
function pattern(random: () => number): { safe: ReturnType<typeof enforce>; r: number } | null {
  const r = 0.8 + 1.4 * random();
  const count = 1 + Math.floor(3 * random());
  const pieces = Array.from({ length: count }, (_, k) => ({
    name: `piece ${k + 1}`,
    region: { contours: [randomPolygon(random, 24 * k, 8 * random(), 8 + 7 * random())] },
  }));
  try {
    const safe = enforce({ pieces }, { r, thin: 'drop', touch: 'part' });
    return safe.region.contours.length > 0 ? { safe, r } : null;
  } catch (e) {
    if (e instanceof Refusal) return null;
    throw e;
  }
}

describe('the gap between pocket and plug, measured by JSTS', () => {
  it('is the clearance, everywhere, on 100 random patterns', () => {
    const random = seeded(2026);
    const off: number[] = [];
    let refused = 0;
    while (off.length < 100) {
      const made = pattern(random);
      if (!made) {
        refused++;
        continue;
      }
      const from = (['plug', 'pocket', 'both'] as const)[Math.floor(3 * random())]!;
      const face = (['up', 'down'] as const)[Math.floor(2 * random())]!;
      const clearance = 0.02 + random() * 0.4 * made.r;
      const fit: Pick<FitSetup, 'clearance' | 'from' | 'face'> = { clearance, from, face };
      const pair = makePair(made.safe, fit);
      const plug = rings(pair.plug);
      const { least, most } = boundaryGap(rings(pair.pocket), face === 'down' ? mirrored(plug) : plug, 0.7);
      const said = `pattern ${off.length + 1}: from ${from}, face ${face}, clearance ${clearance}`;
      expect(Math.abs(least - clearance), `least, ${said}`).toBeLessThan(WITHIN);
      expect(Math.abs(most - clearance), `most, ${said}`).toBeLessThan(WITHIN);
      off.push(Math.max(Math.abs(least - clearance), Math.abs(most - clearance)));
    }
    expect(refused).toBeLessThan(40);
    expect(Math.max(...off)).toBeGreaterThan(0);
  }, 60_000);

  it('is seen to be off when the plug is moved by 0.01 mm', () => {
    const made = pattern(seeded(5))!;
    const pair = makePair(made.safe, { clearance: 0.08, from: 'plug', face: 'up' });
    const moved = rings(pair.plug).map((ring) => ring.map(([x, y]): Point => [x + 0.01, y]));
    const { least, most } = boundaryGap(rings(pair.pocket), moved, 0.7);
    expect(most - least).toBeGreaterThan(WITHIN);
  });
});
