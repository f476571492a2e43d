import { plugHeight, type Recipe, standsProud } from '../recipe/recipe.js';
import { decimal, lengthText } from './format.js';
import { arrow, type Chain, chains, hatches, note, path, words } from './sheet-section-parts.js';

/** Drawing units of the figure: 1 is 1 mm of paper. Heights are to one scale; widths, the gap and the eased foot not. */
const WIDTH = 184;
/** Beside it for what the outermost words take in a wide font. */
const RIM = 4;
/** Room for field and plug one above the other, and the most that 1 mm is drawn as. */
const TALL = 43;
const MOST_SCALE = 2.6;
/** Between the plug and the pocket it goes into. */
const LIFT = 9;
/** Gap per side and bevel of the foot as drawn. */
const GAP = 1.1;
const BEVEL = 1.3;
/** Half widths of plug and carrier. */
const HALF = 8;
const BACK = 12;

interface Heights {
  readonly field: number;
  readonly depth: number;
  readonly under: number;
  /** Of the plug's cut walls, and what is behind them on a carrier. */
  readonly plug: number;
  readonly carrier: number;
  readonly glueGap: number;
  /** Plug above the face, without the carrier; negative where it stays below. */
  readonly above: number;
}

/**
 * The joint cut across, three times on black and white paper: the plug as it is cut, with the cutter beside it; as it
 * goes in, turned over where it is; and in place, with every height. SVG text.
 */
export function sectionFigure(recipe: Recipe): string {
  const { depth, fit, stock, units } = recipe;
  const plug = plugHeight(recipe);
  // An onion skin is gone by the time the plug goes in.
  const sanded = fit.proud - standsProud(recipe);
  const h: Heights = {
    field: stock.field,
    depth,
    under: Math.max(0, stock.field - depth),
    plug,
    carrier: fit.plug === 'carrier' ? Math.max(0, stock.plug - plug) : 0,
    glueGap: fit.glueGap,
    above: plug + fit.glueGap - depth,
  };
  const scale = Math.min(MOST_SCALE, TALL / (h.field + h.plug + h.carrier));
  const top = 8;
  const face = top + (h.plug + h.carrier) * scale + LIFT;
  const under = face + h.field * scale;
  const len = (mm: number): string => lengthText(mm, units);
  const high = under + 6;
  return [
    `<svg class="section" viewBox="${-RIM} 0 ${WIDTH + 2 * RIM} ${decimal(high, 2)}" style="width:${WIDTH + 2 * RIM}mm" role="img" aria-label="Section through pocket and plug">`,
    hatches(),
    ...asCut(recipe, h, scale, under, len),
    ...goingIn(recipe, h, scale, face, len),
    ...inPlace(recipe, { ...h, plug: plug - sanded, above: h.above - sanded }, scale, face, len),
    '</svg>',
  ].join('\n');
}

type Len = (mm: number) => string;

