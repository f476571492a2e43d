import { area, parts } from '../geometry/region.js';
import { cornerRadius, cutterRadius, plugHeight, type Recipe, standsProud } from '../recipe/recipe.js';
import type { OwnWoods } from '../shop/own.js';
import { findWood } from '../shop/woods.js';
import { areaText, escapeText, lengthText } from './format.js';
import type { Job } from './job.js';
import { grainText } from './sheet-grain.js';

/** The figures of the job as rows of a table: what it is, how much. HTML text. */
export function numberTable(job: Job): string {
  const { recipe, pair } = job;
  const len = (mm: number): string => lengthText(mm, recipe.units);
  const { cutter, fit, woods } = recipe;
  const r = cornerRadius(cutter);
  const [ofPlug, ofPocket] = shares(fit.from, fit.clearance);
  const rows: [string, string][] = [
    ['Cutter', `${len(cutter.diameter)} round, straight; flutes ${len(cutter.flute)} long`],
    [
      'Cutter cuts',
      cutter.cuts === null ? 'not measured: nominal diameter used' : `${len(cutter.cuts)} wide, as measured`,
    ],
    ['Cutter radius + ease', `${len(cutterRadius(cutter))} + ${len(cutter.ease)}`],
    ['Corner radius r', len(r)],
    ['Tightest inside corner, pocket', len(r + ofPocket)],
    ['Tightest inside corner, plug', len(r + ofPlug)],
    ['Roughing cutter', recipe.roughing ? len(recipe.roughing.diameter) : 'none'],
    ['Clearance', `${len(fit.clearance)} per side, ${FROM[fit.from]}`],
    ['Pocket depth', len(recipe.depth)],
    [
      'Left under the floor',
      `${len(Math.max(0, recipe.stock.field - recipe.depth))} (skin ${len(recipe.skin)})`,
    ],
    [
      'Field',
      `${woodText(woods.field, woods.own)}, ${len(recipe.stock.field)} thick, grain ${grainText(job, 'field')}`,
    ],
    [
      'Plug',
      `${woodText(woods.plug, woods.own)}, ${len(recipe.stock.plug)} thick, grain ${grainText(job, 'plug')}`,
    ],
    [
      'Plug is',
      fit.plug === 'carrier'
        ? 'on a carrier: cut mirrored, pressed in face down'
        : pair.mirrored
          ? 'loose: cut mirrored, goes in turned over, face down'
          : 'loose, cut as it goes in',
    ],
    ...heights(recipe).map(([k, mm]): [string, string] => [k, len(mm)]),
    ['Parts', `${parts(pair.pocket).length} in the pocket, ${parts(pair.plug).length} in the plug`],
    [
      'Area',
      `pocket ${areaText(area(pair.pocket), recipe.units)}, plug ${areaText(area(pair.plug), recipe.units)}`,
    ],
    ['Drawing', `${len(job.sheet.width)} by ${len(job.sheet.height)}`],
  ];
  const cells = rows.map(([k, v]) => `<tr><th>${escapeText(k)}</th><td>${escapeText(v)}</td></tr>`);
  const half = Math.ceil(cells.length / 2);
  const table = (some: readonly string[]): string => `<table>${some.join('\n')}</table>`;
  return `<div class="numbers">${table(cells.slice(0, half))}\n${table(cells.slice(half))}</div>`;
}

/** What is cut and left above and below the plug, mm. */
function heights(recipe: Recipe): [string, number][] {
  const { fit, stock } = recipe;
  const height = plugHeight(recipe);
  const proud = standsProud(recipe);
  const above: [string, number][] =
    fit.plug === 'carrier'
      ? [
          ['Saw room', fit.sawRoom],
          ['Carrier', Math.max(0, stock.plug - height)],
        ]
      : [[proud < 0 ? 'Plug below the face' : 'Plug stands proud', Math.abs(proud)]];
  return [['Plug height, cut', height], ['Glue gap', fit.glueGap], ['Foot eased', fit.foot], ...above];
}

const FROM = {
  plug: 'all of it taken from the plug',
  pocket: 'all of it added to the pocket',
  both: 'half taken from the plug, half added to the pocket',
} as const;

/** Shares of the clearance taken from the plug and from the pocket, mm. */
function shares(from: keyof typeof FROM, clearance: number): [plug: number, pocket: number] {
  if (from === 'both') return [clearance / 2, clearance / 2];
  return from === 'plug' ? [clearance, 0] : [0, clearance];
}

function woodText(name: string, own?: OwnWoods): string {
  const wood = findWood(name, own);
  return wood?.specificGravity ? `${name} (specific gravity ${wood.specificGravity})` : name;
}
