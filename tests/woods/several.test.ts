import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compose } from '../../src/generators/compose.js';
import type { Region } from '../../src/geometry/region.js';
import type { Job } from '../../src/output/job.js';
import { cornerRadius } from '../../src/recipe/recipe.js';
import { assets } from '../support/artwork.js';
import { combined, polygonArea, type Ring } from '../support/reference.js';
import { blocks, filesOf, jobOf, proofsOf, rings } from './job.js';

const united = (regions: readonly Region[]): Ring[] =>
  regions.map(rings).reduce<Ring[]>((sum, r) => combined('union', sum, r), []);

/** All that is drawn, of every wood. */
function drawn({ recipe }: Job): Ring[] {
  const cut = { r: cornerRadius(recipe.cutter), widen: false };
  return united(compose(recipe.pattern, recipe.outline, assets, cut).pieces.map((p) => p.region));
}

const pockets = (job: Job): Ring[] => united(job.inlays.map((i) => i.pair.pocket));

/** What is left to see of each wood when later ones lie over it, mm2. */
function visible({ inlays }: Job): number[] {
  return inlays.map(({ safe }, k) => {
    const over = united(inlays.slice(k + 1).map((i) => i.safe.region));
    return polygonArea(combined('difference', rings(safe.region), over));
  });
}

/** Area that rounding takes from a corner of angle a by a tangent arc: r2 (cot(a/2) - (pi - a)/2), by elementary geometry. */
const cornerLoss = (r: number, a: number): number => r * r * (1 / Math.tan(a / 2) - (Math.PI - a) / 2);

const shipped = JSON.parse(
  readFileSync(new URL('../../patterns/sewing-box-blocks.json', import.meta.url), 'utf8'),
);

describe('three woods that touch: nineteen blocks as a hexagon', () => {
  const job = jobOf(shipped);
  const files = filesOf(job);

  it('are three inlays in the order of woods.plugs, each cut into those before', () => {
    expect(job.inlays.map((i) => [i.wood, i.name, i.into])).toEqual([
      ['black walnut', 'inlay 1', []],
      ['padauk', 'inlay 2', [0]],
      ['red alder', 'inlay 3', [0, 1]],
    ]);
    expect(job.pair).toBe(job.inlays[0]!.pair);
    expect(job.safe).toBe(job.inlays[0]!.safe);
  });

  it('leave no field between them: nothing but the outer corners is lost', () => {
    // The outline of 3 + 4 + 5 + 4 + 3 hexagons has 18 corners of 120 degrees and 12 of 240.
    const corner = cornerLoss(1.8, (2 * Math.PI) / 3);
    const artwork = drawn(job);
    expect(polygonArea(combined('difference', artwork, pockets(job)))).toBeCloseTo(18 * corner, 1);
    // Padauk meets itself in a point at some outer corners; the cutter bridges it there, each time by under half r2.
    const bridges = job.inlays[1]!.safe.changes.filter((c) => c.kind === 'filled').length;
    const over = polygonArea(combined('difference', pockets(job), artwork)) - 12 * corner;
    expect(bridges).toBe(6);
    expect(over).toBeGreaterThan(0);
    expect(over).toBeLessThan((bridges * 1.8 * 1.8) / 2 + 0.05);
  });

  it('each show a third, give or take their corners', () => {
    const third = (19 * 27.5 * 27.5 * Math.sqrt(3)) / 2;
    // A rhomb's corners are two of 60 and two of 120 degrees; 60 degrees lose most.
    const most = 19 * (2 * cornerLoss(1.8, Math.PI / 3) + 2 * cornerLoss(1.8, (2 * Math.PI) / 3));
    const [walnut, padauk, alder] = visible(job) as [number, number, number];
    // The last wood is whole rhombs with their corners rounded; the others have what it gives up beside their own.
    expect(alder).toBeCloseTo(third - most, 0);
    for (const seen of [walnut, padauk]) expect(Math.abs(seen - third)).toBeLessThan(0.02 * third);
  });

  it('are proven each from its written files', () => {
    const proofs = proofsOf(job, files);
    expect(proofs.map((p) => p.failures)).toEqual([[], [], []]);
    for (const p of proofs) {
      expect(p.holds).toBe(true);
      expect(p.pocket.reach).toBeGreaterThanOrEqual(1.5);
      expect(p.plug.reach).toBeGreaterThanOrEqual(1.5);
    }
  });

  it('say nothing of gaps and losses that other woods cover', () =>
    expect(job.findings.map((f) => f.code).filter((c) => /^(lost|gap|hidden)/.test(c))).toEqual([]));

  it('on a carrier are mirrored and proven too', () => {
    const turned = jobOf(shipped, ['fit.plug=carrier', 'cutter.flute=20', 'stock.plug=20']);
    expect(turned.inlays.map((i) => i.pair.mirrored)).toEqual([true, true, true]);
    expect(proofsOf(turned).flatMap((p) => p.failures)).toEqual([]);
  });
});

