import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { line } from '../../src/geometry/edge.js';
import { circle } from '../../src/geometry/region.js';
import type { Finding } from '../../src/inspect/finding.js';
import { placed } from '../../src/output/badges.js';
import { findingPicture } from '../../src/output/finding-picture.js';
import { testRenderer } from '../support/renderer.js';
import { sampleJob } from './sample-job.js';

const finding = (part: Partial<Finding>): Finding => ({
  code: 'a-code',
  severity: 'warn',
  where: null,
  numbers: {},
  do: 'Do this.',
  ...part,
});

describe('discs', () => {
  it('lie on what they point at where nothing is in the way, and never on each other', () => {
    const points = Array.from({ length: 30 }, (_, k) => ({ number: k + 1, at: [50, 50] as const }));
    const discs = placed(points, { radius: 2, width: 100, height: 100 });
    expect(discs[0]!.disc).toEqual([50, 50]);
    for (const a of discs)
      for (const b of discs)
        if (a !== b)
          expect(Math.hypot(a.disc[0] - b.disc[0], a.disc[1] - b.disc[1])).toBeGreaterThanOrEqual(4);
  });
  it('keep within the picture', () => {
    for (const at of [
      [0, 0],
      [100, 40],
      [100, 100],
    ] as const) {
      const [{ disc }] = placed([{ number: 1, at }], { radius: 3, width: 100, height: 100 }) as [never];
      for (const c of disc as [number, number]) {
        expect(c).toBeGreaterThanOrEqual(3);
        expect(c).toBeLessThanOrEqual(97);
      }
    }
  });
});

describe('the picture of the findings', () => {
  const job = {
    ...sampleJob(),
    findings: [
      finding({ code: 'for-the-whole', severity: 'note' }),
      finding({ code: 'a-place', where: [20, 10] }),
      finding({
        code: 'an-area',
        severity: 'note',
        zone: { areas: { contours: [circle(-30, -20, 3), circle(-30, 20, 6)] } },
      }),
      finding({ code: 'a-line', zone: { lines: [[line(-5, -30, 5, -30)]] } }),
    ],
  };
  const svg = findingPicture(job, { key: true, font: 'sans-serif' });

  it('numbers what has a place as the list does, worst first', () => {
    const texts = [...svg.matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map((m) => m[1]);
    expect(texts).toEqual([
      '1',
      '2',
      '4',
      '1  a place (take care)',
      '2  a line (take care)',
      '4  an area (note)',
    ]);
    expect(findingPicture(job, { key: false, font: 'serif' })).not.toContain('take care');
  });

  it('points at the middle of the largest area where there is no single place', () => {
    const disc = /<text x="([\d.]+)" y="([\d.]+)"[^>]*>4</.exec(svg)!;
    // The face is 96 across in a rim of 4.8; the larger circle's middle is at (-30, 20), y up.
    expect(Math.abs(Number(disc[1]) - (48 + 4.8 - 30))).toBeLessThan(0.7);
    expect(Math.abs(Number(disc[2]) - (48 + 4.8 - 20))).toBeLessThan(1.6);
  });

  it('colours zones where they lie, and writes its key in the font it is given', async () => {
    const renderer = await testRenderer();
    const picture = PNG.sync.read(Buffer.from(renderer.png(svg, 1056)));
    const scale = picture.width / (96 + 9.6);
    /** Least of red, green and blue round a place of the piece: how much ink there is. */
    const ink = (x: number, y: number, reach: number): number => {
      let least = 255;
      for (let dx = -reach; dx <= reach; dx += 0.1)
        for (let dy = -reach; dy <= reach; dy += 0.1) {
          const px = Math.round((52.8 + x + dx) * scale);
          const py = Math.round((52.8 - y + dy) * scale);
          const at = 4 * (py * picture.width + px);
          least = Math.min(least, ...picture.data.subarray(at, at + 3));
        }
      return least;
    };
    // Beyond the disc, which lies on the line's middle.
    expect(ink(4.5, -30, 0.1)).toBeLessThan(40);
    expect(ink(-30, -20, 1)).toBeLessThan(80);
    // Beside the face there is none.
    expect(ink(-50, 50, 1)).toBe(255);
  });

  it('is the same for the same job', () => {
    expect(findingPicture(job, { key: true, font: 'sans-serif' })).toBe(svg);
  });
});
