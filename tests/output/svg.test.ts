import { PNG } from 'pngjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { area, parts } from '../../src/geometry/region.js';
import { draw, type Files, type Renderer } from '../../src/output/index.js';
import { testRenderer } from '../support/renderer.js';
import { svgContours } from './read.js';
import { CARRIER, sampleJob } from './sample-job.js';

const text = (files: Files, name: string) => files.get(name) as string;

let renderer: Renderer;
let mm: Files;
let inch: Files;
let carrier: Files;
beforeAll(async () => {
  renderer = await testRenderer();
  mm = draw(sampleJob(), renderer);
  inch = draw(sampleJob({ units: 'in' }), renderer);
  carrier = draw(sampleJob({ fit: CARRIER }), renderer);
});

describe('SVG drawings', () => {
  it.each([
    ['pocket', 'pocket.svg'],
    ['plug', 'plug.svg'],
  ])('are the golden text (%s)', async (_part, name) => {
    await expect(text(mm, name)).toMatchFileSnapshot(`../golden/sample-${name}`);
  });

  it('are the golden text in inches', async () => {
    await expect(text(inch, 'pocket.svg')).toMatchFileSnapshot('../golden/sample-inch-pocket.svg');
  });

  it('state their size in the unit and share one viewBox', () => {
    for (const name of ['pocket.svg', 'plug.svg']) {
      expect(text(mm, name)).toContain('width="128mm" height="128mm" viewBox="0 0 128 128"');
      // 128 mm / 25.4 = 5.0393700...
      expect(text(inch, name)).toContain(
        'width="5.03937in" height="5.03937in" viewBox="0 0 5.03937 5.03937"',
      );
    }
  });

  it('draw one line an edge and one arc a corner, in one path a part', () => {
    const svg = text(mm, 'pocket.svg');
    const cut = /<g id="pocket">(.*?)<\/g>/s.exec(svg)![1]!;
    expect(cut.match(/<path /g)).toHaveLength(parts(sampleJob().pair.pocket).length);
    const edges = svgContours(svg, 'pocket').map((c) => [
      c.filter((e) => e.r === 0).length,
      c.filter((e) => e.r > 0).length,
    ]);
    // L: 6 lines and 6 arcs; ring: two circles of 4 arcs; star with 6 points: 12 and 12.
    expect(edges).toEqual([
      [6, 6],
      [0, 4],
      [0, 4],
      [12, 12],
    ]);
  });

  it('meet tangentially to 0.1 degree in mm and in inches', () => {
    for (const files of [mm, inch, carrier])
      for (const part of ['pocket', 'plug']) {
        let seen = 0;
        for (const contour of svgContours(text(files, `${part}.svg`), part))
          contour.forEach((e, i) => {
            const next = contour[(i + 1) % contour.length]!;
            expect(turn(direction(e, 'end'), direction(next, 'start'))).toBeLessThan(0.1);
            seen++;
          });
        expect(seen).toBe(12 + 8 + 24);
      }
  });

  it('measure the tangency of a kink (the check above can fail)', () => {
    const arc = { from: [0, 0], to: [1, 1], r: 1, sweep: 0 } as const;
    const bent = { ...arc, r: 1.01 };
    const line = { from: [1, 1], to: [1, 5], r: 0, sweep: 0 } as const;
    const of = (a: typeof arc | typeof bent) =>
      turn(
        direction({ ...a, from: [0, 0], to: [1, 1] }, 'end'),
        direction({ ...line, from: [1, 1], to: [1, 5] }, 'start'),
      );
    expect(Math.min(of(arc), 90 - of(arc))).toBeLessThan(1e-6);
    expect(Math.min(of(bent), 90 - of(bent))).toBeGreaterThan(0.1);
  });

  it('write no exponent and no negative nought', () => {
    for (const files of [mm, inch, carrier])
      for (const name of ['pocket.svg', 'plug.svg']) {
        expect(text(files, name)).not.toMatch(/\d[eE][-+]?\d/);
        expect(text(files, name)).not.toMatch(/-0(?![.\d])/);
        expect(text(files, name)).not.toMatch(/\.\d{7}/);
      }
  });

  it('mirror a plug on a carrier about the middle of the sheet, its words excepted', () => {
    const loose = svgContours(text(mm, 'plug.svg'), 'plug').flat();
    const turned = svgContours(text(carrier, 'plug.svg'), 'plug').flat();
    expect(turned).toHaveLength(loose.length);
    for (const e of turned) {
      const away = (l: (typeof loose)[number]) =>
        Math.hypot(128 - l.from[0] - e.from[0], l.from[1] - e.from[1]);
      expect(Math.min(...loose.map(away))).toBeLessThan(2e-6);
    }
    expect(
      svgContours(text(carrier, 'plug.svg'), 'datum')
        .flat()
        .some((e) => e.from[0] === 128 - 16),
    ).toBe(true);
    expect(text(carrier, 'plug.svg')).not.toContain('transform');
    expect(text(carrier, 'plug.svg')).toMatch(/<text [^>]*>10 mm<\/text>/);
    expect(text(carrier, 'pocket.svg')).toBe(text(mm, 'pocket.svg'));
  });
});

