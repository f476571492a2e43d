import { leanSum } from '../inspect/sums/lean.js';
import { GIVES, movementSum } from '../inspect/sums/movement.js';
import type { Recipe } from '../recipe/recipe.js';
import { contrast, dustStains, WEAK_UNDER } from '../shop/contrast.js';
import { clearanceLimits } from '../shop/limits.js';
import type { OwnWoods } from '../shop/own.js';
import { movementOf } from '../shop/shrinkage.js';
import { decimal, escapeText, lengthText } from './format.js';
import type { Job } from './job.js';
import { ofInlay } from './of-inlay.js';
import { glueRow, pressingRow, pressRow, wallRow } from './sheet-fit-press.js';
import { type FitRow, UNKNOWN } from './sheet-fit-row.js';

/**
 * What the fit comes to, every figure with its formula and source; with several plug woods what is the same for all is
 * said once. HTML text.
 */
export function fitBlock(job: Job): string {
  const each = job.inlays.map((_, k) => rows(ofInlay(job, k)));
  const [first] = each;
  if (!first || each.length === 1) return table(first ?? []);
  const said = each.map((own) => new Set(own.map((r) => JSON.stringify(r))));
  const common = (r: FitRow): boolean => said.every((s) => s.has(JSON.stringify(r)));
  const own = job.inlays.map(
    ({ wood }, k) => `<h3>${k + 1}. ${escapeText(wood)}</h3>\n${table(each[k]!.filter((r) => !common(r)))}`,
  );
  return [table(first.filter(common)), ...own].join('\n');
}

function rows(job: Job): FitRow[] {
  const { recipe } = job;
  return [
    limitsRow(recipe),
    movementRow(job),
    leanRow(recipe),
    glueRow(job),
    pressRow(job),
    wallRow(job),
    pressingRow,
    looksRow(recipe),
  ];
}

function table(all: readonly FitRow[]): string {
  const row = ({ name, says, how }: FitRow): string =>
    `<tr><th>${escapeText(name)}</th><td>${says.map((s) => escapeText(s)).join(' ')}<br><small>${escapeText(how)}</small></td></tr>`;
  return `<table class="fit">${all.map(row).join('\n')}</table>`;
}

function limitsRow({ fit, machine, units }: Recipe): FitRow {
  const { least, greatest, kind } = clearanceLimits(fit.clearance, machine.accuracy);
  const text = (mm: number): string => lengthText(Math.abs(mm), units);
  const low = least < -1e-9 ? `greatest interference ${text(least)}` : `least clearance ${text(least)}`;
  const high =
    greatest < -1e-9 ? `least interference ${text(greatest)}` : `greatest clearance ${text(greatest)}`;
  return {
    name: 'Limits',
    says: [`Per side ${low}, ${high}: a ${kind}.`],
    how: `Estimate: ${text(fit.clearance)} less and plus 2 × the machine's accuracy of ${text(machine.accuracy)}, both walls off at once, which is rare. Words of ISO 286-1 (from memory). A measured accuracy makes it better than a guess.`,
  };
}

