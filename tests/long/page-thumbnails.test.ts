import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { generators } from '../../src/generators/index.js';
import type { Figure, Origin } from '../../src/page/worker/protocol.js';
import { sampleText } from '../../src/recipe/sample.js';
import { answerer, drawn, from, shippedText, trouble, view } from '../page/worker/asking.js';
import { pathArea, pathBox } from '../page/worker/svg-path.js';
import { nowhere } from '../support/card-sources.js';

const shipped = readdirSync(new URL('../../patterns/', import.meta.url))
  .filter((f) => f.endsWith('.json'))
  .map((f) => f.replace(/\.json$/, ''));

/** One answerer for all, as the page has one worker for all. */
const a = answerer();

async function thumbnail(text: string, origin: Origin = nowhere): Promise<Figure> {
  const got = await a.answer({ ask: 'thumbnail', text, origin });
  if (!got || !('kind' in got) || got.kind !== 'thumbnail')
    throw new Error(JSON.stringify(got).slice(0, 300));
  expect(structuredClone(got)).toEqual(got);
  return got.figure;
}

/** Every inlay has something in it, less than the face, within the box of what may be drawn. */
function expectInlaid({ face, inlays, box }: Figure, beyond = 0): void {
  const all = pathArea(face);
  expect(all).toBeGreaterThan(100);
  expect(inlays.length).toBeGreaterThan(0);
  for (const { wood, pocket } of inlays) {
    expect(wood.colour).toMatch(/^#\w{6}$/);
    expect(pathArea(pocket)).toBeGreaterThan(1);
    const b = pathBox(pocket);
    expect(Math.max(box.minX - b.minX, b.maxX - box.maxX)).toBeLessThan(beyond + 0.001);
    expect(Math.max(box.minY - b.minY, b.maxY - box.maxY)).toBeLessThan(0.001);
  }
}

describe('a thumbnail', () => {
  it.each(generators.map((g) => [g.name, g] as const))('of %s at its defaults is drawn', async (_, g) => {
    const figure = await thumbnail(sampleText(g));
    expectInlaid(figure);
    expect(figure.box).toEqual({ minX: -50, minY: -50, maxX: 50, maxY: 50 });
    // Rounded, as there is no hurry: plugs too.
    expect(pathArea(figure.inlays[0].plug)).toBeGreaterThan(1);
  });

  it.each(shipped)('of %s is drawn', async (name) => {
    // Bands across a stave run on past its joints; a vessel has no shape here, and is made of staves.
    const { outline } = JSON.parse(shippedText(name)) as { outline: { shape?: string } };
    const stave = outline.shape === undefined || outline.shape === 'stave';
    expectInlaid(await thumbnail(shippedText(name), from(name)), stave ? 30 : 0);
  });

  it('is drawn with no memory of how long others took', async () => {
    let t = 0;
    const slow = answerer(() => (t += 1000));
    for (let k = 0; k < 3; k++) {
      const got = await slow.answer({
        ask: 'thumbnail',
        text: shippedText('hexagon-coaster'),
        origin: nowhere,
      });
      expect((got as { figure: Figure }).figure.inlays[0].plug).not.toBe('');
    }
  });

  it('leaves the job that was drawn exactly as it was', async () => {
    const one = answerer();
    await drawn(one, shippedText('hexagon-coaster'));
    const before = await view(one, 'pocket');
    await one.answer({ ask: 'thumbnail', text: shippedText('trivet-dots'), origin: nowhere });
    expect(await view(one, 'pocket')).toEqual(before);
  });

  it('of what is wrong is the trouble that a drawing of it has', async () => {
    for (const text of ['{', '{"depth": 900}']) {
      const got = await a.answer({ ask: 'thumbnail', text, origin: nowhere });
      expect(got).toEqual(await trouble(a, text));
    }
  });
});
