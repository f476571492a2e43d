import { type Contour, parts, type Region } from '../geometry/region.js';
import { escapeText, millionths } from './format.js';
import type { Marks } from './marks.js';
import type { Label } from './numbers.js';
import { type Frame, inFrame, inGrid, type Ring, toRing } from './ring.js';

/** Width of the lines marks are drawn with, in millimetres and inches. */
const HAIRLINE = { mm: '0.1', in: '0.004' } as const;

/** One drawing for CAM as SVG: the cut paths in a group of their own name, marks in theirs. True scale. */
export function drawingSvg(
  group: 'pocket' | 'plug',
  title: string,
  region: Region,
  marks: Marks,
  frame: Frame,
): string {
  const w = millionths(frame.width);
  const h = millionths(frame.height);
  const thin = `fill="none" stroke="#000" stroke-width="${HAIRLINE[frame.units]}"`;
  const cut = parts(region).map((p) => `<path fill-rule="evenodd" d="${pathData(p, frame)}"/>`);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}${frame.units}" height="${h}${frame.units}" viewBox="0 0 ${w} ${h}">`,
    `<title>${escapeText(title)}</title>`,
    `<g id="outline" ${thin}>`,
    ...marks.outline.map((c) => `<path d="${pathData([c], frame)}"/>`),
    '</g>',
    `<g id="marks" ${thin}>`,
    '<g id="datum">',
    `<path d="${pathData([marks.datum.circle], frame)}"/>`,
    ...marks.datum.lines.map((l) => `<path d="${lineData(l, frame)}"/>`),
    '</g>',
    '<g id="reference">',
    `<path d="${pathData([marks.square], frame)}"/>`,
    labelText(marks.label, frame),
    '</g>',
    ...numbers(marks, frame),
    '</g>',
    `<g id="${group}">`,
    ...cut,
    '</g>',
    ...(marks.dots
      ? ['<g id="dots">', ...marks.dots.map((c) => `<path d="${pathData([c], frame)}"/>`), '</g>']
      : []),
    '</svg>',
    '',
  ].join('\n');
}

/** Path data of contours (mm, sheet's middle at 0, 0): M L A Z, absolute, in the frame's unit, y down. */
export function pathData(contours: readonly Contour[], frame: Frame): string {
  return contoursData(contours, frame, 1);
}

/** The same to be looked at, not cut: to a hundredth of a millimetre, or a ten-thousandth of an inch. Half as long. */
export function pictureData(contours: readonly Contour[], frame: Frame): string {
  return contoursData(contours, frame, frame.units === 'mm' ? 10_000 : 100);
}

/** `grid`: millionths that every number is a whole multiple of. */
function contoursData(contours: readonly Contour[], frame: Frame, grid: number): string {
  return contours
    .map((c) => ringData(toRing(c, frame), frame, grid))
    .filter((d) => d !== '')
    .join(' ');
}

function ringData(ring: Ring, frame: Frame, grid: number): string {
  if (ring.length < 2) return '';
  const text = (n: number): string => millionths(Math.round(n / grid) * grid);
  const at = (i: number): string => {
    const v = ring[i % ring.length]!;
    return `${text(v.x)} ${text(frame.height - v.y)}`;
  };
  const steps = ring.map((v, i) => {
    // A straight way home is drawn by Z alone.
    if (v.r === 0) return i === ring.length - 1 ? '' : ` L ${at(i + 1)}`;
    const r = text(Math.abs(v.r));
    // Counter-clockwise with y up looks counter-clockwise on the screen too, which SVG calls sweep 0.
    return ` A ${r} ${r} 0 0 ${v.r > 0 ? 0 : 1} ${at(i + 1)}`;
  });
  return `M ${at(0)}${steps.join('')} Z`;
}

function lineData([x0, y0, x1, y1]: readonly [number, number, number, number], frame: Frame): string {
  const [ax, ay] = inFrame(x0, y0, frame);
  const [bx, by] = inFrame(x1, y1, frame);
  const flip = (y: number): string => millionths(frame.height - y);
  return `M ${millionths(ax)} ${flip(ay)} L ${millionths(bx)} ${flip(by)}`;
}

function numbers({ numbers }: Marks, frame: Frame): string[] {
  if (!numbers || numbers.length === 0) return [];
  return ['<g id="numbers">', ...numbers.map((n) => labelText(n, frame)), '</g>'];
}

function labelText({ text, x, y, height }: Label, frame: Frame): string {
  // A capital is about 0.7 of the font size.
  const [px, py] = inFrame(x, y - height / 2, frame);
  const size = inGrid(height / 0.7, frame.units);
  return (
    `<text x="${millionths(px)}" y="${millionths(frame.height - py)}" font-family="sans-serif" ` +
    `font-size="${millionths(size)}" text-anchor="middle" fill="#000" stroke="none">${escapeText(text)}</text>`
  );
}
