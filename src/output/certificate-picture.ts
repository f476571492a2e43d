import type { Certificate, Drawing } from '../proof/index.js';
import { placed } from './badges.js';
import { boxOfDrawings, drawnPath, type ToPicture } from './drawn-edges.js';
import { bareLength, decimal, escapeText, lengthText, type Units } from './format.js';

/** The picture's width, its rim and the height of a line of words, in its own units. */
const WIDTH = 1000;
const RIM = 60;
const LINE = 26;

/** No circle is drawn smaller than this. */
const LEAST = 2.5;

/** A radius that is no more than what a ball may press in, mm: a corner without any. */
const SHARP = 0.001;

const INK = { tight: '#b3261e', fine: '#1d5fa8' } as const;

/**
 * A drawing with its tightest places numbered: on each a circle as large as the ball that gets in, and dashed round it
 * the cutter, where the cutter is larger. Below, the numbers with their radii. SVG.
 */
export function certificatePicture(
  drawing: Drawing,
  c: Certificate,
  { units, font }: { readonly units: Units; readonly font: string },
): string {
  const [x0, y0, x1, y1] = boxOfDrawings([drawing]);
  // Tall and narrow drawings keep to a picture that is no taller than twice its width.
  const scale = Math.min((WIDTH - 2 * RIM) / (x1 - x0 || 1), (2 * WIDTH - 2 * RIM) / (y1 - y0 || 1));
  const high = (y1 - y0) * scale + 2 * RIM;
  const left = (WIDTH - (x1 - x0) * scale) / 2;
  const to: ToPicture = ([x, y]) => [left + (x - x0) * scale, high - RIM - (y - y0) * scale];
  const rows = Math.ceil(c.places.length / 2);
  const all = high + LINE * (rows + 2);
  const n = (v: number): string => decimal(v, 2);
  const ink = (radius: number): string => (radius < c.required ? INK.tight : INK.fine);
  const words = `font-family="${escapeText(font)}"`;
  const radius = 15;
  // A disc stands outside its circle: beyond the corner, or straight above.
  const beside = (p: Certificate['places'][number]): [number, number] => {
    const [x, y] = to(p.centre);
    const [u, v] = to(p.at);
    const d = Math.sqrt((u - x) * (u - x) + (v - y) * (v - y));
    const far = Math.max(p.radius, p.radius < c.required ? c.required : 0) * scale + radius + 6;
    return d < 1 ? [x, y - far] : [x + ((u - x) / d) * far, y + ((v - y) / d) * far];
  };
  const badges = placed(
    c.places.map((p, k) => ({ number: k + 1, at: beside(p) })),
    { radius, width: WIDTH, height: high },
  );
  const circles = c.places.map((p) => {
    const [x, y] = to(p.centre);
    const own = `<circle cx="${n(x)}" cy="${n(y)}" r="${n(Math.max(p.radius * scale, LEAST))}" fill="${ink(p.radius)}" fill-opacity=".25" stroke="${ink(p.radius)}" stroke-width="1.5"/>`;
    const cutter = `<circle cx="${n(x)}" cy="${n(y)}" r="${n(c.required * scale)}" fill="none" stroke="#000" stroke-width="1" stroke-dasharray="4 3"/>`;
    return p.radius < c.required ? own + cutter : own;
  });
  const discs = badges.map(({ number, disc: [u, v] }) => {
    const p = c.places[number - 1]!;
    const [x, y] = to(p.centre);
    return [
      `<path d="M ${n(u)} ${n(v)} L ${n(x)} ${n(y)}" stroke="${ink(p.radius)}" stroke-width="1.5"/>`,
      `<circle cx="${n(u)}" cy="${n(v)}" r="${radius}" fill="#fff" stroke="${ink(p.radius)}" stroke-width="2.5"/>`,
      `<text x="${n(u)}" y="${n(v + 6.5)}" font-size="18" text-anchor="middle" font-weight="bold" ${words} fill="#000">${number}</text>`,
    ].join('');
  });
  const line = (x: number, k: number, text: string, colour = '#000'): string =>
    `<text x="${n(x)}" y="${n(high + LINE * (k + 0.7))}" font-size="18" ${words} fill="${colour}">${escapeText(text)}</text>`;
  const title = `${c.holds ? 'Can be cut' : 'Cannot be cut'}: reach ${c.capped ? 'at least ' : ''}${lengthText(c.reach, units)}, the cutter needs ${lengthText(c.required, units)}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${n(all)}" viewBox="0 0 ${WIDTH} ${n(all)}">`,
    `<rect width="${WIDTH}" height="${n(all)}" fill="#fff"/>`,
    `<path d="${drawnPath(drawing, to, scale)}" fill="#e4dfd5" fill-rule="evenodd" stroke="#333" stroke-width="1.2"/>`,
    ...circles,
    ...discs,
    line(RIM, 0, title),
    ...c.places.map((p, k) =>
      line(
        k < rows ? RIM : WIDTH / 2,
        1 + (k % rows),
        `${k + 1}: ${p.kind}, ${p.radius <= SHARP ? 'sharp' : `radius ${lengthText(p.radius, units)}`}, at ${bareLength(p.at[0] - x0, units)}, ${bareLength(p.at[1] - y0, units)}`,
        ink(p.radius),
      ),
    ),
    '</svg>',
    '',
  ].join('\n');
}
