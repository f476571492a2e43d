import { describe, expect, it } from 'vitest';
import { fitBlock } from '../../src/output/sheet-fit.js';
import { numberTable } from '../../src/output/sheet-numbers.js';
import { sectionFigure } from '../../src/output/sheet-section.js';
import { stepList } from '../../src/output/sheet-work.js';
import type { Recipe } from '../../src/recipe/recipe.js';
import { CARRIER, LOOSE, MACHINE, sampleJob, sampleRecipe } from './sample-job.js';

const plain = (html: string) => html.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
const fitText = (change: Partial<Recipe> = {}) => plain(fitBlock(sampleJob(change)));
const steps = (change: Partial<Recipe> = {}) => plain(stepList(sampleJob(change)));
const DOWN = { ...LOOSE, face: 'down' } as const;
const woods = sampleRecipe().woods;

describe('the fit on the sheet', () => {
  it('gives limits in the words of ISO 286-1', () => {
    // 0.08 -+ 2 x 0.05.
    expect(fitText()).toContain(
      'Per side greatest interference 0.02 mm, greatest clearance 0.18 mm: a transition fit.',
    );
    const fine = { ...MACHINE, accuracy: 0.03, repeatability: 0.01 };
    expect(fitText({ machine: fine })).toContain(
      'least clearance 0.02 mm, greatest clearance 0.14 mm: a clearance fit.',
    );
  });

  it('gives every figure as an estimate, with a formula or a source', () => {
    const rows = fitBlock(sampleJob()).match(/<tr>.*?<\/tr>/gs)!;
    expect(rows.length).toBe(8);
    for (const row of rows.filter((r) => !plain(r).startsWith(' Pressing'))) {
      expect(plain(row)).toContain('Estimate');
      expect(plain(row)).toMatch(/memory|Handbook|published|no source|transcribed/);
    }
  });

  it('says what is unknown for a wood, and invents nothing', () => {
    const text = fitText({ woods: { ...woods, plug: 'an unknown wood' } });
    expect(text).toContain('Movement: unknown for this wood');
    expect(text).toContain('Load at which the plug crushes: unknown for this wood');
    expect(text).toContain('Contrast: unknown for this wood');
    expect(fitText({ moisture: { field: 8, plug: 8, driest: 3, dampest: 10 } })).toContain(
      'the figures hold for 6 to 14 %',
    );
    for (const all of [text, fitText()]) expect(all).not.toMatch(/NaN|undefined|Infinity|null/);
  });

  it('tells wedging leans from nesting ones', () => {
    expect(fitText()).toContain('the leans wedge');
    for (const f of [DOWN, CARRIER]) expect(fitText({ fit: f })).toContain('the leans nest');
    for (const f of [LOOSE, DOWN, CARRIER])
      expect(fitText({ fit: f })).toContain('Gauge the coupon at mouth and foot of both parts');
  });

  it('gives the press its limit and its pressure', () => {
    // 7000 kPa (walnut) x area; the plug's area by the figures of the same sheet, in cm2.
    const cm2 = Number(/plug ([\d.]+) cm²/.exec(plain(numberTable(sampleJob())))![1]);
    const kN = Number(/gives way near ([\d.]+) kN/.exec(fitText())![1]);
    expect(kN).toBeCloseTo(0.7 * cm2, 0);
    expect(fitText()).toContain('No press is named');
    // 2 US tons are 17.79 kN (2 x 2,000 lbf x 4.448 N).
    const pressed = fitText({ press: { tons: 2, kind: 'us' } });
    const kPa = Number(/makes 17\.8 kN \(2 US tons\) at most, (\d+) kPa/.exec(pressed)![1]);
    expect(kPa / ((17.793 / cm2) * 10_000)).toBeCloseTo(1, 3);
    expect(pressed).toContain('puts no pressure on its side glue lines');
  });

  it('says once what is the same for several woods', () => {
    const job = sampleJob();
    const [inlay] = job.inlays;
    const two = { ...job, inlays: [inlay!, { ...inlay!, wood: 'padauk', name: 'inlay 2' }] };
    const text = plain(fitBlock(two));
    const times = (words: string): number => text.split(words).length - 1;
    expect(times('a transition fit')).toBe(1);
    expect(times('the leans wedge')).toBe(1);
    expect(times('press slowly')).toBe(1);
    // Walnut's strength is known, padauk's is not.
    expect(times('gives way near')).toBe(1);
    expect(times('Load at which the plug crushes: unknown for this wood (padauk)')).toBe(1);
    expect(text.indexOf('1. black walnut')).toBeLessThan(text.indexOf('2. padauk'));
  });

  it('speaks inches, psi and pounds when the recipe does', () => {
    const text = fitText({ units: 'in', press: { tons: 2, kind: 'metric' } });
    expect(text).toMatch(/lbf \([\d.]+ metric tons\)/);
    expect(text).toContain('psi');
    expect(text).not.toMatch(/\d (mm|kPa|kN|cm.)\b/);
  });
});

