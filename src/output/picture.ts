import { bounds, type Contour, type Region } from '../geometry/region.js';
import { mirrorX } from '../geometry/transform.js';
import { decimal, millionths } from './format.js';
import { grainLines } from './grain.js';
import type { Job } from './job.js';
import { frameOf } from './ring.js';
import { shrunk } from './shrink.js';
import { pictureData } from './svg.js';
import { DARK, PALE, woodOr } from './wood-looks.js';

/** Room round the face for its shadow, mm per mm of the face's longer side. */
const MAT = 0.04;

/**
 * The piece as it will look from its face: plug in place, never mirrored; `dots` are holes in the field. No words.
 * Shrunk SVG, unit mm.
 */
export function pictureSvg(job: Job, dots: readonly Contour[] = []): string {
  const { box, face } = job.outline;
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const mat = size * MAT;
  const frame = frameOf(
    { width: box.maxX - box.minX + 2 * mat, height: box.maxY - box.minY + 2 * mat },
    'mm',
  );
  const { woods } = job.recipe;
  const field = woodOr(woods.field, PALE, woods.own);
  const inlays = [job, ...job.inlays.slice(1)].map(({ pair }, k) => ({
    wood: woodOr(job.inlays[k]!.wood, DARK, woods.own),
    pocket: pair.pocket,
    set: pair.mirrored ? mirrorX(pair.plug) : pair.plug,
    id: `set${k === 0 ? '' : k + 1}`,
    // Each wood its own grain.
    seed: 1977 + 31 * k,
  }));
  const data = (r: Region): string => pictureData(r.contours, frame);
  const w = millionths(frame.width);
  const h = millionths(frame.height);
  const place = (r: Region) => {
    const b = bounds(r.contours);
    const x = frame.width / 2e6;
    const y = frame.height / 2e6;
    return { minX: b.minX + x, maxX: b.maxX + x, minY: y - b.maxY, maxY: y - b.minY };
  };
  const joint = Math.max(0.12, size / 700);
  const facePath = data(face);
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}">`,
    '<defs>',
    `<clipPath id="face"><path clip-rule="evenodd" d="${facePath}"/></clipPath>`,
    // Drawn thrice, written once: it is most of the file.
    ...inlays.map(
      ({ id, set }) =>
        `<clipPath id="${id}-clip"><path id="${id}" clip-rule="evenodd" d="${data(set)}"/></clipPath>`,
    ),
    `<linearGradient id="light" x1="0" y1="0" x2="1" y2="1">${LIGHT}</linearGradient>`,
    '</defs>',
    `<rect width="${w}" height="${h}" fill="#fff"/>`,
    ...shadow(facePath, size),
    `<path fill-rule="evenodd" fill="${field.colour}" d="${facePath}"/>`,
    // What runs over the edge of the face (a band across a joint) is cut off there.
    '<g clip-path="url(#face)">',
    grainLines(field, place(face), woods.fieldGrain, 7),
    ...inlays.flatMap(({ wood, pocket, set, id, seed }) => [
      `<path fill-rule="evenodd" fill="#1c130c" fill-opacity=".85" d="${data(pocket)}"/>`,
      `<use href="#${id}" fill-rule="evenodd" fill="${wood.colour}"/>`,
      set.contours.length
        ? `<g clip-path="url(#${id}-clip)">${grainLines(wood, place(set), woods.plugGrain, seed)}</g>`
        : '',
      `<use href="#${id}" fill="none" stroke="#1c130c" stroke-opacity=".6" stroke-width="${decimal(joint, 2)}"/>`,
    ]),
    dots.length ? `<path fill="#1c130c" fill-opacity=".7" d="${pictureData(dots, frame)}"/>` : '',
    '</g>',
    `<path fill="url(#light)" fill-rule="evenodd" stroke="#2a1c10" stroke-opacity=".55" stroke-width="${decimal(joint * 1.4, 2)}" d="${facePath}"/>`,
    '</svg>',
  ].join('');
  return shrunk(svg);
}

/** Light from the upper left, barely there. */
const LIGHT =
  '<stop offset="0" stop-color="#fff" stop-opacity=".14"/><stop offset=".5" stop-color="#fff" stop-opacity="0"/>' +
  '<stop offset="1" stop-color="#000" stop-opacity=".08"/>';

/** A soft shadow below and to the right, in four steps. */
function shadow(facePath: string, size: number): string[] {
  return [0.01, 0.0075, 0.005, 0.0025].map((k) => {
    const shift = decimal(size * k, 2);
    return `<path transform="translate(${shift} ${shift})" fill-rule="evenodd" fill="#4a3a28" fill-opacity=".1" d="${facePath}"/>`;
  });
}
