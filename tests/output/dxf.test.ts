import { Parser } from '@dxfjs/parser';
import * as dxf from 'dxf';
import dxfParser from 'dxf-parser';
import { beforeAll, describe, expect, it } from 'vitest';
import { area, contourArea } from '../../src/geometry/region.js';
import { draw, type Files } from '../../src/output/index.js';
import { testRenderer } from '../support/renderer.js';
import { bulgeArea, svgContours } from './read.js';
import { sampleJob } from './sample-job.js';

interface Polyline {
  layer: string;
  closed: boolean;
  vertices: { x: number; y: number; bulge?: number }[];
}

/** Three readers that share nothing with the writer; each as the same plain polylines. */
const READERS: Record<
  string,
  (text: string) => Promise<{ units: number; layers: string[]; polylines: Polyline[] }>
> = {
  'dxf-parser': async (text) => {
    // A CommonJS package whose types speak of a default export: in Node the class is the module itself.
    const Reader = dxfParser as unknown as typeof dxfParser.default;
    const d = new Reader().parseSync(text)!;
    const entities = d.entities as unknown as (Polyline & { type: string; shape: boolean })[];
    return {
      units: d.header.$INSUNITS as number,
      layers: Object.keys(d.tables.layer.layers),
      polylines: entities
        .filter((e) => e.type === 'LWPOLYLINE')
        .map((e) => ({ layer: e.layer, closed: e.shape, vertices: e.vertices })),
    };
  },
  dxf: async (text) => {
    const d = new dxf.Helper(text).parsed as unknown as {
      header: { insUnits: number };
      tables: { layers: Record<string, unknown> };
      entities: (Polyline & { type: string })[];
    };
    return {
      units: d.header.insUnits,
      layers: Object.keys(d.tables.layers),
      polylines: d.entities.filter((e) => e.type === 'LWPOLYLINE'),
    };
  },
  '@dxfjs/parser': async (text) => {
    const d = (await new Parser().parse(text)) as unknown as {
      header: Record<string, number>;
      tables: { layer: { records: { name: string }[] } };
      entities: { lwPolylines?: { layerName: string; flag: number; vertices: Polyline['vertices'] }[] };
    };
    return {
      units: d.header.$INSUNITS!,
      layers: d.tables.layer.records.map((r) => r.name),
      polylines: (d.entities.lwPolylines ?? []).map((e) => ({
        layer: e.layerName,
        closed: (e.flag & 1) === 1,
        vertices: e.vertices,
      })),
    };
  },
};

let mm: Files;
let inch: Files;
beforeAll(async () => {
  const renderer = await testRenderer();
  mm = draw(sampleJob(), renderer);
  inch = draw(sampleJob({ units: 'in' }), renderer);
});
const text = (files: Files, name: string) => files.get(name) as string;