describe('SVG drawn by an independent renderer (resvg) at true scale', () => {
  const dark = (
    svg: string,
    group: string,
    perMm: number,
  ): { count: number; at: (x: number, y: number) => number; width: number } => {
    const head = /<svg[^>]*>/.exec(svg)![0];
    const body = new RegExp(`<g id="${group}"[^>]*>(.*?)</g>`, 's')
      .exec(svg)![0]
      .replace(/fill="none"/, 'fill="#000"');
    const png = PNG.sync.read(Buffer.from(renderer.png(`${head}${body}</svg>`, Math.round(128 * perMm))));
    const at = (x: number, y: number) => png.data[(y * png.width + x) * 4 + 3]!;
    let sum = 0;
    for (let i = 3; i < png.data.length; i += 4) sum += png.data[i]!;
    return { count: sum / 255, at, width: png.width };
  };

  it('covers the area of the parts within 0.2 %', () => {
    const { pair } = sampleJob();
    for (const part of ['pocket', 'plug'] as const) {
      const pixels = dark(text(mm, `${part}.svg`), part, 16).count / 16 ** 2;
      expect(Math.abs(pixels / area(pair[part]) - 1)).toBeLessThan(0.002);
      const inches = dark(text(inch, `${part}.svg`), part, 16).count / 16 ** 2;
      expect(Math.abs(inches / area(pair[part]) - 1)).toBeLessThan(0.002);
    }
  });

  it('draws the reference square exactly 10 mm, pixel by pixel', () => {
    const svg = text(mm, 'pocket.svg').replace(/<text.*<\/text>/, '');
    const { at, count } = dark(
      svg.replace('<g id="reference">', '<g id="reference" fill="#000">'),
      'reference',
      10,
    );
    expect(count).toBe(100 * 100);
    // The square's place in the file: 102..112 by 115..125 mm.
    expect([at(1020, 1150), at(1119, 1249)]).toEqual([255, 255]);
    expect([at(1019, 1150), at(1120, 1249), at(1020, 1149), at(1119, 1250)]).toEqual([0, 0, 0, 0]);
  });

  it('draws the half-inch square exactly half an inch', () => {
    const square = svgContours(text(inch, 'plug.svg'), 'reference').flat();
    for (const e of square) expect(Math.hypot(e.to[0] - e.from[0], e.to[1] - e.from[1])).toBeCloseTo(0.5, 9);
    expect(square).toHaveLength(4);
  });
});

it('is well-formed XML with hostile names', async () => {
  const files = draw(sampleJob({ name: `</title><script>"&'\u0007` }), renderer);
  for (const name of ['pocket.svg', 'plug.svg', 'picture.svg']) {
    const svg = text(files, name);
    expect(svg).not.toContain('<script');
    wellFormed(svg);
  }
  expect(() => wellFormed('<svg><g></svg>')).toThrow();
  expect(() => wellFormed('<svg>a & b</svg>')).toThrow();
});

/** Tags nest and every ampersand begins a reference; enough for the plain SVG written here. */
function wellFormed(xml: string): void {
  const open: string[] = [];
  if (/&(?!(amp|lt|gt|quot|#\d+);)/.test(xml)) throw new Error('bare ampersand');
  const rest = xml.replace(
    /<(\/?)([\w]+)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>/g,
    (_all, end, name, _attributes, empty) => {
      if (end && open.pop() !== name) throw new Error(`stray </${name}>`);
      if (!end && !empty) open.push(name);
      return '';
    },
  );
  if (open.length > 0 || /[<>]/.test(rest)) throw new Error('not well-formed');
}

type Drawn = { from: readonly [number, number]; to: readonly [number, number]; r: number; sweep: number };

/** Direction of travel in degrees (y down) at an end of an edge: chord turned by half the arc's sweep. */
function direction(e: Drawn, end: 'start' | 'end'): number {
  const chord = Math.atan2(e.to[1] - e.from[1], e.to[0] - e.from[0]);
  if (e.r === 0) return (chord * 180) / Math.PI;
  const half = Math.asin(Math.hypot(e.to[0] - e.from[0], e.to[1] - e.from[1]) / (2 * e.r));
  const sign = e.sweep === 1 ? 1 : -1;
  return ((chord + (end === 'end' ? half : -half) * sign) * 180) / Math.PI;
}

function turn(a: number, b: number): number {
  const d = Math.abs(a - b) % 360;
  return Math.min(d, 360 - d);
}
