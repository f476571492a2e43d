import { mkdirSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { circle, reversedContour } from '../../src/geometry/region.js';
import { asDrawn, type Drawn, endOf, isSoundDrawing, shrunk } from '../support/found.js';
import { randomPolygon, seeded } from '../support/random.js';

/** How many fields: INLAYWRIGHT_LONG_RUNS, or this many. */
const RUNS = Number(process.env.INLAYWRIGHT_LONG_RUNS ?? 100_000);

/** Processor time that one field may take, s. */
const PATIENCE = 2;

/** Where a field that fails is written, as small as it could be made: it belongs into tests/corpus/finds. */
const FINDS = new URL('../.actual/finds/', import.meta.url);

/** Larger and denser than the usual test's, on seeds of their own: polygons, discs, rings and plates with holes. */
function fieldOf(seed: number): Drawn {
  const random = seeded(seed);
  const size = 12 + random() * 30;
  const pieces = Array.from({ length: 1 + Math.floor(random() * 12) }, () => {
    const [x, y] = [(random() - 0.5) * size, (random() - 0.5) * size];
    const d = 3 + random() * 8;
    const kind = random();
    if (kind < 0.08) return asDrawn([circle(x, y, d)]);
    if (kind < 0.16)
      return asDrawn([
        circle(x, y, d),
        reversedContour(randomPolygon(random, x, y, d * (0.3 + 0.6 * random()))),
      ]);
    if (kind < 0.24)
      return asDrawn([circle(x, y, d), reversedContour(circle(x, y, d * (0.3 + 0.6 * random())))]);
    return asDrawn([randomPolygon(random, x, y, d)]);
  });
  return {
    r: 0.8 + random() * 1.2,
    touch: random() < 0.5 ? 'part' : 'join',
    thin: random() < 0.15 ? 'widen' : 'drop',
    clearance: 0.02 + random() * 0.15,
    pieces,
  };
}

function fails(drawn: Drawn): boolean {
  try {
    endOf(drawn);
    return false;
  } catch {
    return true;
  }
}

it(`settles ${RUNS} dense random fields: every pair is proven, or refused with a reason, in time`, () => {
  const seen = { proven: 0, refused: 0, 'nothing left': 0 };
  const faults: string[] = [];
  for (let k = 0; k < RUNS; k++) {
    const seed = 5_000_003 + k * 7;
    const drawn = fieldOf(seed);
    const start = process.cpuUsage();
    try {
      seen[endOf(drawn)]++;
      const { user } = process.cpuUsage(start);
      if (user / 1e6 > PATIENCE) faults.push(`seed ${seed}: took ${(user / 1e6).toFixed(1)} s`);
    } catch (e) {
      mkdirSync(FINDS, { recursive: true });
      writeFileSync(
        new URL(`field-${seed}.json`, FINDS),
        `${JSON.stringify(shrunk(drawn, (d) => isSoundDrawing(d) && fails(d)))}\n`,
      );
      faults.push(`seed ${seed}: ${e}; see tests/.actual/finds/field-${seed}.json`);
    }
  }
  expect(faults).toEqual([]);
  expect(seen.proven).toBeGreaterThan(0.95 * RUNS);
  expect(seen.refused).toBeLessThanOrEqual(Math.max(1, 0.002 * RUNS));
});
