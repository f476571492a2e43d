import { decimal, escapeText } from './format.js';

/** The pieces the section drawing is made of: hatched shapes, chains of dimensions, words. SVG text, unit mm of paper. */

const STYLE = {
  field: 'fill="url(#field)" stroke="#000" stroke-width=".3"',
  plug: 'fill="url(#plug)" stroke="#000" stroke-width=".3"',
  carrier: 'fill="#fff" stroke="#000" stroke-width=".3" stroke-dasharray="1.6 .8"',
  cutter: 'fill="#fff" stroke="#000" stroke-width=".25"',
  glue: 'fill="#fff" stroke="#000" stroke-width=".3"',
  line: 'fill="none" stroke="#000" stroke-width=".4"',
  thin: 'fill="none" stroke="#000" stroke-width=".18"',
} as const;

export function path(d: string, style: keyof typeof STYLE): string {
  return `<path d="${d}" ${STYLE[style]}/>`;
}

/** Field hatched thin one way, plug bold the other, so that they stay apart on any paper. */
export function hatches(): string {
  const hatch = (id: string, turn: number, width: string): string =>
    `<pattern id="${id}" width="2" height="2" patternUnits="userSpaceOnUse" patternTransform="rotate(${turn})">` +
    `<rect width="2" height="2" fill="#fff"/><path d="M0 0V2" stroke="#000" stroke-width="${width}"/></pattern>`;
  return `<defs>${hatch('field', 45, '.22')}${hatch('plug', -45, '.7')}</defs>`;
}

const PLACED = {
  title: 'font-size="3.2" font-weight="bold" text-anchor="middle"',
  left: 'font-size="2.8" text-anchor="start"',
  right: 'font-size="2.8" text-anchor="end"',
  middle: 'font-size="2.8" text-anchor="middle"',
} as const;

export function words(x: number, y: number, text: string, place: keyof typeof PLACED): string {
  return `<text x="${decimal(x, 2)}" y="${decimal(y, 2)}" ${PLACED[place]}>${escapeText(text)}</text>`;
}

export function note(x: number, y: number, text: string): string {
  return `<text x="${decimal(x, 2)}" y="${decimal(y, 2)}" font-size="2.4" fill="#333" text-anchor="middle">${escapeText(text)}</text>`;
}

/** An arrow straight down. */
export function arrow(x: number, y0: number, y1: number): string {
  const end = decimal(y1, 2);
  return path(
    `M${x} ${decimal(y0, 2)}V${end}M${decimal(x - 1.3, 2)} ${decimal(y1 - 1.7, 2)}L${x} ${end}l1.3 -1.7`,
    'line',
  );
}

export interface Span {
  readonly y0: number;
  readonly y1: number;
  readonly name: string;
  readonly value: string;
  /** Goes on above the figure: no tick at its top. */
  readonly open?: boolean;
  /** Lies within another span of the chain, so it is drawn further out. */
  readonly aside?: boolean;
  /** Height of its label where that is not its middle. */
  readonly label?: number;
}

/** Heights one above the other along one line, labelled on its outer side. */
export interface Chain {
  readonly x: number;
  /** Where the work ends: the thin lines to the chain start there. */
  readonly from: number;
  readonly side: 1 | -1;
  readonly spans: readonly Span[];
  /** A label with a pointer instead of a span. */
  readonly extra?: {
    readonly y: number;
    readonly toX: number;
    readonly name: string;
    readonly value: string;
  };
}

/** Height of a label of two lines with room round it. */
const LABEL = 7.2;

export function chains(all: readonly Chain[]): string[] {
  return all.flatMap(chain);
}

function chain({ x, from, side, spans, extra }: Chain): string[] {
  const n = (v: number): string => decimal(v, 2);
  const out: string[] = [];
  const labels: { y: number; to: string; name: string; value: string }[] = [];
  for (const s of spans) {
    const at = s.aside ? x - 1.6 * side : x;
    const start = from + 0.6 * side;
    const tick = (y: number): string => `M${n(start)} ${n(y)}H${n(x + 0.8 * side)}`;
    out.push(path(`${s.open ? '' : tick(s.y0)}${tick(s.y1)}M${n(at)} ${n(s.y0)}V${n(s.y1)}`, 'thin'));
    out.push(...ends(at, s));
    labels.push({ y: s.label ?? (s.y0 + s.y1) / 2, to: n(at), name: s.name, value: s.value });
  }
  if (extra) labels.push({ y: extra.y, to: n(extra.toX), name: extra.name, value: extra.value });
  const place = side > 0 ? 'left' : 'right';
  const edge = x + 3.4 * side;
  spread(labels.map((l) => l.y)).forEach((y, i) => {
    const l = labels[i]!;
    const to = l.y;
    const dot = extra && i === labels.length - 1 ? `<circle cx="${l.to}" cy="${n(to + 1)}" r=".45"/>` : '';
    const end = dot ? to + 1 : to;
    out.push(path(`M${l.to} ${n(end)}L${n(x + 1.6 * side)} ${n(y)}H${n(edge - 0.6 * side)}`, 'thin'), dot);
    out.push(words(edge, y - 0.4, l.name, place), words(edge, y + 2.7, l.value, place));
  });
  return out.filter((t) => t !== '');
}

/** Small slanting strokes where a span begins and ends. */
function ends(x: number, s: Span): string[] {
  const stroke = (y: number): string => `M${decimal(x - 0.6, 2)} ${decimal(y + 0.6, 2)}l1.2 -1.2`;
  return [path(`${s.open ? '' : stroke(s.y0)}${stroke(s.y1)}`, 'line')];
}

/** Heights of labels, each as near its own as leaves room for all; in the order given. */
function spread(wanted: readonly number[]): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  const at = [...wanted];
  // Neighbours that overlap move apart, half each, until none do.
  for (let round = 0; round < 60; round++) {
    let moved = false;
    for (let k = 1; k < order.length; k++) {
      const [a, b] = [order[k - 1]!, order[k]!];
      const short = LABEL - (at[b]! - at[a]!);
      if (short < 1e-3) continue;
      at[a] = at[a]! - short / 2;
      at[b] = at[b]! + short / 2;
      moved = true;
    }
    if (!moved) break;
  }
  return at;
}
