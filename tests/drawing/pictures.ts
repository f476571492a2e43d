import { Resvg } from '@resvg/resvg-wasm';
import pixelmatch from 'pixelmatch';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { testRenderer } from '../support/renderer.js';

/** A picture in black and white: what is figure, and what is paper. */
export type Picture = PNG;

/** The picture of an SVG by resvg, on white paper, `width` pixels wide. */
export async function byResvg(svg: string, width: number): Promise<Picture> {
  await testRenderer();
  const drawn = new Resvg(svg, { background: 'white', fitTo: { mode: 'width', value: width } }).render();
  return blackAndWhite(PNG.sync.read(Buffer.from(drawn.asPng())));
}

/** The picture of an SVG by a browser, as large as `like`. */
export async function byBrowser(svg: string, page: Page, like: Picture): Promise<Picture> {
  const { width, height } = like;
  await page.setViewportSize({ width, height });
  const data = `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`;
  await page.setContent(
    `<body style="margin:0;background:white"><img style="display:block" width="${width}" height="${height}" src="${data}">`,
  );
  await page.waitForFunction('document.images[0].complete && document.images[0].naturalWidth > 0');
  return blackAndWhite(PNG.sync.read(await page.screenshot()));
}

/** A pixel that any colour fills by more than half is black: paper is what stays bright in all three. */
function blackAndWhite(picture: PNG): PNG {
  const { data } = picture;
  for (let i = 0; i < data.length; i += 4) {
    const ink = Math.min(data[i], data[i + 1], data[i + 2]) < 128;
    data.fill(ink ? 0 : 255, i, i + 3);
    data[i + 3] = 255;
  }
  return picture;
}

/** Share of pixels that differ. */
export function unlike(a: Picture, b: Picture): number {
  const n = pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.1, includeAA: true });
  return n / (a.width * a.height);
}

/** Share of pixels that are black. */
export function ink({ data, width, height }: Picture): number {
  let black = 0;
  for (let i = 0; i < data.length; i += 4) if (data[i] === 0) black++;
  return black / (width * height);
}
