import type { Recipe } from '../recipe/recipe.js';
import { decimal, escapeText, lengthText } from './format.js';

/** Drawing units of the figure: 1 is about 1 mm of paper. Heights are to one scale; widths and the gap are not. */
const WIDTH = 184;
const TALL = 33;

/**
 * The joint cut across: field with its pocket and floor, the plug over it as it goes in, with every depth that must
 * be set on the machine. SVG text for black and white paper; the plug's wood is hatched the other way.
 */
export function sectionFigure(recipe: Recipe): string {
  const { field: fieldThick, plug: plugThick } = recipe.stock;
  const { depth, units } = recipe;
  const carrier = recipe.fit.plug === 'carrier';
  // On a carrier only the plug's own height is cut; a loose plug is cut right through its wood.
  const tall = carrier ? Math.min(depth, plugThick) : plugThick;
  const backing = carrier ? plugThick - tall : 0;
  const scale = TALL / (fieldThick + plugThick);
  const lift = 8;
  const top = 6;
  const plugLow = top + plugThick * scale;
  const backLow = top + backing * scale;
  const face = plugLow + lift;
  const floor = face + Math.min(depth, fieldThick) * scale;
  const under = face + fieldThick * scale;
  const [left, right, pocketL, pocketR] = [38, 126, 62, 102];
  const plugL = pocketL + 1.4;
  const plugR = pocketR - 1.4;
  const n = (v: number): string => decimal(v, 2);
  const label = (mm: number): string => escapeText(lengthText(mm, units));
  const fieldPath = `M${left} ${n(face)}H${pocketL}V${n(floor)}H${pocketR}V${n(face)}H${right}V${n(under)}H${left}Z`;
  const plugPath = `M${plugL} ${n(backLow)}H${plugR}V${n(plugLow)}H${plugL}Z`;
  const parts = [
    `<path d="${fieldPath}" fill="url(#field)" stroke="#000" stroke-width=".35"/>`,
    `<path d="${plugPath}" fill="url(#plug)" stroke="#000" stroke-width=".35"/>`,
  ];
  if (backing > 0)
    parts.push(
      `<path d="M${left + 8} ${top}H${right - 8}V${n(backLow)}H${left + 8}Z" fill="#fff" stroke="#000" stroke-width=".35" stroke-dasharray="2 1"/>`,
    );
  parts.push(
    `<path d="M${(pocketL + pocketR) / 2} ${n(plugLow + 1.5)}v${lift - 3}m-1.2 -1.6l1.2 1.6l1.2 -1.6" fill="none" stroke="#000" stroke-width=".5"/>`,
    measure(28, face, under, `field ${label(fieldThick)}`, 'end'),
    measure(132, face, floor, `pocket depth ${label(depth)}`, 'start'),
    measure(132, floor, under, `left under the floor ${label(Math.max(0, fieldThick - depth))}`, 'start', 3),
    measure(28, backLow, plugLow, `plug ${label(tall)}`, 'end'),
  );
  if (backing > 0) parts.push(measure(132, top, backLow, `carrier ${label(backing)}, sawn off`, 'start'));
  const high = n(under + 4);
  return [
    `<svg class="section" viewBox="0 0 ${WIDTH} ${high}" style="width:${WIDTH}mm" role="img" aria-label="Section through pocket and plug">`,
    '<defs>',
    hatch('field', 45),
    hatch('plug', -45),
    '</defs>',
    ...parts,
    '</svg>',
  ].join('\n');
}

function hatch(id: string, turn: number): string {
  return (
    `<pattern id="${id}" width="2.4" height="2.4" patternUnits="userSpaceOnUse" patternTransform="rotate(${turn})">` +
    `<rect width="2.4" height="2.4" fill="#fff"/><path d="M0 0V2.4" stroke="#000" stroke-width="${id === 'field' ? '.3' : '.7'}"/></pattern>`
  );
}

function text(x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end'): string {
  return `<text x="${decimal(x, 2)}" y="${decimal(y + 1.1, 2)}" font-size="3.1" text-anchor="${anchor}">${words}</text>`;
}

/** A dimension line from one height to another with its words beside it; `shift` moves the words down. */
function measure(
  x: number,
  y0: number,
  y1: number,
  words: string,
  anchor: 'start' | 'end',
  shift = 0,
): string {
  const toward = anchor === 'start' ? 1 : -1;
  const [a, b] = [decimal(y0, 2), decimal(y1, 2)];
  return (
    `<path d="M${x - 4 * toward} ${a}H${x + 1.5 * toward}M${x - 4 * toward} ${b}H${x + 1.5 * toward}M${x} ${a}V${b}" stroke="#000" stroke-width=".2" fill="none"/>` +
    text(x + 3 * toward, (y0 + y1) / 2 + (y1 - y0 < 6 ? shift : 0), words, anchor)
  );
}
