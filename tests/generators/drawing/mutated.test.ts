import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { random } from '../../../src/generators/random.js';
import { contourArea } from '../../../src/geometry/region.js';
import { BadInput, Refusal } from '../../../src/schema/fault.js';
import { corpusFolder, corpusText, read } from './support.js';

const texts = readdirSync(corpusFolder).map((f) => corpusText(f.replace('.svg', '')));

/** Pieces of text that are put in at random. */
const BITS = [
  '"',
  '<',
  '>',
  '/>',
  '-',
  '.',
  '0',
  '1e9',
  '1e-9',
  '1e400',
  'NaN',
  ' ',
  ',',
  'z',
  'M',
  'a',
  'A1 1 0 01',
  '%',
  'mm',
  'fill="none"',
  'stroke="black"',
  'transform="scale(0)"',
  'rotate(',
  '</g>',
  '<g>',
  'url(#round)',
  '#',
  '<!--',
  ';',
];

function mutated(seed: number): string {
  const next = random(seed);
  let text = texts[Math.floor(next() * texts.length)];
  const times = 1 + Math.floor(next() * 4);
  for (let k = 0; k < times; k++) {
    const at = Math.floor(next() * text.length);
    const length = next() < 0.5 ? 0 : Math.floor(next() * 12);
    const bit = next() < 0.3 ? '' : BITS[Math.floor(next() * BITS.length)];
    text = text.slice(0, at) + bit + text.slice(at + length);
  }
  return text;
}

const RUNS = 400;

describe('drawings with something wrong in them', () => {
  it('are read as sound regions or refused in clear lines, never with another error', () => {
    let [readable, refused] = [0, 0];
    for (let seed = 0; seed < RUNS; seed++) {
      const text = mutated(seed);
      try {
        for (const { region } of read(text).figures(1)) {
          readable++;
          for (const c of region.contours) {
            c.forEach((e, i) => {
              const before = c[(i + c.length - 1) % c.length];
              if (e.x0 !== before.x1 || e.y0 !== before.y1) throw new Error(`seed ${seed}: open contour`);
              if (!Number.isFinite(e.x0 + e.y0 + e.cx + e.cy + e.r))
                throw new Error(`seed ${seed}: not finite`);
            });
          }
          if (!(contourArea(region.contours[0]) > 0)) throw new Error(`seed ${seed}: turned contour`);
        }
      } catch (e) {
        if (!(e instanceof BadInput || e instanceof Refusal)) throw new Error(`seed ${seed}: ${e}\n${text}`);
        refused++;
        for (const line of e.message.split('\n')) expect(line.length).toBeLessThan(400);
      }
    }
    expect(readable).toBeGreaterThan(RUNS / 10);
    expect(refused).toBeGreaterThan(RUNS / 10);
  });
});