/** The plug as it lies on the machine, top up; the cutter stands at the foot of its wall. */
function asCut({ cutter, fit }: Recipe, h: Heights, scale: number, under: number, len: Len): string[] {
  const x = 31;
  const low = under - h.carrier * scale;
  const high = low - h.plug * scale;
  // A plug that goes in turned over has its foot on top while it is cut.
  const foot = fit.face === 'down' ? 'top' : 'none';
  const out = [words(x + 4, 4, '1  Plug as it is cut', 'title')];
  if (h.carrier > 0)
    out.push(path(`M${x - BACK} ${n(low)}h${2 * BACK}V${n(under)}h${-2 * BACK}Z`, 'carrier'));
  else
    out.push(path(`M${x - BACK} ${n(under)}h${2 * BACK + 8}`, 'thin'), note(x, under + 3.2, 'spoil board'));
  out.push(plugBlock(x, high, low, foot), topMark(x, high, low, false));
  const edge = x + HALF + 0.5;
  const wide = Math.min(7, Math.max(2.6, cutter.diameter * scale));
  const flute = low - cutter.flute * scale;
  // A long flute runs out of the figure: it is broken off, and the figure says how long it is.
  const shown = Math.max(flute, 9);
  const shank = Math.max(6.5, shown - 5);
  out.push(path(`M${edge} ${n(shown)}V${n(low)}h${n(wide)}V${n(shown)}Z`, 'cutter'));
  for (let y = low - 1; y > shown + wide * 0.6; y -= 3)
    out.push(path(`M${edge} ${n(y)}l${n(wide)} ${n(-wide * 0.6)}`, 'thin'));
  out.push(path(`M${edge} ${n(shown)}V${n(shank)}M${n(edge + wide)} ${n(shown)}V${n(shank)}`, 'thin'));
  const left: Chain = {
    x: x - BACK - 2,
    from: x - HALF,
    side: -1,
    spans: [
      { y0: high, y1: low, name: 'plug height', value: len(h.plug) },
      ...(h.carrier > 0 ? [{ y0: low, y1: under, name: 'carrier', value: len(h.carrier) }] : []),
    ],
  };
  const right: Chain = {
    x: edge + wide + 2.5,
    from: edge + wide,
    side: 1,
    spans: [
      { y0: shown, y1: low, name: 'flute', value: len(cutter.flute), open: flute < shown, label: shown + 2 },
    ],
  };
  out.push(...chains([left, right]));
  return out;
}

/** Over its pocket, on the way in. */
function goingIn({ fit }: Recipe, h: Heights, scale: number, face: number, len: Len): string[] {
  const x = 92;
  const low = face - LIFT;
  const high = low - h.plug * scale;
  const down = fit.face === 'down';
  const out = [words(x, 4, down ? '2  Turned over, going in' : '2  Going in as it was cut', 'title')];
  out.push(fieldBlock(x, 13, h, scale, face));
  if (h.carrier > 0)
    out.push(
      path(`M${x - BACK} ${n(high - h.carrier * scale)}h${2 * BACK}V${n(high)}h${-2 * BACK}Z`, 'carrier'),
    );
  out.push(plugBlock(x, high, low, fit.foot > 0 ? 'bottom' : 'none'), topMark(x, high, low, down));
  out.push(arrow(x, low + 1.5, low + LIFT - 1.5));
  if (down) {
    // Half a turn about the plug's own middle, drawn beside it.
    const y = (high + low) / 2;
    const r = Math.min(4, Math.max(2, (low - high) / 2 - 0.5));
    out.push(
      path(`M${x + BACK + 2.5} ${n(y - r)}a${n(r)} ${n(r)} 0 0 1 0 ${n(2 * r)}`, 'line'),
      path(`M${x + BACK + 4.3} ${n(y + r - 1.3)}l-1.8 1.3l1.9 1.1`, 'line'),
    );
  }
  if (fit.foot > 0) {
    out.push(
      path(`M${x - HALF + 0.4} ${n(low - BEVEL / 2 + 0.2)}l-3.2 2.4h-2`, 'thin'),
      words(x - HALF - 5.6, low + 1.2, `foot eased`, 'right'),
      words(x - HALF - 5.6, low + 4.3, len(fit.foot), 'right'),
    );
  }
  const field: Chain = {
    x: x - 15.5,
    from: x - 13,
    side: -1,
    spans: [{ y0: face, y1: face + h.field * scale, name: 'field', value: len(h.field) }],
  };
  out.push(...chains([field]));
  return out;
}

