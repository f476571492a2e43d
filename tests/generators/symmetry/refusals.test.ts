import { describe, expect, it } from 'vitest';
import type { Outline } from '../../../src/outline/outline.js';
import { BadInput, Refusal } from '../../../src/schema/fault.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, outlineWith } from '../../support/artwork.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });
const ring = outlineWith('ring', { diameter: 180, bore: 90, margin: 6 });

interface Case {
  readonly generator: string;
  readonly values: Values;
  readonly outline?: Outline;
  /** What the message must name and say. */
  readonly says: RegExp;
  /** The parameter to take the number from the message for; then the pattern must be drawn. */
  readonly retry?: string;
}

const cases: readonly Case[] = [
  {
    generator: 'wallpaper',
    values: { gap: 30, disc: 0 },
    says: /^pattern\.gap: 30 mm leaves no room .* use ([\d.]+) mm/,
    retry: 'gap',
  },
  {
    generator: 'wallpaper',
    values: { gap: 900, disc: 0 },
    says: /^pattern\.gap: 900 mm leaves no room .* use ([\d.]+) mm/,
    retry: 'gap',
  },
  { generator: 'wallpaper', values: { disc: 60 }, says: /^pattern\.disc: .* use ([\d.]+) mm at most/ },
  {
    generator: 'wallpaper',
    values: { size: 99 },
    says: /^pattern\.size: 99 mm .* use ([\d.]+) mm at most/,
  },
  {
    generator: 'wallpaper',
    values: { place: 'mirror', group: 'p6' },
    says: /^pattern\.place: p6 has no mirrors/,
  },
  {
    generator: 'wallpaper',
    values: { place: 'centre', group: 'pg' },
    says: /^pattern\.place: pg has no centres/,
  },
  {
    generator: 'wallpaper',
    values: { cell: 1, size: 0.5, disc: 0 },
    says: /^pattern\.cell: .*use ([\d.]+) mm or more/,
    retry: 'cell',
  },
  {
    generator: 'wallpaper',
    values: { cell: 900 },
    says: /^pattern\.cell: no whole figure .* make it smaller/,
  },
  {
    generator: 'wallpaper',
    values: { place: 'apart', group: 'p2', cell: 20, proportion: 1, angle: Math.PI / 2, x: -5 },
    says: /^pattern\.size: the copies meet/,
  },
  {
    generator: 'frieze',
    values: { level: 40 },
    says: /^pattern\.level: .* use -[\d.]+ mm to ([\d.]+) mm/,
    retry: 'level',
  },
  {
    generator: 'frieze',
    values: { height: 200 },
    says: /^pattern\.height: .* use ([\d.]+) mm/,
    retry: 'height',
  },
  {
    generator: 'frieze',
    values: { height: 60 },
    outline: ring,
    says: /^pattern\.height: .* use ([\d.]+) mm/,
    retry: 'height',
  },
  {
    generator: 'frieze',
    values: { diameter: 300 },
    outline: ring,
    says: /^pattern\.diameter: .* use ([\d.]+) mm/,
    retry: 'diameter',
  },
  { generator: 'frieze', values: { size: 80 }, says: /^pattern\.size: 80 mm .* use ([\d.]+) mm/ },
  {
    generator: 'frieze',
    values: { repeat: 0.01, gap: 0 },
    says: /^pattern\.repeat: .* use a repeat of ([\d.]+) mm/,
  },
  {
    generator: 'frieze',
    values: { gap: 90 },
    says: /^pattern\.gap: 90 mm leaves no room .* use ([\d.]+) mm/,
    retry: 'gap',
  },
  {
    generator: 'frieze',
    values: { gap: 25, group: 'p2mm' },
    outline: ring,
    says: /^pattern\.gap: 25 mm leaves no room .* use ([\d.]+) mm/,
    retry: 'gap',
  },
  { generator: 'frieze', values: { y: 500 }, says: /^pattern\.(y|gap): / },
  {
    generator: 'frieze',
    values: { run: 'across' },
    outline: ring,
    says: /^pattern\.level: the frieze would cross/,
  },
];

describe('refusals say what would do', () => {
  for (const { generator, values, outline = lid, says, retry } of cases)
    it(`${generator} ${JSON.stringify(values)} on a ${outline.shape}`, () => {
      let message = '';
      try {
        artworkWith(generator, values, outline);
      } catch (e) {
        if (!(e instanceof BadInput || e instanceof Refusal)) throw e;
        message = e.message;
      }
      expect(message).toMatch(says);
      expect(message).not.toMatch(/\n|NaN|Infinity/);
      if (!retry) return;
      const given = { ...values, [retry]: Number(says.exec(message)![1]) };
      expect(artworkWith(generator, given, outline).pieces.length).toBeGreaterThan(0);
    });
});
