import { describe, expect, it } from 'vitest';
import type { Answerer } from '../../../src/page/worker/answer.js';
import { BUDGET } from '../../../src/page/worker/coarse.js';
import { exampleText } from '../../recipe/example.js';
import { answerer, drawn, from, measure, shippedText, trouble, view } from './asking.js';
import { pathArea } from './svg-path.js';

/**
 * A clock that has moved on by so much whenever it is looked at: drawing and rounding then each take one step, as nothing
 * else is timed between two looks.
 */
function stepping(step: number): { now: () => number; step: number } {
  let t = 0;
  const clock = { step, now: () => (t += clock.step) };
  return clock;
}

async function stages(a: Answerer, text: string, n: number): Promise<string[]> {
  const all: string[] = [];
  for (let k = 0; k < n; k++) all.push((await drawn(a, text, false)).stage);
  return all;
}

const coaster = shippedText('hexagon-coaster');
const dots = shippedText('trivet-dots');

describe('a coarse drawing', () => {
  it('is rounded as long as drawing and rounding fit the budget', async () => {
    expect(await stages(answerer(stepping(BUDGET / 2).now), coaster, 5)).toEqual(Array(5).fill('rounded'));
  });

  it('is rounded on the first try, then left as drawn, and tried again when the slow time is nearly forgotten', async () => {
    // 30 and 30 ms. What is remembered of the rounding is 0.95 of it with every drawing: 30 + 30 * 0.95^4 = 54.4 is the
    // first under 55.
    const got = await stages(answerer(stepping(30).now), coaster, 12);
    const round = ['rounded', 'artwork', 'artwork', 'artwork', 'artwork'];
    expect(got).toEqual([...round, ...round, 'rounded', 'artwork']);
  });

  it('is never rounded again while drawing alone takes longer than the budget', async () => {
    const got = await stages(answerer(stepping(BUDGET + 1).now), coaster, 150);
    expect(got.lastIndexOf('rounded')).toBe(0);
  });

  it('of another pattern, or with another cutter, is not held back by a slow one', async () => {
    const clock = stepping(100);
    const a = answerer(clock.now);
    expect(await stages(a, coaster, 2)).toEqual(['rounded', 'artwork']);
    clock.step = 1;
    expect(await stages(a, dots, 2)).toEqual(['rounded', 'rounded']);
    const thinner = coaster.replace('"1/8in"', '"1/16in"');
    expect(thinner).not.toBe(coaster);
    expect(await stages(a, thinner, 1)).toEqual(['rounded']);
    expect(await stages(a, coaster, 1)).toEqual(['artwork']);
    // Another pattern in the place of it, all else the same.
    const card = JSON.parse(coaster) as object;
    const other = JSON.stringify({ ...card, pattern: { generator: 'dots' } });
    expect(await stages(a, other, 1)).toEqual(['rounded']);
  });

  it('of the same pattern with other values is held back', async () => {
    const clock = stepping(100);
    const a = answerer(clock.now);
    await stages(a, exampleText(), 1);
    expect(await stages(a, exampleText({ 'pattern.points': 11, depth: 7 }), 1)).toEqual(['artwork']);
  });

  it('counts time spent on a rounding that came to nothing', async () => {
    const clock = stepping(30);
    const a = answerer(clock.now);
    const refused = exampleText({ 'cutter.thin': 'refuse', 'cutter.ease': 1.2 });
    expect(await stages(a, refused, 1)).toEqual(['artwork']);
    // The same pattern, cutter and rule, and less ease: it could be rounded, were there time.
    const sound = exampleText({ 'cutter.thin': 'refuse' });
    expect(await stages(a, sound, 1)).toEqual(['artwork']);
    expect(await stages(answerer(), sound, 1)).toEqual(['rounded']);
  });

  it.each([
    'trivet-dots',
    'star-trivet',
    'keepsake-box-lid',
    'bowl-stave-wave',
    'door-number',
    'heron-door-panel',
  ])('of %s, once rounded, is the figure that the exact drawing has', async (name) => {
    const coarse = await drawn(answerer(), shippedText(name), false, from(name));
    const exact = await drawn(answerer(), shippedText(name), true, from(name));
    expect(coarse.stage).toBe('rounded');
    expect(exact.stage).toBe('exact');
    expect(coarse.figure).toEqual(exact.figure);
    expect(coarse.recipe).toEqual(exact.recipe);
    expect([coarse.findings, coarse.numbers, coarse.parts]).toEqual([[], {}, { pocket: 0, plug: 0 }]);
  });

  it('keeps walls as wide as the recipe asks, as the exact drawing does', async () => {
    const asked = exampleText({ walls: { least: 5 } });
    const coarse = await drawn(answerer(), asked, false);
    expect(coarse.stage).toBe('rounded');
    expect(coarse.figure).toEqual((await drawn(answerer(), asked)).figure);
    expect(coarse.figure).not.toEqual((await drawn(answerer(), exampleText(), false)).figure);
  });

  it('left as drawn has the sharp pattern and no plug', async () => {
    // Squares of 12 mm stay whole as they are drawn; rounded, each loses (4 - pi) r^2 in its corners.
    const text = exampleText({
      pattern: { generator: 'dots', lattice: 'square', shape: 'square', size: 12, gap: 8, centre: 'figure' },
      'fit.from': 'plug',
    });
    const clock = stepping(100);
    const a = answerer(clock.now);
    const rounded = await drawn(a, text, false);
    const sharp = await drawn(a, text, false);
    expect([rounded.stage, sharp.stage]).toEqual(['rounded', 'artwork']);
    const [pocket, artwork] = [rounded, sharp].map((d) => pathArea(d.figure.inlays[0].pocket));
    const squares = Math.round(artwork / 144);
    expect(squares).toBeGreaterThan(4);
    expect(Math.abs(artwork - squares * 144)).toBeLessThan(0.01 * squares);
    // r is half of the 3.19 mm the cutter cuts, and the ease.
    const r = 3.19 / 2 + 0.3;
    expect(Math.abs(artwork - pocket - squares * (4 - Math.PI) * r * r)).toBeLessThan(0.03 * squares);
    expect(sharp.figure.inlays[0].plug).toBe('');
    expect(sharp.figure.face).toBe(rounded.figure.face);
  });

  it('of a pattern that is refused still shows the pattern', async () => {
    const text = exampleText({ 'cutter.thin': 'refuse', 'cutter.ease': 1.2 });
    const a = answerer();
    const coarse = await drawn(a, text, false);
    expect(coarse.stage).toBe('artwork');
    expect(pathArea(coarse.figure.inlays[0].pocket)).toBeGreaterThan(1000);
    expect((await trouble(a, text)).faults).toHaveLength(1);
  });

  it('leaves the exact drawing where it was: views and widths are still of that', async () => {
    const a = answerer();
    await drawn(a, coaster);
    const [before, width] = [await view(a, 'gap'), await measure(a, 0, 0)];
    await drawn(a, dots, false);
    expect(await view(a, 'gap')).toEqual(before);
    expect(await measure(a, 0, 0)).toEqual(width);
  });
});