function movementRow({ recipe, pair }: Job): FitRow {
  const { fit, moisture, units, woods } = recipe;
  const name = 'Seasons';
  const sum = movementSum(recipe, pair);
  const from =
    moisture.field === moisture.plug
      ? `glued at ${moisture.field} %`
      : `field glued at ${moisture.field} %, plug at ${moisture.plug} %`;
  const range = `${from}, later ${moisture.driest} to ${moisture.dampest} % moisture`;
  const how = `Estimate: free and unglued, flat-sawn, the part it moves most, its middle staying put. Change of size = size × C × change of moisture (Wood Handbook eq. 13-2, transcribed); C across the grain: ${coefficient(woods.plug, woods.own)}; ${coefficient(woods.field, woods.own)}; along it 0.1 % over 30 % of moisture (FPL report 1093).`;
  if (sum === 'unknown wood') return { name, says: [`Movement: ${UNKNOWN} (${range}).`], how };
  if (sum === 'moisture out of range')
    return { name, says: [`Movement: unknown (${range}): the figures hold for 6 to 14 %.`], how };
  const text = (mm: number): string => lengthText(mm, units);
  const most = Math.max(sum.closes, sum.opens);
  const against =
    most <= fit.clearance
      ? `less than the clearance of ${text(fit.clearance)}.`
      : sum.tooTight || sum.tooWide
        ? `more than the clearance of ${text(fit.clearance)} and than the wood gives: see the findings.`
        : `more than the clearance of ${text(fit.clearance)}; glued wood takes up about ${decimal(GIVES * 100, 1)} % of the part's size besides (from memory).`;
  return {
    name,
    says: [
      `The gap closes by up to ${text(sum.closes)} per side (at ${sum.closesAt} %) and opens by up to ${text(sum.opens)} (at ${sum.opensAt} %): ${against}`,
      `(${range}.)`,
    ],
    how,
  };
}

function coefficient(wood: string, own?: OwnWoods): string {
  const figure = movementOf(wood, own)?.change.tangential;
  return figure
    ? `${wood} ${decimal(figure.value, 5)} (${figure.source}, ${figure.status})`
    : `${wood} ${UNKNOWN}`;
}

function leanRow(recipe: Recipe): FitRow {
  const { cutter, fit, units } = recipe;
  const lean = leanSum(recipe);
  const text = (mm: number): string =>
    mm < 0 ? `an overlap of ${lengthText(-mm, units)}` : lengthText(mm, units);
  const way =
    lean.leans === 'wedge'
      ? 'The plug goes in as it was cut: its thick foot meets the narrow floor, so the leans wedge and can split the field.'
      : 'The plug goes in turned over: its thick end comes to the mouth, its slim end to the narrow floor, so the leans nest.';
  return {
    name: 'Lean of the walls',
    says: [
      `A slim cutter bends: the pocket narrows towards its floor by ${text(lean.pocket.lean)} a wall, the plug thickens towards the foot of its cut by ${text(lean.plug.lean)}. ${way}`,
      `Of the clearance of ${text(fit.clearance)} there is left ${text(lean.mouth)} at the mouth, ${text(lean.foot)} at the foot.`,
      'Gauge the coupon at mouth and foot of both parts.',
    ],
    how: `Estimate: cantilever, d = F L³ / (3 E I), I = π D⁴ / 64 at 0.8 of the diameter (Kops and Vo, CIRP Annals 39(1), 1990, abstract); carbide, E = 580 GPa (low authority); L = the flute, ${lengthText(cutter.flute, units)}; side force F = ${decimal(lean.force, 1)} N (${decimal(lean.force / 4.4482216152605, 1)} lbf) in one finishing pass: an assumption, no source (machine.sideForce). A second pass takes some of it off.`,
  };
}

function looksRow({ woods }: Recipe): FitRow {
  const tones = contrast(woods.plug, woods.field, woods.own);
  const pairs = [
    [woods.plug, woods.field],
    [woods.field, woods.plug],
  ] as const;
  const dust = pairs
    .filter(([from, onto]) => dustStains(from, onto, woods.own))
    .map(([from, onto]) => `Dust of ${from} dirties ${onto}: blow it off before you sand, or scrape.`);
  const word = (weak: boolean): string => (weak ? ' (weak)' : '');
  return {
    name: 'Contrast',
    says: [
      tones
        ? `Lightness differs by ${decimal(tones.fresh, 0)}${word(tones.weakFresh)} new and ${decimal(tones.aged, 0)}${word(tones.weakAged)} aged, L* of 100.`
        : `Contrast: ${UNKNOWN}.`,
      ...dust,
    ],
    how: `Estimate: CIE L* of finished faces, from memory; boards differ by 8 either way, under ${WEAK_UNDER} is weak (our own choice).${dust.length > 0 ? ' Dust: common practice, no source.' : ''}`,
  };
}