describe('the section drawing', () => {
  /** Heights of the spans of the dimension line right of the third figure, mm of paper, from above. */
  const spans = (recipe: Recipe) =>
    [...sectionFigure(recipe).matchAll(/M163 ([\d.]+)V([\d.]+)/g)].map((m) => Number(m[2]) - Number(m[1]));
  const ratios = (all: number[], to: number) => all.map((s) => (s / all[to]!) * 8);

  it('stacks what stands above, the depth and what is left under it, to one scale', () => {
    // proud 12 - 8 + 0.5, depth 8, 11 - 8 left.
    const loose = ratios(spans(sampleRecipe()), 1);
    [4.5, 8, 3].forEach((mm, i) => {
      expect(loose[i]).toBeCloseTo(mm, 1);
    });
    // carrier 16 - 11.5, saw room 4, depth 8, 3 left.
    const carrier = ratios(spans(sampleRecipe({ fit: CARRIER, stock: { field: 11, plug: 16 } })), 2);
    [4.5, 4, 8, 3].forEach((mm, i) => {
      expect(carrier[i]).toBeCloseTo(mm, 1);
    });
  });

  it('names every height', () => {
    const text = (change: Partial<Recipe>) => plain(sectionFigure(sampleRecipe(change)));
    for (const words of ['flute 22 mm', 'foot eased 0.4 mm', 'glue gap 0.5 mm', 'clearance 0.08 mm/side'])
      for (const f of [LOOSE, DOWN, CARRIER]) expect(text({ fit: f })).toContain(words);
    expect(text({})).toContain('stands proud 4.5 mm');
    expect(text({ fit: CARRIER })).toContain('saw room 4 mm');
    expect(text({ fit: CARRIER })).toContain('plug height 11.5 mm');
    expect(text({ fit: CARRIER })).not.toContain('stands proud');
    expect(text({ fit: { ...LOOSE, proud: -0.5 }, stock: { field: 11, plug: 7 } })).toContain(
      'below the face 0.5 mm',
    );
  });

  it('turns the plug over where it goes in face down, and only there', () => {
    const over = (f: Recipe['fit']) =>
      (sectionFigure(sampleRecipe({ fit: f })).match(/rotate\(180/g) ?? []).length;
    expect([over(LOOSE), over(DOWN), over(CARRIER)]).toEqual([0, 2, 2]);
  });
});

describe('steps', () => {
  it('for a loose plug as it was cut', () => {
    expect(steps()).not.toMatch(/mirrored|carrier|[Tt]urn (it|each|the plug)/);
    expect(steps()).toContain('the lower one as it was cut');
    expect(steps()).toContain('when it stands 4.5 mm proud');
    // 3 under the floor, 0.5 of glue gap, 0.4 of foot.
    expect(steps()).toContain('3.9 mm in all');
  });
  it('for a loose plug turned over', () => {
    expect(steps({ fit: DOWN })).toContain('drawing is mirrored: cut it as drawn');
    expect(steps({ fit: DOWN })).toContain('mark its upper side: that side goes down into the pocket');
    expect(steps({ fit: DOWN })).toContain('the upper one as it was cut');
    expect(steps({ fit: DOWN })).not.toContain('carrier');
  });
  it('for a plug on a carrier', () => {
    const text = steps({ fit: CARRIER, stock: { field: 11, plug: 16 } });
    // 8 - 0.5 + 4 of 16.
    expect(text).toContain(
      '11.5 mm deep (depth less glue gap, and saw room), and leave the carrier of 4.5 mm',
    );
    expect(text).toContain('when the carrier is 4 mm above the face');
    expect(text).toContain('Saw off the carrier in the 4 mm of saw room');
  });
  it('keeps the grains apart, and mirrors the plug’s with its drawing', () => {
    // The sample's plug grain is 30 degrees; mirrored in x it is 150.
    expect(steps()).toMatch(/Field: white ash,[^;]*; grain at 0° from the drawing’s x\./);
    expect(steps()).toMatch(/Plug: black walnut,[^;]*; grain at 30° from the drawing’s x\./);
    for (const f of [DOWN, CARRIER]) {
      expect(steps({ fit: f })).toContain('grain at 150° from its mirrored drawing’s x (30° on the piece)');
      expect(plain(numberTable(sampleJob({ fit: f })))).toContain('grain 150° from its mirrored drawing’s x');
    }
  });
});
