import { describe, expect, it } from 'vitest';
import type { Generator } from '../../src/generators/generator.js';
import { area, bounds } from '../../src/geometry/region.js';
import { asRead, defaults, ends, faces, likely, made } from './every.js';
import { seeded } from './random.js';

/** What has to hold for every generator of a family: its defaults, the ends of its ranges, values at random. */
export function describeFamily(generators: readonly Generator[], runs: number): void {
  describe.each(generators.map((g) => [g.name, g] as const))('%s', (_, generator) => {
    it('is described: a sentence for each parameter, defaults within their ranges, a seed last', () => {
      expect(generator.summary).toMatch(/^[A-Z].*\.$/);
      const names = generator.parameters.map((p) => p.name);
      expect(new Set(names).size).toBe(names.length);
      expect(names.at(-1)).toBe('seed');
      for (const p of generator.parameters) {
        expect(p.meaning, p.name).toMatch(/^[A-Z].*\.$/);
        if ('min' in p) {
          expect(p.default).toBeGreaterThanOrEqual(p.min);
          expect(p.default).toBeLessThanOrEqual(p.max);
        }
        if (p.kind === 'choice') expect(p.options.map((o) => o.value)).toContain(p.default);
      }
    });

    for (const [name, outline] of Object.entries(faces))
      it(`at its defaults on the ${name} is proven and loses nothing to a 1/8 in cutter`, () => {
        const result = made(generator, defaults(generator), outline);
        if (result instanceof Error) throw result;
        const lost = result.safe.changes.filter((c) => c.kind !== 'filled' && c.kind !== 'parted');
        expect(lost).toEqual([]);
        const { minX, maxX, minY, maxY } = bounds(result.safe.region.contours);
        expect(minX).toBeGreaterThan(outline.box.minX - 4);
        expect(maxX).toBeLessThan(outline.box.maxX + 4);
        expect(minY).toBeGreaterThan(outline.box.minY - 1e-6);
        expect(maxY).toBeLessThan(outline.box.maxY + 1e-6);
        // A pattern that fills next to nothing or nearly everything is no pattern.
        const share = area(result.safe.region) / area(outline.face);
        expect(share).toBeGreaterThan(0.04);
        expect(share).toBeLessThan(0.9);
      });

    for (const p of generator.parameters)
      for (const value of ends(p))
        it(`with ${p.name} ${String(value).slice(0, 12)} is proven or refused`, () => {
          made(generator, { ...defaults(generator), [p.name]: asRead(p, value) }, faces.lid);
        });

    it(`with ${runs} sets of values at random is proven or refused, and drawn alike twice`, () => {
      const random = seeded(generator.name.length * 1009 + generator.parameters.length);
      let proven = 0;
      for (let k = 0; k < runs; k++) {
        const values = Object.fromEntries(
          generator.parameters.map((p) => [
            p.name,
            asRead(p, random() < 0.6 ? p.default : likely(p, random)),
          ]),
        );
        const outline = Object.values(faces)[k % 3];
        const said = JSON.stringify(values);
        const once = attempt(said, () => made(generator, values, outline));
        if (once instanceof Error) continue;
        proven++;
        if (proven > 1) continue;
        const twice = made(generator, values, outline);
        if (twice instanceof Error) throw twice;
        expect(twice.artwork).toEqual(once.artwork);
      }
      expect(proven, 'sets that were proven').toBeGreaterThan(0);
    });
  });
}

/** Runs the work; a failure says for which values. */
function attempt<T>(said: string, work: () => T): T {
  try {
    return work();
  } catch (e) {
    throw new Error(`${said}: ${e instanceof Error ? e.message : e}`, { cause: e });
  }
}
