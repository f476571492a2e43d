import type { Certificate, TightPlace } from '../proof/index.js';
import { lengthText, numberText, type Units } from '../schema/units.js';
import { cutterText, type StockCutter, stockCutters } from '../shop/cutters.js';
import { count } from './count.js';
import type { Assembly } from './prove-gap.js';
import { nameOf, PER, type ProveFile } from './prove-read.js';
import { wrapped } from './wrap.js';

/** A reach counts as enough for a cutter up to this much under its radius, mm: what a ball may press in. */
const PRESS = 0.0005;

/** So a radius of no more than this is none: a sharp corner, into which a ball presses. */
const SHARP = 2 * PRESS;

/** The largest stock cutter that gets everywhere, or null when none does. `reach`, mm. */
export function stockCutterFor(reach: number): StockCutter | null {
  return [...stockCutters].reverse().find((c) => c.diameter / 2 <= reach + PRESS) ?? null;
}

/** The certificate as lines of text. */
export function certificateText(read: ProveFile, c: Certificate, cutter: string, units: Units): string {
  const l = (mm: number): string => lengthText(mm, units);
  const as = c.side === 'inside' ? 'pocket' : 'plug';
  const [x0, y0, x1, y1] = c.box;
  const rows: [string, string][] = [
    ['size', `${l(x1 - x0)} wide, ${l(y1 - y0)} high`],
    ['holds', `${count(c.parts, 'part')}, ${count(c.holes, 'hole')}`],
    ['read', read.how],
    ['cut as', `${as}: the cutter runs ${c.side} its outlines`],
    ['needs', `${l(c.required)} (radius of a ${cutter} cutter)`],
    [
      'reach',
      `${reachText(c, units)}; measured again by distance field ${numberText(c.field / PER[units], 4)}`,
    ],
    ['joints', `edges meet at ${numberText(c.joints.worst, 2)} degrees at most${at(c, c.joints.at, units)}`],
  ];
  const lines = rows.map(([key, value]) => wrapped(value, 12).replace(/^ {12}/, `  ${key.padEnd(10)}`));
  return [
    `${nameOf(read)}: ${c.holds ? 'can be cut' : 'cannot be cut'} by a ${cutter} cutter as a ${as}`,
    ...lines,
    ...c.failures.map((f) => wrapped(f, 2)),
    ...placeLines(c, units),
    ...(c.holds ? [] : [wrapped(advice(c, units), 0)]),
  ].join('\n');
}

function reachText(c: Certificate, units: Units): string {
  if (c.reach <= SHARP) return `0 ${units}: it has a sharp inside corner`;
  return `${c.capped ? 'at least ' : ''}${numberText(c.reach / PER[units], 4)} ${units}`;
}

function at(c: Certificate, place: readonly [number, number] | null, units: Units): string {
  if (!place || c.joints.worst < 0.005) return '';
  return `, at ${[place[0] - c.box[0], place[1] - c.box[1]].map((v) => numberText(v / PER[units], 3)).join(', ')}`;
}

function placeLines(c: Certificate, units: Units): string[] {
  if (c.places.length === 0) return [`No place is tighter than ${lengthText(2 * c.required, units)}.`];
  const n = (mm: number): string => numberText(mm / PER[units], units === 'in' ? 4 : 3);
  const cells = c.places.map((p, k) => [
    String(k + 1),
    n(p.at[0] - c.box[0]),
    n(p.at[1] - c.box[1]),
    p.radius <= SHARP ? '0' : n(p.radius),
    kindText(p),
  ]);
  const head = ['', 'x', 'y', 'radius', 'what'];
  const widths = head.map((h, i) => Math.max(h.length, ...cells.map((r) => r[i]!.length)));
  const row = (r: readonly string[]): string =>
    `  ${r.map((t, i) => (i === 4 ? t : t.padStart(widths[i]!))).join('  ')}`;
  return [`Tightest places, ${units} from the drawing's lower left corner`, row(head), ...cells.map(row)];
}

/** What a place is; a corner without any radius is a sharp one. */
export function kindText(p: TightPlace): string {
  return p.kind === 'inside corner' && p.radius <= SHARP ? 'inside corner, sharp' : p.kind;
}

function advice(c: Certificate, units: Units): string {
  const stock = stockCutterFor(c.reach);
  if (stock) return `A ${cutterText(stock)} cutter would get everywhere.`;
  const sharp = c.places.some((p) => p.radius <= SHARP);
  return sharp
    ? 'No round cutter gets into a sharp inside corner: round the corners, or let inlaywright adopt do it.'
    : `No stock cutter is that small; widen what is tighter than ${lengthText(stockCutters[0]!.diameter / 2, units)}.`;
}

/** What is said of the two put together. */
export function assemblyText(a: Assembly, units: Units): string {
  const l = (mm: number): string => lengthText(mm, units);
  const p = ([x, y]: readonly [number, number]): string =>
    `${numberText((x - a.corner[0]) / PER[units], 3)}, ${numberText((y - a.corner[1]) / PER[units], 3)}`;
  return [
    `Put together: ${a.holds ? 'the plug goes in' : a.overlaps.length > 0 ? 'the plug does not go in' : 'the gap is not as asked'}`,
    `  least gap ${l(a.least)} at ${p(a.leastAt)}${a.least < 0 ? ': it overlaps' : ''}`,
    `  most gap  ${l(a.most)} at ${p(a.mostAt)}`,
    ...(a.asked === null ? [] : [`  asked     ${l(a.asked)}, to within ${l(a.tolerance)}`]),
    ...(a.aligned ? [wrapped(a.aligned, 2)] : []),
    ...a.failures.map((f) => wrapped(f, 2)),
    ...(a.overlaps.length === 0
      ? []
      : [
          `Overlaps, ${units} from the pocket's lower left corner`,
          ...a.overlaps.map((o, k) => `  ${String(k + 1).padStart(2)}  ${p(o.at)}  ${l(-o.gap)} deep`),
        ]),
  ].join('\n');
}
