import { expect, it } from 'vitest';
import { gapPicture } from '../../src/output/gap-picture.js';
import { marksOf } from '../../src/output/marks.js';
import { frameOf } from '../../src/output/ring.js';
import { drawingSvg } from '../../src/output/svg.js';
import { gap, gapRuns, readSvg } from '../../src/proof/index.js';
import { sampleJob } from './sample-job.js';

/** What the colours of the map stand for, the plug's drawing moved by so much, mm. */
function legend(moved: number): string[] {
  const job = sampleJob();
  const frame = frameOf(job.sheet, 'mm');
  const text = (part: 'pocket' | 'plug'): string =>
    drawingSvg(part, part, job.pair[part], marksOf(job, false), frame);
  const pocket = readSvg(text('pocket'));
  const plug = readSvg(text('plug'));
  plug.edges.x0.forEach((_, k) => {
    for (const x of [plug.edges.x0, plug.edges.x1, plug.edges.cx]) x[k]! += moved;
  });
  const { least, most } = gap(pocket, plug);
  const runs = gapRuns(pocket, plug, 0.5);
  const svg = gapPicture(
    pocket,
    plug,
    { least, most, asked: null, runs, overlaps: [] },
    { units: 'mm', font: 'serif' },
  );
  return [...svg.matchAll(/<text [^>]*>([^<]*)</g)].map((m) => m[1]!);
}

it('an even gap is one colour, an uneven one several', () => {
  // The sample's clearance is 0.08 mm.
  expect(legend(0)).toEqual(['Gap between pocket and plug: 0.08 to 0.08 mm', 'gap 0.08 mm']);
  // Pushed aside by half of it: 0.04 mm on one side, 0.12 on the other.
  const [title, ...bands] = legend(0.04);
  expect(title).toMatch(/0\.04 to 0\.12 mm/);
  expect(bands.length).toBeGreaterThan(2);
});
