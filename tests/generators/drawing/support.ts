import { readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-wasm';
import { type Drawing, readSvg } from '../../../src/generators/drawing/read-svg.js';
import type { Region } from '../../../src/geometry/region.js';
import { testRenderer } from '../../support/renderer.js';

export const corpusFolder = new URL('../../corpus/svg/', import.meta.url);

/** The corpus' drawings by name: written for these tests. */
export function corpusText(name: string): string {
  return readFileSync(new URL(`${name}.svg`, corpusFolder), 'utf8');
}

export function read(text: string): Drawing {
  return readSvg(text, 'drawing.svg');
}

/** A small drawing round some elements, 1 unit a mm, with nothing cut off. */
export function svg(inside: string, attributes = ''): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100" overflow="visible" ${attributes}>\n${inside}\n</svg>`;
}

/** What a drawing shows at its own size, as one region. */
export function shown(text: string, scale = 1): Region {
  return {
    contours: read(text)
      .figures(scale)
      .flatMap((p) => p.region.contours),
  };
}

/** How dark each pixel of a picture is, 0 to 1, by resvg: a renderer that shares nothing with the reader. */
export async function darkness(svgText: string, width: number): Promise<Float64Array> {
  await testRenderer();
  const picture = new Resvg(svgText, {
    background: 'white',
    fitTo: { mode: 'width', value: width },
  }).render();
  const { pixels } = picture;
  const dark = new Float64Array(pixels.length / 4);
  for (let i = 0; i < dark.length; i++) dark[i] = 1 - pixels[4 * i + 1] / 255;
  return dark;
}

/** The region as an SVG file of its own, placed on the drawing's page. */
export function regionSvg(drawing: Drawing, region: Region): string {
  const { width, height } = drawing.page!;
  const [mx, my] = drawing.middle;
  const x = (v: number): string => (v + mx).toFixed(6);
  const y = (v: number): string => (my - v).toFixed(6);
  const data = region.contours.map((c) => {
    const legs = c.map((e) => {
      const end = `${x(e.x1)} ${y(e.y1)}`;
      const r = Math.abs(e.r).toFixed(6);
      return e.r === 0 ? `L${end}` : `A${r} ${r} 0 0 ${e.r > 0 ? 0 : 1} ${end}`;
    });
    return `M${x(c[0].x0)} ${y(c[0].y0)}${legs.join('')}Z`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"><path fill-rule="evenodd" d="${data.join('')}"/></svg>`;
}
