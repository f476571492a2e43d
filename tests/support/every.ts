import { expect } from 'vitest';
import { enforce } from '../../src/cutter/enforce.js';
import type { Safe } from '../../src/cutter/safe.js';
import { makePair } from '../../src/fit/split.js';
import type { Generator } from '../../src/generators/generator.js';
import { recorder } from '../../src/generators/recorder.js';
import type { Artwork } from '../../src/geometry/artwork.js';
import { makeOutline } from '../../src/outline/index.js';
import type { Outline } from '../../src/outline/outline.js';
import { BadInput, Refusal } from '../../src/schema/fault.js';
import type { Parameter, Values } from '../../src/schema/parameter.js';
import { assets, CUT } from './artwork.js';
import { proofOf } from './proving.js';

/** The faces that patterns are tried on, mm. */
export const faces = {
  lid: makeOutline('rectangle', { width: 100, height: 100, corner: 0, margin: 6 }),
  round: makeOutline('circle', { diameter: 100, margin: 5 }),
  stave: makeOutline('stave', { bottom: 70, top: 100, height: 150, margin: 6 }),
} as const;

/** A 1/8 in cutter with a tenth of its diameter as ease. */
const CUTTER = { radius: 1.5875, ease: 0.3175 };
const CLEARANCE = 0.08;

/** A value as the reader gives it: angles in radians. */
export function asRead(p: Parameter, value: number | string | boolean): number | string | boolean {
  return p.kind === 'angle' ? (Number(value) / 180) * Math.PI : value;
}

export function defaults(generator: Generator): Record<string, number | string | boolean> {
  return Object.fromEntries(generator.parameters.map((p) => [p.name, asRead(p, p.default)]));
}

export interface Made {
  readonly artwork: Artwork;
  readonly safe: Safe;
}

/**
 * Draws, rounds, splits and proves. Returns what came of it, or the refusal: one clear line that names a parameter or
 * the cutter. Anything else fails the test.
 */
export function made(generator: Generator, values: Values, outline: Outline): Made | BadInput | Refusal {
  try {
    const pen = recorder();
    generator.draw(values, outline, pen, assets, CUT);
    const artwork = pen.artwork();
    expect(artwork.pieces.length, 'an empty drawing is no pattern').toBeGreaterThan(0);
    const safe = enforce(artwork, { r: CUTTER.radius + CUTTER.ease, thin: 'drop', touch: 'part' });
    if (safe.region.contours.length === 0)
      return new Refusal(
        'nothing-left',
        'nothing of the pattern is as wide as the cutter; use a smaller cutter',
      );
    const pair = makePair(safe, { clearance: CLEARANCE, from: 'plug', face: 'up' });
    expect(proofOf(pair, { radius: CUTTER.radius, clearance: CLEARANCE }).failures).toEqual([]);
    return { artwork, safe };
  } catch (e) {
    if (!(e instanceof BadInput || e instanceof Refusal)) throw e;
    expect(e.message).not.toMatch(/\n|NaN|Infinity|undefined/);
    expect(e.message.length, e.message).toBeGreaterThan(20);
    return e;
  }
}

/** The ends of a parameter's range, and every choice but the default. */
export function ends(p: Parameter): readonly (number | string | boolean)[] {
  switch (p.kind) {
    case 'choice':
      return p.options.map((o) => o.value).filter((v) => v !== p.default);
    case 'flag':
      return [!p.default];
    case 'text':
      return ['W'.repeat(p.maxLength)];
    default:
      return [p.min, p.max];
  }
}

/** A value that a user might give: near the default for numbers, any for choices. */
export function likely(p: Parameter, random: () => number): number | string | boolean {
  switch (p.kind) {
    case 'choice':
      return p.options[Math.floor(random() * p.options.length)].value;
    case 'flag':
      return random() < 0.5;
    case 'text':
      return p.default;
    case 'count': {
      const most = Math.min(p.max, 2 * p.default + 4);
      return Math.min(p.max, Math.max(p.min, Math.round(p.min + random() * (most - p.min))));
    }
    default: {
      const span = p.default === 0 ? Math.min(p.max - p.min, 60) / 2 : Math.abs(p.default) * 0.5;
      return Math.min(p.max, Math.max(p.min, p.default + (2 * random() - 1) * span));
    }
  }
}
