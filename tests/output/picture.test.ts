import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { beforeAll, expect, it } from 'vitest';
import { draw, type Files, type Renderer } from '../../src/output/index.js';
import { testRenderer } from '../support/renderer.js';
import { CARRIER, sampleJob } from './sample-job.js';

const GOLDEN = 'tests/golden/sample-picture.png';
const WIDTH = 300;

let renderer: Renderer;
let files: Files;
beforeAll(async () => {
  renderer = await testRenderer();
  files = draw(sampleJob(), renderer);
});

const small = (of: Files) => PNG.sync.read(Buffer.from(renderer.png(of.get('picture.svg') as string, WIDTH)));
const unlike = (a: PNG, b: PNG) =>
  pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.1 });

it('looks like the golden picture', () => {
  const now = small(files);
  // A golden is only ever written on purpose: UPDATE_GOLDEN=1, then looked at.
  if (process.env.UPDATE_GOLDEN) writeFileSync(GOLDEN, PNG.sync.write(now));
  expect(existsSync(GOLDEN)).toBe(true);
  const golden = PNG.sync.read(readFileSync(GOLDEN));
  expect([now.width, now.height]).toEqual([golden.width, golden.height]);
  expect(unlike(now, golden)).toBe(0);
});

it('differs when a part moves by a millimetre (the check above can fail)', () => {
  const job = sampleJob();
  const contours = job.pair.plug.contours.map((c) =>
    c.map((e) => ({ ...e, x0: e.x0 + 1, x1: e.x1 + 1, cx: e.r === 0 ? 0 : e.cx + 1 })),
  );
  const moved = small(draw({ ...job, pair: { ...job.pair, plug: { contours } } }, renderer));
  expect(unlike(moved, PNG.sync.read(readFileSync(GOLDEN)))).toBeGreaterThan(50);
});

it('shows a plug on a carrier as it will lie, not mirrored', () => {
  const carrier = draw(sampleJob({ fit: CARRIER }), renderer);
  expect(carrier.get('picture.svg')).toBe(files.get('picture.svg'));
});

it('is 720 pixels wide and has the woods’ colours where they are', () => {
  const png = PNG.sync.read(Buffer.from(files.get('picture.png') as Uint8Array));
  expect(png.width).toBe(720);
  // The picture is the 96 mm face and a rim of 4 % on each side: 103.68 mm over 720 pixels.
  const mean = (x: number, y: number): number => {
    const cx = Math.round(((x + 51.84) / 103.68) * 720);
    const cy = Math.round(((51.84 - y) / 103.68) * 720);
    let sum = 0;
    for (let dy = -15; dy <= 15; dy++)
      for (let dx = -15; dx <= 15; dx++) {
        const at = ((cy + dy) * 720 + cx + dx) * 4;
        sum += png.data[at]! + png.data[at + 1]! + png.data[at + 2]!;
      }
    return sum / (31 * 31 * 3);
  };
  // Ash is pale, walnut dark; (-24, 0) lies in the L, (24, 0) between ring and star on bare field, (18, 22) in the ring's hole.
  expect(mean(-24, 5)).toBeLessThan(100);
  expect(mean(18, 22)).toBeGreaterThan(170);
  expect(mean(0, 30)).toBeGreaterThan(170);
});

it('writes the plug once, to a hundredth of a millimetre, and uses it wherever it is drawn', () => {
  const svg = files.get('picture.svg') as string;
  const ids = [...svg.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
  const used = [...svg.matchAll(/(?:href="|url\()#([^")]+)/g)].map((m) => m[1]);
  expect(used.filter((u) => !ids.includes(u))).toEqual([]);
  expect(used.filter((u) => u === 'set')).toHaveLength(2);
  const paths = [...svg.matchAll(/ d="([^"]+)"/g)].map((m) => m[1]!);
  // Each inlaid region has as many closed ways as contours: the pocket's and the plug's, and no more than once each.
  const count = sampleJob().pair.plug.contours.length;
  expect(count).toBeGreaterThan(2);
  const inlaid = paths.filter((d) => d.split(/m/i).length - 1 === count);
  expect(inlaid).toHaveLength(2);
  expect(inlaid.filter((d) => /\.\d{3}/.test(d))).toEqual([]);
});

it('is the same bytes twice, without words, addresses or script, and small', () => {
  const again = draw(sampleJob(), renderer);
  for (const [name, content] of files) expect(again.get(name), name).toEqual(content);
  const svg = files.get('picture.svg') as string;
  expect(svg).not.toMatch(/<text|<script|href="http/);
  expect(svg.length).toBeLessThan(60_000);
});
