import type { Drawing, GapRun } from '../proof/index.js';
import { boxOfDrawings, drawnPath, type ToPicture } from './drawn-edges.js';
import { bareLength, decimal, escapeText, lengthText, type Units } from './format.js';

const WIDTH = 1000;
const RIM = 60;
const LINE = 30;

/** Gaps of one colour: from the tightest to the widest, paler and thinner, so that they differ in black and white too. */
interface Band {
  readonly under: number;
  readonly ink: string;
  readonly wide: number;
  readonly dash: string;
}

export interface Gaps {
  readonly least: number;
  readonly most: number;
  readonly asked: number | null;
  readonly runs: readonly GapRun[];
  readonly overlaps: readonly { readonly at: readonly [number, number]; readonly gap: number }[];
}

const STYLE: readonly Omit<Band, 'under'>[] = [
  { ink: '#b3261e', wide: 9, dash: '' },
  { ink: '#c2620c', wide: 6, dash: '' },
  { ink: '#1b7a43', wide: 3.5, dash: '' },
  { ink: '#1d5fa8', wide: 3.5, dash: '9 4' },
  { ink: '#6a3fa0', wide: 3.5, dash: '2 4' },
];

/** An overlap of less than this, mm, is rounding; and gaps within it of each other are even. */
const EVEN = 0.0005;

/** Gaps that differ by no more than this, mm, are one gap: what the proof allows an even one to stray. */
const ONE_GAP = 0.002;

/** The bands: overlap, then four between the least and the most gap, about the asked one where there is one. */
function bandsOf({ least, most, asked }: Gaps): Band[] {
  if (asked === null && most - least <= ONE_GAP)
    return STYLE.map((s, k) => ({ ...s, under: k < 2 ? -EVEN / 2 : Infinity }));
  const low = Math.max(0, least);
  const middle = asked ?? (low + most) / 2;
  const spread = Math.max(most - middle, middle - low, EVEN);
  const limits = [
    -EVEN / 2,
    middle - spread / 2 - 1e-9,
    middle + spread / 2,
    middle + spread + 1e-9,
    Infinity,
  ];
  if (asked === null)
    limits.splice(
      1,
      4,
      low + (most - low) / 4,
      low + (most - low) / 2,
      low + (3 * (most - low)) / 4,
      Infinity,
    );
  return STYLE.map((s, k) => ({ ...s, under: limits[k]! }));
}

/** A pocket with its plug in it, the plug's boundary coloured by the gap there; what each colour stands for below. SVG. */
export function gapPicture(
  pocket: Drawing,
  plug: Drawing,
  gaps: Gaps,
  { units, font }: { readonly units: Units; readonly font: string },
): string {
  const [x0, y0, x1, y1] = boxOfDrawings([pocket, plug]);
  const scale = Math.min((WIDTH - 2 * RIM) / (x1 - x0 || 1), (2 * WIDTH - 2 * RIM) / (y1 - y0 || 1));
  const high = (y1 - y0) * scale + 2 * RIM;
  const left = (WIDTH - (x1 - x0) * scale) / 2;
  const to: ToPicture = ([x, y]) => [left + (x - x0) * scale, high - RIM - (y - y0) * scale];
  const n = (v: number): string => decimal(v, 2);
  const words = `font-family="${escapeText(font)}"`;
  const bands = bandsOf(gaps);
  const of = (gap: number): number => bands.findIndex((b) => gap < b.under);
  const paths = bands.map(() => [] as string[]);
  let last = -1;
  let end = '';
  for (const run of gaps.runs) {
    const k = of(run.gap);
    const [a, m, b] = [run.from, run.middle, run.to].map((p) => to(p).map(n).join(' ')) as [
      string,
      string,
      string,
    ];
    // Dashes run on where a piece follows the one before it.
    paths[k]!.push(`${k === last && a === end ? '' : `M ${a} `}L ${m} L ${b}`);
    [last, end] = [k, b];
  }
  const used = bands.map((b, k) => ({ ...b, k })).filter(({ k }) => paths[k]!.length > 0);
  const text = (x: number, y: number, t: string): string =>
    `<text x="${n(x)}" y="${n(y)}" font-size="18" ${words} fill="#000">${escapeText(t)}</text>`;
  const legend = used.flatMap(({ ink, wide, dash, k }, row) => {
    const y = high + LINE * (row + 1.4);
    const own = gaps.runs.filter((r) => of(r.gap) === k).map((r) => r.gap);
    const low = own.reduce((a, b) => Math.min(a, b));
    const top = own.reduce((a, b) => Math.max(a, b));
    const range = k === 0 ? `overlaps by up to ${lengthText(-low, units)}` : rangeText(low, top, units);
    return [stroke(`M ${RIM} ${n(y - 6)} h 90`, ink, wide, dash), text(RIM + 110, y, range)];
  });
  const all = high + LINE * (used.length + 1.6);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${n(all)}" viewBox="0 0 ${WIDTH} ${n(all)}">`,
    `<rect width="${WIDTH}" height="${n(all)}" fill="#fff"/>`,
    `<path d="${drawnPath(pocket, to, scale)}" fill="#f1ede4" fill-rule="evenodd" stroke="#777" stroke-width="1"/>`,
    `<path d="${drawnPath(plug, to, scale)}" fill="#d9d4ca" fill-rule="evenodd"/>`,
    // The tightest lie on top.
    ...[...used].reverse().map(({ ink, wide, dash, k }) => stroke(paths[k]!.join(' '), ink, wide, dash)),
    ...gaps.overlaps.map(({ at }, k) => {
      const [x, y] = to(at);
      return `<circle cx="${n(x)}" cy="${n(y)}" r="13" fill="#fff" stroke="#b3261e" stroke-width="2.5"/><text x="${n(x)}" y="${n(y + 6)}" font-size="16" text-anchor="middle" font-weight="bold" ${words} fill="#000">${k + 1}</text>`;
    }),
    text(
      RIM,
      high + LINE * 0.4,
      `Gap between pocket and plug: ${bareLength(gaps.least, units)} to ${lengthText(gaps.most, units)}${gaps.asked === null ? '' : `, ${lengthText(gaps.asked, units)} asked`}`,
    ),
    ...legend,
    '</svg>',
    '',
  ].join('\n');
}

function rangeText(low: number, top: number, units: Units): string {
  const [a, b] = [bareLength(low, units), bareLength(top, units)];
  return a === b ? `gap ${a} ${units}` : `gap ${a} to ${b} ${units}`;
}

function stroke(d: string, ink: string, wide: number, dash: string): string {
  const dashes = dash === '' ? '' : ` stroke-dasharray="${dash}"`;
  return `<path d="${d}" fill="none" stroke="${ink}" stroke-width="${wide}" stroke-linejoin="round"${dashes}/>`;
}
