import { describe, expect, it } from 'vitest';
import { build } from '../../../src/build.js';
import { area, perimeter, type Region } from '../../../src/geometry/region.js';
import { mirrorX } from '../../../src/geometry/transform.js';
import { anchor } from '../../../src/inspect/anchor.js';
import { ranked } from '../../../src/inspect/ranked.js';
import type { Job } from '../../../src/output/job.js';
import { AssetStore } from '../../../src/page/worker/assets.js';
import { down } from '../../../src/page/worker/figure.js';
import type { Drawn } from '../../../src/page/worker/protocol.js';
import { readRecipe } from '../../../src/recipe/read.js';
import { fromDisk } from '../../support/card-sources.js';
import { answerer, drawn, from, shippedText } from './asking.js';
import { pathArea, pathBox, readPath } from './svg-path.js';

/** Loose and on a carrier, in inches, with a font, with drawings, with several woods, on a ring and on a stave. */
const SOME = [
  'hexagon-coaster',
  'trivet-dots',
  'star-trivet',
  'keepsake-box-lid',
  'bowl-stave-wave',
  'door-number',
  'heron-door-panel',
  'sewing-box-blocks',
  'jewellery-box-knot',
  'clock-surround-blades',
];

/** What the page draws of a recipe, and the job as the command line builds it. Made once each. */
const made = new Map<string, Promise<{ got: Drawn; job: Job }>>();

function both(name: string): Promise<{ got: Drawn; job: Job }> {
  const known = made.get(name) ?? make(name);
  made.set(name, known);
  return known;
}

async function make(name: string): Promise<{ got: Drawn; job: Job }> {
  const got = await drawn(answerer(), shippedText(name), true, from(name));
  const recipe = readRecipe(shippedText(name), name);
  return { got, job: build(recipe, await new AssetStore(fromDisk).load(recipe, from(name))) };
}

/**
 * A path is written to thousandths: no point of a line is off by more than half of one in x and in y, so areas may differ
 * by that over the whole length. The reader's flattening comes to less than a tenth of it.
 */
const within = (region: Region): number => 1.1 * 0.0005 * Math.SQRT2 * perimeter(region);

