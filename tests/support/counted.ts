import { PNG } from 'pngjs';
import { parts, type Region } from '../../src/geometry/region.js';
import type { Renderer } from '../../src/output/index.js';

/** Parts and holes of a drawing. */
export interface Counts {
  readonly parts: number;
  readonly holes: number;
}

/** Parts and holes of a region, by its contours. */
export function countsOf(region: Region): Counts {
  const n = parts(region).length;
  return { parts: n, holes: region.contours.length - n };
}

/** Width of a letter's raster, pixels. */
const WIDTH = 280;

/**
 * A pinch of background in the tip of an acute notch, where two edges come nearer than a pixel, is no hole of the
 * letter. The smallest hole of a bundled face is many times as large at this width.
 */
const LEAST_PIXELS = 4;

/**
 * Parts and holes of an SVG path as the renderer fills it (nonzero winding), by counting connected pixels: ink with
 * its eight neighbours, ground with four.
 */
export function rasterCounts(
  renderer: Renderer,
  path: string,
  box: { minX: number; minY: number; maxX: number; maxY: number },
): Counts {
  const w = box.maxX - box.minX;
  const h = box.maxY - box.minY;
  const rim = 0.05 * Math.max(w, h);
  const view = `${box.minX - rim} ${box.minY - rim} ${w + 2 * rim} ${h + 2 * rim}`;
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${view}">` +
    `<rect x="${box.minX - rim}" y="${box.minY - rim}" width="${w + 2 * rim}" height="${h + 2 * rim}" fill="#fff"/>` +
    `<path d="${path}"/></svg>`;
  const { data, width, height } = PNG.sync.read(Buffer.from(renderer.png(svg, WIDTH)));
  const ink = new Uint8Array(width * height);
  for (let i = 0; i < ink.length; i++) ink[i] = data[4 * i]! < 128 ? 1 : 0;
  return { parts: blobs(ink, 1, width, height), holes: blobs(ink, 0, width, height) - 1 };
}

/** Connected areas of one colour that are large enough to count. */
function blobs(ink: Uint8Array, colour: 0 | 1, width: number, height: number): number {
  const seen = new Uint8Array(ink.length);
  const queue = new Uint32Array(ink.length);
  let found = 0;
  for (let start = 0; start < ink.length; start++) {
    if (ink[start] !== colour || seen[start]) continue;
    queue[0] = start;
    seen[start] = 1;
    let length = 1;
    for (let k = 0; k < length; k++) {
      const x = queue[k]! % width;
      const y = Math.floor(queue[k]! / width);
      for (let dy = -1; dy <= 1; dy++)
        for (let dx = -1; dx <= 1; dx++) {
          if (colour === 0 && dx !== 0 && dy !== 0) continue;
          const [u, v] = [x + dx, y + dy];
          if (u < 0 || v < 0 || u >= width || v >= height) continue;
          const i = v * width + u;
          if (ink[i] !== colour || seen[i]) continue;
          seen[i] = 1;
          queue[length++] = i;
        }
    }
    if (length >= LEAST_PIXELS) found++;
  }
  return found;
}
