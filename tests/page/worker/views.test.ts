import { readFileSync } from 'node:fs';
import { SaxesParser } from 'saxes';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Answerer } from '../../../src/page/worker/answer.js';
import { type Drawn, VIEWS, type View, type ViewName } from '../../../src/page/worker/protocol.js';
import { answerer, drawn, from, shippedText, view } from './asking.js';
import { readPath } from './svg-path.js';

/** Classes that a style sheet of the page has rules for. */
function classesOf(sheet: string): Set<string> {
  const css = readFileSync(new URL(`../../../src/page/${sheet}`, import.meta.url), 'utf8');
  return new Set([...css.replace(/\/\*.*?\*\//gs, '').matchAll(/\.([a-z][\w-]*)/g)].map((m) => m[1]));
}

const looks = classesOf('style/looks.css');

/** Loose; on a carrier, which is cut mirrored; in inches; with several woods; with too slender walls; with drawings. */
const RECIPES = [
  'trivet-dots',
  'keepsake-box-lid',
  'hexagon-coaster',
  'sewing-box-blocks',
  'stool-seat-blocks',
  'heron-door-panel',
];

describe.each(RECIPES)('every view of %s', (name) => {
  let a: Answerer;
  let piece: Drawn;
  const views = new Map<ViewName, View>();

  beforeAll(async () => {
    a = answerer();
    piece = await drawn(a, shippedText(name), true, from(name));
    for (const v of VIEWS) views.set(v, await view(a, v));
  });

  it.each(VIEWS)('%s is called so, has a box, and shapes or a picture', (v) => {
    const got = views.get(v)!;
    expect(got.view).toBe(v);
    const { minX, minY, maxX, maxY } = got.box;
    for (const n of [minX, minY, maxX, maxY]) expect(Number.isFinite(n)).toBe(true);
    expect(maxX - minX).toBeGreaterThan(10);
    expect(maxY - minY).toBeGreaterThan(10);
    expect(got.shapes.length > 0).toBe(got.picture === '');
  });

  it.each(VIEWS.filter((v) => v !== 'section'))(
    '%s draws within its box, with paths that can be read',
    (v) => {
      const { shapes, labels, box } = views.get(v)!;
      // Bands run past the joints of a stave, nothing past anything else; none of these is a stave.
      for (const { d, look } of shapes)
        for (const { points } of readPath(d))
          for (const [x, y] of points) {
            const off = Math.max(box.minX - x, x - box.maxX, box.minY - y, y - box.maxY);
            if (!(off < 0.001)) throw new Error(`${look} lies ${off} mm outside`);
          }
      for (const { x, y, size, text } of labels) {
        expect(x > box.minX && x < box.maxX && y > box.minY && y < box.maxY).toBe(true);
        expect(size).toBeGreaterThan(0);
        expect(text).not.toMatch(/NaN|undefined|Infinity/);
      }
    },
  );

  it.each(VIEWS)('%s uses looks that have a style, and its key those it uses', (v) => {
    const { shapes, key } = views.get(v)!;
    for (const { look } of [...shapes, ...key])
      for (const one of look.split(' ')) expect([...looks]).toContain(one);
    const used = new Set(shapes.flatMap((s) => s.look.split(' ')));
    // Thin walls and limbs are in the key also where there are none: the sentence says so.
    for (const { look, text } of key) {
      expect(text).not.toBe('');
      if (look !== 'wall' && look !== 'limb') expect(used).toContain(look);
    }
  });

  it.each(VIEWS)('%s says something in plain sentences', (v) => {
    const { says } = views.get(v)!;
    expect(says).toMatch(/^\S.*\.$/);
    expect(says).not.toMatch(/NaN|undefined|Infinity|\s\s/);
  });

  it.each(VIEWS)('%s says lengths in inches when asked to, and the same otherwise', async (v) => {
    const mm = views.get(v)!;
    const inches = await view(a, v, 'in');
    const words = (got: View): string =>
      [
        got.says,
        got.picture.replace(/<svg[^>]*>/, ''),
        ...got.labels.map((l) => l.text),
        ...got.key.map((k) => k.text),
      ].join('|');
    expect(words(inches)).not.toMatch(/\d mm\b/);
    expect(words(mm)).not.toMatch(/\d in\b/);
    expect(/\d in\b/.test(words(inches))).toBe(/\d mm\b/.test(words(mm)));
    expect(inches.shapes).toEqual(mm.shapes);
    expect(inches.box).toEqual(mm.box);
  });

  it('survives being sent from a worker, as the drawing does', () => {
    for (const got of views.values()) expect(structuredClone(got)).toEqual(got);
    expect(structuredClone(piece)).toEqual(piece);
  });

  it('of the face lies where the piece lies', () => {
    for (const v of VIEWS)
      if (v !== 'section' && v !== 'coupon') expect(views.get(v)!.box).toEqual(piece.figure.box);
  });

  it('has a section that is a picture of its own, of the size of its box', () => {
    const { picture, box } = views.get('section')!;
    const seen: string[] = [];
    const parser = new SaxesParser({ xmlns: true });
    parser.on('error', (e) => {
      throw e;
    });
    let root: Record<string, string> = {};
    parser.on('opentag', (tag) => {
      if (seen.length === 0) {
        root = Object.fromEntries(Object.entries(tag.attributes).map(([k, at]) => [k, at.value]));
        expect(tag.uri).toBe('http://www.w3.org/2000/svg');
      }
      seen.push(tag.local);
    });
    parser.write(picture).close();
    expect(root.viewBox.split(' ').map(Number)).toEqual([
      box.minX,
      box.minY,
      box.maxX - box.minX,
      box.maxY - box.minY,
    ]);
    expect([root.width, root.height]).toEqual([`${box.maxX - box.minX}mm`, `${box.maxY - box.minY}mm`]);
    expect(seen.filter((t) => t === 'text').length).toBeGreaterThan(5);
    expect(seen).not.toContain('script');
    expect(picture).not.toMatch(/NaN|undefined/);
    // As an image it can load nothing, and need not.
    expect(picture).not.toMatch(/href|url\((?!#)/);
  });
});
