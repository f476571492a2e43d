import { SPOT_WORDS, shortened } from '../inspect/coupon-findings.js';
import { NEWTONS_PER_POUND } from '../shop/conversions.js';
import { strengthOf } from '../shop/strength.js';
import type { Coupon } from './coupon.js';
import { stepSums, wholeSums } from './coupon-sums.js';
import { areaOf } from './coupon-text.js';
import { areaText, bareLength, decimal, escapeText, lengthText } from './format.js';

/** How much wood it takes, and how much the piece. */
export function woodText({ board, whole, job }: Coupon): string {
  const { units } = job.recipe;
  const all = board.width * board.height;
  return `It takes ${areaText(all, units)} of field and as much of the plug's wood; the box round the piece has ${areaText(areaOf(whole.box), units)}.`;
}

/** A row a step: its dots, its clearance, the widths to gauge as drawn, and room to write. HTML. */
export function stepTable(coupon: Coupon): string {
  const { steps, spots, job } = coupon;
  const { fit, units } = job.recipe;
  const limb = spots.find((s) => s.spot.kind === 'limb')?.spot.size ?? null;
  const share = fit.from === 'plug' ? 1 : fit.from === 'both' ? 0.5 : 0;
  const width = (c: number, part: 'pocket' | 'plug'): string =>
    limb === null ? '' : bareLength(limb + 2 * c * (part === 'pocket' ? 1 - share : -share), units);
  const head = [
    'Step, dots',
    `Gap per side, ${units}`,
    ...(limb === null ? [] : [`Pocket drawn, ${units}`, `Plug drawn, ${units}`]),
  ];
  const fill = ['Pocket mouth', 'Pocket floor', 'Plug head', 'Plug foot', 'Dry', 'Glued'];
  const rows = steps.map(({ number, clearance }) => {
    const cells = [
      `${number} <span aria-hidden="true">${'&#9679;'.repeat(number)}</span>`,
      bareLength(clearance, units),
      ...(limb === null ? [] : [width(clearance, 'pocket'), width(clearance, 'plug')]),
    ];
    return `<tr>${cells.map((c) => `<td>${c}</td>`).join('')}${'<td class="fill"></td>'.repeat(fill.length)}</tr>`;
  });
  const where =
    limb === null
      ? 'Gauge the same limb in every step.'
      : `Widths are those of the thinnest limb, ${lengthText(limb, units)} in the drawing before the clearance is taken.`;
  return [
    `<table class="steps"><tr>${head.map((h) => `<th>${h}</th>`).join('')}${fill.map((f) => `<th class="fill">${f}</th>`).join('')}</tr>`,
    ...rows,
    '</table>',
    `<p><small>${where} Head is the plug's face, foot the end that stands on the floor. Results: cracked, tight, good, loose or gappy.</small></p>`,
  ].join('\n');
}

/** What the windows were chosen for, and where on the piece it is. HTML. */
export function spotList({ spots, whole, job }: Coupon): string {
  const { units } = job.recipe;
  const items = spots.map((plan) => {
    const { spot, from } = plan;
    const size =
      spot.turn > 0
        ? `radius ${lengthText(spot.size, units)}, turning ${decimal((spot.turn / Math.PI) * 180, 0)}\u00b0`
        : lengthText(spot.size, units);
    const held = shortened(plan) ? `, ${lengthText(plan.held!, units)} of it here` : '';
    const like = spot.places.length > 1 ? ` (one of ${spot.places.length} as hard)` : '';
    const place = `${at(from[0] - whole.box.minX, units)}, ${at(from[1] - whole.box.minY, units)} ${units}`;
    return `<li>${capital(SPOT_WORDS[spot.kind])}: ${size}${held}; from ${place} right and up from the piece's datum${like}.</li>`;
  });
  return `<ul>${items.join('\n')}</ul>`;
}

function at(mm: number, units: 'mm' | 'in'): string {
  return units === 'mm' ? decimal(mm, 1) : decimal(mm / 25.4, 3);
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Areas and loads of one step against the whole piece. HTML. */
export function pressBlock(coupon: Coupon): string {
  const { job } = coupon;
  const { units, woods, fit, depth } = job.recipe;
  // The tightest step has the largest plug; the steps differ by less than the estimate is worth.
  const step = stepSums(coupon, 0);
  const whole = wholeSums(coupon);
  const load = (n: number): string =>
    units === 'mm' ? `${decimal(n / 1000, 1)} kN` : `${decimal(n / NEWTONS_PER_POUND, 0)} lbf`;
  const least = Math.min(
    ...coupon.steps.map((_, k) => stepSums(coupon, k).limit ?? Number.POSITIVE_INFINITY),
  );
  const compression = strengthOf(woods.plug, woods.own)?.compression;
  const rows: [string, string][] = [
    ['Plug face of one step', areaText(step.plug, units)],
    [
      'Walls of one step',
      `${areaText(step.wall, units)} (length of the plug's edge \u00d7 ${lengthText(depth - fit.glueGap, units)} in the pocket)`,
    ],
    [
      'Press one step with at most',
      step.crush === null || least === Number.POSITIVE_INFINITY
        ? `not known: no strength is known for ${woods.plug}; press no harder than it takes`
        : `${load(least)}: half of the ${load(step.crush)} at which ${woods.plug} begins to crush. Estimate: compression perpendicular to the grain ${decimal(compression!.value, 0)} kPa (${compression!.source}) \u00d7 face, evenly pressed`,
    ],
    [
      'The whole piece',
      `has ${areaText(whole.wall, units)} of walls: what one step takes to go home, the piece takes about ${decimal(whole.wall / step.wall, 1)} times. Estimate: friction grows with the wall, for the same clearance${whole.limit === null ? '' : `. It bears at most ${load(whole.limit)}`}`,
    ],
  ];
  return `<table class="press">${rows.map(([k, v]) => `<tr><th>${escapeText(k)}</th><td>${escapeText(v)}</td></tr>`).join('\n')}</table>`;
}
