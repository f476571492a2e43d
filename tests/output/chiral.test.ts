import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { build } from '../../src/build.js';
import { draw, type Files, type Renderer } from '../../src/output/index.js';
import { readRecipe } from '../../src/recipe/read.js';
import { assets } from '../support/artwork.js';
import { openReader, type Reader } from '../support/ocr.js';
import { printed } from '../support/print.js';
import { combined, polygonArea } from '../support/reference.js';
import { testRenderer } from '../support/renderer.js';
import { type DrawnEdge, svgContours } from './read.js';

/**
 * Letters, which no mirror and no half turn leaves alike, come out readable in the piece whichever way the plug goes in.
 * The judge of what is readable is Tesseract; drawings are read from the written SVG by a reader and flattened by hand.
 */
const TEXT = 'R47';
const CAPITAL = 24;
const WIDTH = 110;

const WAYS = {
  'loose, face up': {},
  'loose, face down': { face: 'down' },
  'on a carrier': { plug: 'carrier' },
} as const;

let renderer: Renderer;
let reader: Reader;
const files = new Map<string, Files>();
beforeAll(async () => {
  renderer = await testRenderer();
  reader = await openReader();
  for (const [way, fit] of Object.entries(WAYS)) {
    const text = JSON.stringify({
      name: 'chiral',
      outline: { shape: 'rectangle', width: WIDTH, height: 50, margin: 5 },
      pattern: { generator: 'lettering', text: TEXT, height: CAPITAL },
      cutter: { diameter: 1.5, flute: 14 },
      fit,
      depth: 8,
      woods: { field: 'sugar maple', plug: 'black walnut' },
    });
    files.set(way, draw(build(readRecipe(text, 'chiral.json'), assets), renderer));
  }
});
afterAll(() => reader?.close());

type Point = [number, number];
const svgOf = (way: string, name: string): string => files.get(way)!.get(name) as string;
const widthOf = (svg: string): number => Number(/viewBox="0 0 ([\d.]+) /.exec(svg)![1]);

/** An edge as drawn (y down) as points with y up, its end left out. Arcs are under half a circle. */
function flat({ from, to, r, sweep }: DrawnEdge): Point[] {
  const [x0, y0, x1, y1] = [from[0], -from[1], to[0], -to[1]];
  if (r === 0) return [[x0, y0]];
  const chord = Math.hypot(x1 - x0, y1 - y0);
  // SVG's sweep 1 is clockwise to the eye, so the centre lies to the right of the way there.
  const side = sweep === 1 ? -1 : 1;
  const rise = Math.sqrt(Math.max(0, r * r - (chord * chord) / 4));
  const cx = (x0 + x1) / 2 - (side * rise * (y1 - y0)) / chord;
  const cy = (y0 + y1) / 2 + (side * rise * (x1 - x0)) / chord;
  const angle = 2 * Math.asin(Math.min(1, chord / (2 * r)));
  const begin = Math.atan2(y0 - cy, x0 - cx);
  const n = Math.max(1, Math.ceil(angle / 0.02));
  return Array.from({ length: n }, (_, k): Point => {
    const t = begin + (side * angle * k) / n;
    return [cx + r * Math.cos(t), cy + r * Math.sin(t)];
  });
}

const rings = (way: string, part: 'pocket' | 'plug'): Point[][] =>
  svgContours(svgOf(way, `${part}.svg`), part).map((c) => c.flatMap(flat));
const mirrored = (all: Point[][], width: number): Point[][] =>
  all.map((ring) => ring.map(([x, y]): Point => [width - x, y]));
const read = async (all: Point[][]): Promise<string> =>
  reader.read(await printed({ rings: all, capHeight: CAPITAL }));

/** The picture with all that is as dark as walnut black and the rest white, its mat and the edge of the face left out. */
function darkOf(svg: string): Buffer {
  const picture = PNG.sync.read(Buffer.from(renderer.png(svg, 2 * WIDTH)));
  const out = new PNG({ width: picture.width, height: picture.height });
  for (let y = 0; y < picture.height; y++)
    for (let x = 0; x < picture.width; x++) {
      const at = 4 * (y * picture.width + x);
      const inner = x > 20 && x < picture.width - 20 && y > 16 && y < picture.height - 16;
      const light = (picture.data[at]! + picture.data[at + 1]! + picture.data[at + 2]!) / 3;
      out.data.fill(inner && light < 120 ? 0 : 255, at, at + 3);
      out.data[at + 3] = 255;
    }
  return PNG.sync.write(out);
}

describe.each(Object.keys(WAYS))('letters %s', (way) => {
  const turned = way !== 'loose, face up';

  it('read right in the picture of the piece', async () => {
    expect(await reader.read(darkOf(svgOf(way, 'picture.svg')))).toBe(TEXT);
  });

  it('read right in the pocket’s drawing', async () => {
    expect(await read(rings(way, 'pocket'))).toBe(TEXT);
  });

  it('read right in the plug’s drawing as it goes in, and only so', async () => {
    const plug = rings(way, 'plug');
    const back = mirrored(plug, widthOf(svgOf(way, 'plug.svg')));
    expect(await read(turned ? back : plug)).toBe(TEXT);
    expect(await read(turned ? plug : back)).not.toBe(TEXT);
  });

  it('lie in the pocket as the plug goes in, and only so (by Clipper2)', () => {
    const plug = rings(way, 'plug');
    const pocket = rings(way, 'pocket');
    const back = mirrored(plug, widthOf(svgOf(way, 'plug.svg')));
    const outside = (p: Point[][]): number => polygonArea(combined('difference', p, pocket));
    expect(outside(turned ? back : plug)).toBeLessThan(1e-3);
    expect(outside(turned ? plug : back)).toBeGreaterThan(50);
    // In it with the clearance all round: the plug's area is less by about perimeter x 0.08 mm.
    expect(Math.abs(polygonArea(plug))).toBeLessThan(Math.abs(polygonArea(pocket)) - 5);
  });
});
