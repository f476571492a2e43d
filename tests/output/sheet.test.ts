import { beforeAll, describe, expect, it } from 'vitest';
import { draw, type Files, type Renderer } from '../../src/output/index.js';
import { testRenderer } from '../support/renderer.js';
import { CARRIER, sampleJob } from './sample-job.js';

let renderer: Renderer;
let loose: Files;
let carrier: Files;
beforeAll(async () => {
  renderer = await testRenderer();
  loose = draw(sampleJob(), renderer);
  carrier = draw(sampleJob({ fit: { ...CARRIER, from: 'both' } }), renderer);
});
const sheet = (files: Files) => files.get('sheet.html') as string;
/** The page's words alone. */
const words = (files: Files) =>
  sheet(files)
    .replace(/<style>.*<\/style>/s, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

describe('shop sheet', () => {
  it('asks for nothing outside itself', () => {
    for (const files of [loose, carrier]) {
      expect(sheet(files)).not.toMatch(/https?:|\/\/|@import|<script|<link|<img|<iframe|\bon\w+=/i);
      for (const [, to] of sheet(files).matchAll(/(?:href="|url\()([^")]*)/g)) expect(to).toMatch(/^#/);
    }
  });

  it('gives every id once', () => {
    const ids = [...sheet(loose).matchAll(/ id="([^"]*)"/g)].map((m) => m[1]);
    expect(ids.length).toBeGreaterThan(3);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('states the cutter, the fit and the depths', () => {
    const text = words(loose);
    for (const part of [
      '3.175 mm',
      '3.19 mm wide',
      'Corner radius r 1.9 mm',
      'per side, all of it taken from the plug',
    ])
      expect(text).toContain(part);
    // Radii at the inside corners: r on the pocket, r + clearance on the plug (1.9 + 0.08).
    expect(text).toContain('Tightest inside corner, pocket 1.9 mm');
    expect(text).toContain('Tightest inside corner, plug 1.98 mm');
    // 11 mm field less 8 mm depth.
    expect(text).toContain('under floor 3 mm');
    expect(words(carrier)).toContain('Tightest inside corner, pocket 1.94 mm');
  });

  it('gives areas from the parts: L 888 - 4 corners net, ring, star', () => {
    // Closed forms. L: 384 + 34 * 12 with five convex corners and one concave: -(5 - 1) * (1 - pi/4) r^2.
    const ell = 32 * 12 + 34 * 12 - 4 * (1 - Math.PI / 4) * 1.9 ** 2;
    const ring = Math.PI * (144 - 25);
    const total = sampleJob().pair.pocket.contours.length;
    expect(total).toBe(4);
    const pocket = Number(/pocket ([\d.]+) cm/.exec(words(loose))![1]);
    // A six-pointed star of radii 16 and 9 is 12 triangles of 16 * 9 * sin(30) / 2; its corners take a little, once more than they give.
    const star = 12 * 0.5 * 16 * 9 * 0.5;
    expect(pocket * 100).toBeLessThan(ell + ring + star);
    expect(pocket * 100).toBeGreaterThan(ell + ring + star - 25);
  });

  it('says how a carrier is cut and pressed, and a loose plug not', () => {
    expect(words(carrier)).toMatch(/cut mirrored, press in face down/);
    // 12 mm of stock less depth 8, glue gap 0.5 and saw room 4.
    expect(words(carrier)).toContain('carrier 0.5 mm');
    expect(words(loose)).not.toMatch(/mirrored|face down/);
  });

  it('letters the changes, since numbers are the parts’', () => {
    expect(loose.get('sheet.html')).toContain('<ol type="A">');
    expect(loose.get('sheet.html')).toMatch(/<text [^>]*>A<\/text>/);
  });

  it('lists changes and findings with places from the datum, and the cautions', () => {
    const text = words(loose);
    // (36, -14) from the sheet's middle is (36 + 48, 48 - 14) from the datum.
    expect(text).toContain(
      'star tip 3 was too thin for the cutter and is gone (0.8 mm across, at 84, 34 mm)',
    );
    expect(text).toContain(
      'Take care: Depth is 2.5 cutter diameters: take it in passes &amp; clear the chips.',
    );
    // OSHA's wood dust evaluation page: NIOSH 1 mg/m3; OSHA 15 total, 5 respirable.
    for (const part of [
      'Eyes and ears',
      '1 mg/m³',
      '15 mg/m³',
      '5 mg/m³',
      'OSHA',
      'Hold-down',
      'hands clear',
      'local rules',
    ])
      expect(text).toContain(part);
    expect(text).toContain(
      'This sheet is written only after the drawings were read back and measured; see job.json for the proof',
    );
  });

  it('speaks inches when the recipe does', () => {
    const text = words(draw(sampleJob({ units: 'in' }), renderer));
    expect(text).toContain('0.125 in round');
    expect(text).toContain('1/2 in');
    expect(text).not.toMatch(/\d mm\b/);
  });

  it('escapes what a user wrote', () => {
    const evil = `<img src=x onerror="1">&'`;
    const job = sampleJob({ name: evil, woods: { field: evil, plug: evil, fieldGrain: 0, plugGrain: 0 } });
    const change = { ...job.safe.changes[0]!, piece: evil };
    const html = sheet(draw({ ...job, safe: { ...job.safe, changes: [change] } }, renderer));
    expect(html).not.toContain('<img');
    expect(html.match(/&lt;img src=x onerror=&quot;1&quot;&gt;&amp;&#39;/g)!.length).toBeGreaterThanOrEqual(
      5,
    );
  });
});