describe('an exact drawing', () => {
  it.each(SOME)('of %s has the findings of the job, worst first', async (name) => {
    const { got, job } = await both(name);
    const wanted = ranked(job.findings);
    expect(wanted.length).toBeGreaterThan(1);
    expect(
      got.findings.map(({ number, code, severity, do: what }) => [number, code, severity, what]),
    ).toEqual(wanted.map(({ number, finding }) => [number, finding.code, finding.severity, finding.do]));
    expect(got.findings.map((f) => f.at)).toEqual(
      wanted.map(({ finding }) => {
        const at = anchor(finding);
        return at && [at[0], -at[1]];
      }),
    );
  });

  it.each(SOME)('of %s shows zones as large as the job found them', async (name) => {
    const { got, job } = await both(name);
    for (const [k, { finding }] of ranked(job.findings).entries()) {
      const { areas, lines } = got.findings[k];
      const zone = finding.zone?.areas;
      if (zone && zone.contours.length > 0)
        expect(Math.abs(pathArea(areas) - area(zone)), finding.code).toBeLessThan(within(zone));
      else expect(areas).toBe('');
      const stretches = (finding.zone?.lines ?? []).filter((s) => s.length > 0);
      expect(readPath(lines).map((c) => c.closed)).toEqual(stretches.map(() => false));
    }
  });

  it.each(SOME)('of %s has paths as large as the regions of the job', async (name) => {
    const { got, job } = await both(name);
    const { figure } = got;
    const { outline, inlays } = job;
    expect(Math.abs(pathArea(figure.face) - area(outline.face))).toBeLessThan(within(outline.face));
    expect(figure.inlays).toHaveLength(inlays.length);
    for (const [k, { pair }] of inlays.entries()) {
      const { pocket, plug } = figure.inlays[k];
      expect(Math.abs(pathArea(pocket) - area(pair.pocket))).toBeLessThan(within(pair.pocket));
      expect(Math.abs(pathArea(plug) - area(pair.plug))).toBeLessThan(within(pair.plug));
      expect(pathArea(pocket)).toBeGreaterThan(pathArea(plug));
    }
  });

  it.each(SOME)('of %s turns the piece upside down and not otherwise', async (name) => {
    const { got, job } = await both(name);
    const { figure } = got;
    const { outline, inlays } = job;
    const { minX, minY, maxX, maxY } = outline.box;
    expect(figure.box).toEqual({ minX, maxX, minY: -maxY, maxY: -minY });
    for (const key of ['minX', 'minY', 'maxX', 'maxY'] as const)
      expect(pathBox(figure.face)[key]).toBeCloseTo(figure.box[key], 2);
    // Where each contour begins: a plug that is cut mirrored is turned back, to lie in its pocket.
    const starts = (region: Region): number[][] => region.contours.map(([e]) => [e.x0, -e.y0]);
    for (const [k, { pair }] of inlays.entries()) {
      const set = pair.mirrored ? mirrorX(pair.plug) : pair.plug;
      for (const [d, region] of [
        [figure.inlays[k].pocket, pair.pocket],
        [figure.inlays[k].plug, set],
      ] as const) {
        const off = readPath(d).map(({ points: [[x, y]] }, i) =>
          Math.max(Math.abs(x - starts(region)[i][0]), Math.abs(y - starts(region)[i][1])),
        );
        expect(Math.max(...off)).toBeLessThan(0.00051);
      }
    }
  });

  it('turns a box over from top to bottom', () => {
    expect(down({ minX: 1, minY: 2, maxX: 3, maxY: 5 })).toEqual({ minX: 1, minY: -5, maxX: 3, maxY: -2 });
  });

  it('counts parts, and inlays where there are several woods', async () => {
    const { got: one, job } = await both('hexagon-coaster');
    // Each part has one outer contour, and outer contours alone are counter-clockwise.
    const outers = (d: string): number =>
      d.split('Z').filter((c) => c !== '' && pathArea(`${c}Z`) > 0).length;
    expect(one.parts).toEqual({
      pocket: outers(one.figure.inlays[0].pocket),
      plug: outers(one.figure.inlays[0].plug),
    });
    expect(one.parts.pocket).toBeGreaterThan(3);
    expect(one.numbers).toEqual(job.numbers);
    const several = await both('sewing-box-blocks');
    expect(several.got.parts).toEqual({ pocket: 3, plug: 3 });
  });

  it('of a disc has the areas of circles, and the clearance lies between them', async () => {
    const text = JSON.stringify({
      name: 'one-disc',
      outline: { shape: 'circle', diameter: 90, margin: 20 },
      pattern: { generator: 'dots', size: 40, gap: 30, centre: 'figure' },
      cutter: { diameter: 3, flute: 16 },
      fit: { clearance: 0.25, from: 'both', plug: 'loose' },
      depth: 10,
    });
    const { figure } = await drawn(answerer(), text);
    const circle = (r: number): number => Math.PI * r * r;
    expect(pathArea(figure.face)).toBeCloseTo(circle(45), 1);
    expect(Math.abs(pathArea(figure.inlays[0].pocket) - circle(20.125))).toBeLessThan(0.01);
    expect(Math.abs(pathArea(figure.inlays[0].plug) - circle(19.875))).toBeLessThan(0.01);
  });

  it('says how long it took, by the clock it is given', async () => {
    let t = 1000;
    const clock = (): number => (t += 7);
    expect((await drawn(answerer(clock), shippedText('hexagon-coaster'))).took).toBe(7);
  });

  it('names woods with their own colours, and where the grain runs', async () => {
    const base = JSON.parse(shippedText('hexagon-coaster')) as Record<string, unknown>;
    const own = { driftwood: { colour: '#123456' } };
    const woods = { field: 'driftwood', plug: 'yellow birch', fieldGrain: 30, plugGrain: -45, own };
    const { figure } = await drawn(answerer(), JSON.stringify({ ...base, woods }));
    expect(figure.field).toMatchObject({ name: 'driftwood', colour: '#123456' });
    expect(figure.inlays.map((i) => i.wood.name)).toEqual(['yellow birch']);
    // Counter-clockwise with y up is clockwise the other way with y down.
    expect(figure.grain.field).toBeCloseTo(-Math.PI / 6, 12);
    expect(figure.grain.plug).toBeCloseTo(Math.PI / 4, 12);
  });
});