describe('woods that stay apart', () => {
  it('are cut as they would be in one wood, and touch none', () => {
    const wall = { wall: 3.7 };
    const one = jobOf(blocks(undefined, wall));
    const three = jobOf(blocks({ 'left face': 'padauk', 'top face': 'red alder' }, wall));
    expect(three.inlays.map((i) => i.into)).toEqual([[], [], []]);
    const byName = (job: Job) =>
      job.inlays.flatMap((i) => i.safe.pieces).sort((a, b) => (a.name < b.name ? -1 : 1));
    expect(byName(three)).toEqual(byName(one));
    expect(three.findings.filter((f) => f.code === 'gap-between-woods')).toEqual([]);
  });
});

describe('woods drawn nearer than 2r and not touching', () => {
  const square = (x: number) => ({
    generator: 'panel',
    within: { shape: 'rectangle', width: 30, height: 30, x },
  });

  it('have their gap filled with the earlier one, and it is said', () => {
    const job = jobOf(blocks({ 'layer 1': 'padauk' }, [square(-15.5), square(15.5)]));
    expect(job.inlays.map((i) => i.into)).toEqual([[], [0]]);
    const filled = polygonArea(combined('difference', pockets(job), drawn(job)));
    // The gap is 30 by 1 mm; the ball of 1.8 mm looks into its mouths a little.
    expect(filled).toBeGreaterThan(27);
    expect(filled).toBeLessThan(30);
    const lost = polygonArea(combined('difference', drawn(job), pockets(job)));
    expect(lost).toBeLessThan(8 * cornerLoss(1.8, Math.PI / 2));
    expect(visible(job)[1]).toBeCloseTo(900 - 4 * cornerLoss(1.8, Math.PI / 2), 1);
    const said = job.findings.filter((f) => f.code === 'gap-between-woods').map((f) => f.do);
    expect(said).toEqual([
      'black walnut: one piece is drawn nearer than 3.6 mm to a later wood (layer 0, panel beside layer 1, panel): the gap is filled with black walnut. Draw them 3.6 mm apart to keep the field between them, or touching.',
    ]);
    expect(proofsOf(job).flatMap((p) => p.failures)).toEqual([]);
  });

  it('keep it from 2r on', () => {
    const job = jobOf(blocks({ 'layer 1': 'padauk' }, [square(-16.8), square(16.8)]));
    expect(job.inlays.map((i) => i.into)).toEqual([[], []]);
    expect(polygonArea(combined('difference', pockets(job), drawn(job)))).toBeLessThan(1e-3);
  });
});

describe('layers over each other', () => {
  const disc = (diameter: number, x = 0) => ({
    generator: 'panel',
    within: { shape: 'circle', diameter, x },
  });
  const circles = (r1: number, r2: number, d: number): number => {
    // Area common to two circles: the circular lens, two segments (elementary geometry).
    const a = (d * d + r1 * r1 - r2 * r2) / (2 * d);
    const segment = (r: number, h: number) => r * r * Math.acos(h / r) - h * Math.sqrt(r * r - h * h);
    return segment(r1, a) + segment(r2, d - a);
  };

  it('a later wood is let into an earlier one: order as woods.plugs has it', () => {
    const inner = jobOf(blocks({ 'layer 1': 'padauk' }, [disc(80), disc(40)]));
    expect(visible(inner).map((v) => Math.round(v))).toEqual([
      Math.round(Math.PI * (40 * 40 - 20 * 20)),
      Math.round(Math.PI * 20 * 20),
    ]);
    expect(inner.inlays.map((i) => i.into)).toEqual([[], [0]]);
    expect(proofsOf(inner).flatMap((p) => p.failures)).toEqual([]);
  });

  it('one that reaches over the edge of another shows whole, with no field between', () => {
    const job = jobOf(blocks({ 'layer 1': 'padauk' }, [disc(70, -20), disc(50, 20)]));
    const [walnut, padauk] = visible(job) as [number, number];
    expect(padauk).toBeCloseTo(Math.PI * 25 * 25, 0);
    // The two notches where the circles cross are filled with walnut by the cutter: a little more than the circle's rest.
    const rest = Math.PI * 35 * 35 - circles(35, 25, 40);
    expect(walnut - rest).toBeGreaterThan(0);
    expect(walnut - rest).toBeLessThan(4);
  });

  it('a wood that later ones cover is named', () => {
    const job = jobOf(blocks({ 'layer 0': 'padauk' }, [disc(80), disc(40)]));
    const found = job.findings.filter((f) => f.code === 'hidden-wood');
    expect(found.map((f) => f.do.split(' wholly')[0])).toEqual(['black walnut: layer 1, panel lies']);
    const put = jobOf(blocks({ 'layer 0': 'padauk', 'layer 1': 'walnut' }, [disc(80), disc(40)]));
    expect(put.inlays.map((i) => i.wood)).toEqual(['padauk', 'black walnut']);
    expect(put.findings.filter((f) => f.code === 'hidden-wood')).toEqual([]);
  });
});