describe.each(Object.keys(READERS))('DXF read by %s', (reader) => {
  const read = READERS[reader]!;

  it('has its units, layers and closed polylines with the areas of the parts', async () => {
    for (const part of ['pocket', 'plug'] as const) {
      const region = sampleJob().pair[part];
      for (const [files, units, per] of [
        [mm, 4, 1],
        [inch, 1, 25.4],
      ] as const) {
        const d = await read(text(files, `${part}.dxf`));
        expect(d.units).toBe(units);
        expect(d.layers).toEqual(expect.arrayContaining(['POCKET', 'PLUG', 'MARKS']));
        const cut = d.polylines.filter((p) => p.layer === part.toUpperCase());
        expect(cut.every((p) => p.closed)).toBe(true);
        expect(new Set(d.polylines.map((p) => p.layer))).toEqual(new Set([part.toUpperCase(), 'MARKS']));
        const areas = cut.map((p) => bulgeArea(p.vertices) * per * per);
        expect(areas).toHaveLength(region.contours.length);
        for (const [i, c] of region.contours.entries()) expect(areas[i]).toBeCloseTo(contourArea(c), 2);
        // A wrong bulge would show: without bulges the area is off by square millimetres.
        const flat = cut.map((p) => bulgeArea(p.vertices.map((v) => ({ ...v, bulge: 0 }))) * per * per);
        expect(Math.abs(flat.reduce((a, b) => a + b) - area(region))).toBeGreaterThan(10);
      }
    }
  });

  it('says the same as the SVG, within 0.0002 mm, with the same handedness', async () => {
    for (const [files, size, per] of [
      [mm, 128, 1],
      [inch, 5.03937, 25.4],
    ] as const)
      for (const part of ['pocket', 'plug']) {
        const d = await read(text(files, `${part}.dxf`));
        const polylines = d.polylines.filter((p) => p.layer === part.toUpperCase());
        const drawn = svgContours(text(files, `${part}.svg`), part);
        expect(drawn.length).toBe(polylines.length);
        drawn.forEach((contour, i) => {
          const { vertices } = polylines[i]!;
          expect(vertices).toHaveLength(contour.length);
          contour.forEach((e, k) => {
            const v = vertices[k]!;
            const w = vertices[(k + 1) % vertices.length]!;
            expect(Math.abs(v.x - e.from[0]) * per).toBeLessThan(0.0002);
            expect(Math.abs(size - v.y - e.from[1]) * per).toBeLessThan(0.0002);
            const b = v.bulge ?? 0;
            if (e.r === 0) {
              expect(b).toBe(0);
              return;
            }
            // Height of the arc over its chord by both files: bulge is 2 h / chord, and h = r - sqrt(r^2 - chord^2 / 4).
            const chord = Math.hypot(w.x - v.x, w.y - v.y);
            const height = e.r - Math.sqrt(e.r ** 2 - chord ** 2 / 4);
            expect(Math.abs((Math.abs(b) * chord) / 2 - height) * per).toBeLessThan(0.0002);
            // Positive bulge: counter-clockwise; SVG sweep 0: counter-clockwise on the screen.
            expect(b > 0).toBe(e.sweep === 0);
          });
        });
      }
  });
});

it('is the golden text', async () => {
  await expect(text(mm, 'pocket.dxf')).toMatchFileSnapshot('../golden/sample-pocket.dxf');
});

it('gives every object a handle of its own, below the seed', () => {
  for (const name of ['pocket.dxf', 'plug.dxf']) {
    const pairs = groups(text(mm, name));
    const seed = pairs[pairs.findIndex(([, v]) => v === '$HANDSEED') + 1]![1];
    const handles = pairs
      .filter(([c], i) => (c === 5 || c === 105) && pairs[i - 1]![1] !== '$HANDSEED')
      .map(([, v]) => v);
    expect(new Set(handles).size).toBe(handles.length);
    expect(handles.length).toBeGreaterThan(30);
    for (const h of handles) expect(Number.parseInt(h, 16)).toBeLessThan(Number.parseInt(seed, 16));
    // Owners and pointers name handles that exist.
    const known = new Set([...handles, '0']);
    for (const [c, v] of pairs) if ([330, 340, 350, 390].includes(c)) expect(known).toContain(v);
  }
});

it('writes no exponent and no negative nought', () => {
  for (const files of [mm, inch])
    for (const name of ['pocket.dxf', 'plug.dxf']) {
      const numbers = groups(text(files, name)).filter(([c]) => c >= 10 && c < 60);
      expect(numbers.length).toBeGreaterThan(100);
      for (const [, v] of numbers) expect(v).toMatch(/^(?!-0(\.0*)?$)-?\d+(\.\d+)?$/);
    }
});

/** Group codes and values. */
function groups(dxfText: string): [number, string][] {
  const lines = dxfText.split('\n');
  expect(lines.length % 2).toBe(1);
  return Array.from({ length: (lines.length - 1) / 2 }, (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!]);
}
