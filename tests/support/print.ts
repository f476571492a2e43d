import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { flatten, type Region } from '../../src/geometry/region.js';
import { testRenderer } from './renderer.js';

const require = createRequire(import.meta.url);

/** Letters as closed rings of points, y up; holes run the other way round than what they are cut from. */
export interface Word {
  readonly rings: readonly (readonly (readonly [number, number])[])[];
  /** Height of a flat capital, in the points' unit. */
  readonly capHeight: number;
}

/** Capitals of a picture are this high, pixels: at 30 to 60 the reader reads best (measured on all bundled faces). */
const CAPITAL = 40;

/** A word black on white as PNG, with a capital's height of white round it. `extra` is SVG drawn over it, in the word's unit, y down. */
export async function printed({ rings, capHeight }: Word, extra = ''): Promise<Uint8Array> {
  const points = rings.flat();
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => -p[1]);
  const [x, y] = [least(xs) - capHeight, least(ys) - capHeight];
  const [w, h] = [most(xs) + capHeight - x, most(ys) + capHeight - y];
  const d = rings.map(
    (ring) => `M${ring.map(([px, py]) => `${px.toFixed(4)} ${(-py).toFixed(4)}`).join('L')}Z`,
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${x} ${y} ${w} ${h}"><rect x="${x}" y="${y}" width="${w}" height="${h}" fill="#fff"/><path d="${d.join('')}"/>${extra}</svg>`;
  const renderer = await testRenderer();
  return renderer.png(svg, Math.round((w / capHeight) * CAPITAL));
}

export function wordOf(region: Region, capHeight: number): Word {
  return { rings: region.contours.map((c) => flatten(c, capHeight / 2000)), capHeight };
}

interface Path {
  readonly commands: readonly { readonly command: string; readonly args: readonly number[] }[];
}

/** What these tests use of fontkit, which ships no types. */
interface Fontkit {
  create(bytes: Buffer): {
    readonly unitsPerEm: number;
    readonly capHeight: number;
    layout(text: string): {
      readonly glyphs: readonly { readonly path: Path }[];
      readonly positions: readonly {
        readonly xAdvance: number;
        readonly xOffset: number;
        readonly yOffset: number;
      }[];
    };
  };
}

/** A word in a font's own outlines as fontkit, another reader of fonts, shapes it; font units. */
export function setByFontkit(file: string, text: string, capHeight?: number): Word {
  const font = (require('fontkit') as Fontkit).create(readFileSync(require.resolve(file)));
  const { glyphs, positions } = font.layout(text);
  const rings: [number, number][][] = [];
  let pen = 0;
  glyphs.forEach(({ path }, i) => {
    const { xAdvance, xOffset, yOffset } = positions[i]!;
    rings.push(
      ...ringsOf(path).map((r) => r.map(([x, y]): [number, number] => [x + pen + xOffset, y + yOffset])),
    );
    pen += xAdvance;
  });
  return { rings, capHeight: capHeight ?? font.capHeight };
}

function ringsOf(path: Path): [number, number][][] {
  const rings: [number, number][][] = [];
  for (const { command, args } of path.commands) {
    if (command === 'moveTo') rings.push([]);
    if (command === 'closePath') continue;
    const ring = rings.at(-1)!;
    const from = ring.at(-1) ?? [args[0]!, args[1]!];
    const handles = [
      from,
      ...args.flatMap((_, i) => (i % 2 === 0 ? [[args[i]!, args[i + 1]!] as const] : [])),
    ];
    const chords = handles.length > 2 ? 12 : 1;
    for (let k = 1; k <= chords; k++) ring.push(onCurve(handles, k / chords));
  }
  return rings;
}

/** De Casteljau: a Bezier curve of any degree. */
function onCurve(
  handles: readonly (readonly [number, number] | readonly number[])[],
  t: number,
): [number, number] {
  if (handles.length === 1) return [handles[0]![0]!, handles[0]![1]!];
  const next = handles.slice(1).map((b, i) => [0, 1].map((k) => handles[i]![k]! * (1 - t) + b[k]! * t));
  return onCurve(next, t);
}

export function ringArea(ring: readonly (readonly [number, number])[]): number {
  return ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!;
    return sum + (x * v - u * y) / 2;
  }, 0);
}

const least = (v: readonly number[]): number => v.reduce((a, b) => Math.min(a, b));
const most = (v: readonly number[]): number => v.reduce((a, b) => Math.max(a, b));