/** Down in its pocket, with what is left above, below and beside it. */
function inPlace({ fit }: Recipe, h: Heights, scale: number, face: number, len: Len): string[] {
  const x = 146.5;
  const floor = face + h.depth * scale;
  const under = face + h.field * scale;
  const low = floor - h.glueGap * scale;
  const high = low - h.plug * scale;
  const back = high - h.carrier * scale;
  const out = [words(x, 4, '3  In place', 'title'), fieldBlock(x, 14, h, scale, face)];
  if (h.carrier > 0)
    out.push(path(`M${x - BACK} ${n(back)}h${2 * BACK}V${n(high)}h${-2 * BACK}Z`, 'carrier'));
  out.push(
    path(`M${x - HALF - GAP} ${n(face)}V${n(floor)}h${2 * (HALF + GAP)}V${n(face)}Z`, 'glue'),
    plugBlock(x, high, low, fit.foot > 0 ? 'bottom' : 'none'),
    topMark(x, high, low, fit.face === 'down'),
  );
  const right: Chain = {
    x: x + 16.5,
    from: x + 14,
    side: 1,
    spans: [
      ...(h.carrier > 0
        ? [
            { y0: back, y1: high, name: 'carrier', value: len(h.carrier) },
            { y0: high, y1: face, name: 'saw room', value: len(h.above) },
          ]
        : h.above > 1e-6
          ? [{ y0: high, y1: face, name: 'stands proud', value: len(h.above) }]
          : h.above < -1e-6
            ? [{ y0: face, y1: high, name: 'below the face', value: len(-h.above), aside: true }]
            : []),
      { y0: face, y1: floor, name: 'pocket depth', value: len(h.depth) },
      ...(h.under > 0 ? [{ y0: floor, y1: under, name: 'under floor', value: len(h.under) }] : []),
    ],
  };
  const left: Chain = {
    x: x - 16.5,
    from: x - HALF,
    side: -1,
    spans: [
      { y0: high, y1: low, name: 'plug height', value: len(h.plug) },
      ...(h.glueGap > 0 ? [{ y0: low, y1: floor, name: 'glue gap', value: len(h.glueGap) }] : []),
    ],
    extra: { y: face, toX: x - HALF - GAP / 2, name: 'clearance', value: `${len(fit.clearance)}/side` },
  };
  out.push(...chains([right, left]));
  return out;
}

/** The field with its pocket cut in; in two where the pocket goes right through. */
function fieldBlock(x: number, half: number, h: Heights, scale: number, face: number): string {
  const floor = face + Math.min(h.depth, h.field) * scale;
  const under = face + h.field * scale;
  const inner = HALF + GAP;
  if (h.under > 0)
    return path(
      `M${x - half} ${n(face)}H${n(x - inner)}V${n(floor)}H${n(x + inner)}V${n(face)}H${x + half}V${n(under)}H${x - half}Z`,
      'field',
    );
  return path(
    `M${x - half} ${n(face)}H${n(x - inner)}V${n(under)}H${x - half}ZM${n(x + inner)} ${n(face)}H${x + half}V${n(under)}H${n(x + inner)}Z`,
    'field',
  );
}

/** The plug's own wood; its foot bevelled at the end that goes in. */
function plugBlock(x: number, high: number, low: number, foot: 'top' | 'bottom' | 'none'): string {
  const [l, r] = [x - HALF, x + HALF];
  const b = Math.min(BEVEL, (low - high) / 3);
  if (foot === 'bottom')
    return path(
      `M${l} ${n(high)}H${r}V${n(low - b)}L${n(r - b * 0.6)} ${n(low)}H${n(l + b * 0.6)}L${l} ${n(low - b)}Z`,
      'plug',
    );
  return path(`M${l} ${n(high)}H${r}V${n(low)}H${l}Z`, 'plug');
}

/** The word that says which side was up on the machine, upside down where the plug is. */
function topMark(x: number, high: number, low: number, over: boolean): string {
  const tall = low - high;
  if (tall < 5.5) return '';
  const y = over ? low - 3.6 : high + 3.6;
  const turned = over ? ` transform="rotate(180 ${x} ${n(y - 1)})"` : '';
  return (
    `<g${turned}><rect x="${x - 4.4}" y="${n(y - 2.7)}" width="8.8" height="3.4" fill="#fff"/>` +
    `<text x="${x}" y="${n(y)}" font-size="2.9" text-anchor="middle">top ↑</text></g>`
  );
}

function n(v: number): string {
  return decimal(v, 2);
}
