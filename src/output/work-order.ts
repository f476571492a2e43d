import { bounds } from '../geometry/region.js';
import { glueSum } from '../inspect/sums/glue.js';
import { cutsOf } from '../inspect/sums/machine/cuts.js';
import { planOf } from '../inspect/sums/plan/plan.js';
import type { Stage } from '../inspect/sums/plan/stage.js';
import { pressSum } from '../inspect/sums/press.js';
import { plugHeight, type Recipe, standsProud, type Tool } from '../recipe/recipe.js';
import { bareLength, decimal, lengthText } from './format.js';
import type { Job } from './job.js';
import { ofInlay } from './of-inlay.js';
import { grainText } from './sheet-grain.js';
import { loadText, volumeText } from './sheet-units.js';

/** One part of the order of work; items are plain text, to be ticked off. */
export interface WorkGroup {
  readonly title: string;
  readonly items: readonly string[];
}

/** How to make a piece, from the boards to the last coat, with the quantities of the job. */
export function workOrder(job: Job): WorkGroup[] {
  const several = job.inlays.length > 1;
  // Each wood is cut, glued in and planed before the next one's pocket is cut.
  const inlays = job.inlays.flatMap(({ wood }, k) => {
    const one = ofInlay(job, k);
    const group = (title: string, items: readonly string[]): WorkGroup => ({
      title: several ? `${k + 1}. ${wood}: ${title.toLowerCase()}` : title,
      items,
    });
    return [
      group('Pocket', pocket(one)),
      group('Plug', plug(one)),
      group('Dry fit', dryFit(one)),
      group('Glue and press', glue(one)),
      group('Flush', flush(one.recipe, k === job.inlays.length - 1)),
    ];
  });
  return [
    { title: 'Material', items: material(job) },
    { title: 'Cutters', items: cutters(job.recipe) },
    { title: 'Set-up', items: setUp(job) },
    ...inlays,
    { title: 'Sand and finish', items: finish(job.recipe) },
  ].filter(({ items }) => items.length > 0);
}

function material(job: Job): string[] {
  const { recipe, outline } = job;
  const { moisture, stock, units, woods } = recipe;
  const { minX, minY, maxX, maxY } = outline.box;
  const size = (w: number, h: number): string => `${lengthText(w, units)} by ${lengthText(h, units)}`;
  return [
    `Field: ${woods.field}, ${lengthText(stock.field, units)} thick, at least ${size(up(maxX - minX, units), up(maxY - minY, units))}; grain at ${grainText(job, 'field')}. Faces flat and parallel.`,
    ...job.inlays.map(({ wood, pair }) => {
      const b = bounds(pair.plug.contours);
      const room = 4 * Math.max(recipe.cutter.diameter, recipe.roughing?.diameter ?? 0);
      return `Plug: ${wood}, ${lengthText(stock.plug, units)} thick, at least ${size(up(b.maxX - b.minX + room, units), up(b.maxY - b.minY + room, units))} (two cutters’ width round it); grain at ${grainText({ ...job, pair }, 'plug')}.`;
    }),
    `Measure the moisture: ${decimal(moisture.field, 1)} % in the field and ${decimal(moisture.plug, 1)} % in the plug are reckoned with. Woods that lay in the shop together for a week or more are nearest to each other (common practice).`,
  ];
}

/** A size of wood, mm, to the next whole millimetre or eighth of an inch. */
function up(mm: number, units: Recipe['units']): number {
  const step = units === 'in' ? 25.4 / 8 : 1;
  return Math.ceil(mm / step - 1e-6) * step;
}

function cutters({ cutter, machine, roughing, units }: Recipe): string[] {
  const len = (mm: number): string => lengthText(mm, units);
  const one = (what: string, t: Tool): string =>
    `${what}: ${len(t.diameter)}, ${t.flutes} flute${t.flutes === 1 ? '' : 's'}, ${SPIRAL[t.spiral]}, ${t.material === 'carbide' ? 'carbide' : 'high-speed steel'}; ${len(t.flute)} of flute, ${len(t.stickout)} out of the collet. Sharp and clean.`;
  return [
    ...(roughing ? [one('Roughing', roughing)] : []),
    one(roughing ? 'Finishing' : 'The one cutter', cutter),
    `Cut a slot in scrap and measure it: ${
      cutter.cuts === null
        ? `the drawing reckons with the nominal ${len(cutter.diameter)}; give what you measure as cutter.cuts`
        : `the drawing reckons with ${len(cutter.cuts)}`
    }.`,
    `Collet nut of ${len(machine.collet)}: see that it clears clamps and wood beside the piece at full depth.`,
  ];
}

const SPIRAL = { up: 'up-cut', down: 'down-cut', compression: 'compression', straight: 'straight' } as const;

function setUp(job: Job): string[] {
  const { recipe } = job;
  const { fit, table, units } = recipe;
  const len = (mm: number): string => lengthText(mm, units);
  const through = job.inlays.some(({ pair }) => cutsOf(recipe, pair).some((c) => c.through));
  const border = bareLength(job.sheet.border, units);
  return [
    'Check the scale of each drawing with its reference square (below) before making a toolpath.',
    `Hold the wood with ${HOLD[table.hold]}${table.board > 0 ? ` on a sacrificial board of ${len(table.board)}` : ''}.${through ? ` Cuts that go through run ${len(table.over)} into the board.` : ''}`,
    `Datum: the lower left corner of the face’s box, ${border}, ${border} ${units} into the drawing; zero of height: the upper face of the wood.${job.pair.mirrored ? ' On the plug’s mirrored drawing the datum is at the lower right.' : ''} If a piece is turned over, find the datum again from the same two edges.`,
    ...(table.topTape ? ['Tape the upper face where the cutter runs, against chipping.'] : []),
    `Cut a test piece of both first: the clearance of ${len(fit.clearance)} per side holds only if the cutter cuts the width given here (inlaywright coupon).`,
    'Dust collection on, eyes and ears covered, hands and sleeves clear, the stop within reach.',
  ];
}

const HOLD = {
  tape: 'double-sided tape on clean, flat faces',
  clamps: 'clamps or screws clear of every path',
  vacuum: 'the vacuum table, its seal checked',
} as const;

function stages(job: Job, part: 'pocket' | 'plug'): string[] {
  return planOf(job.recipe, job.outline, job.pair)
    .stages.filter((s) => s.part === part)
    .map((s) => stageText(s, job.recipe));
}

/** One stage in a line: "Roughing: 6.35 mm cutter, 2 steps of 4 mm, ...". */
function stageText(s: Stage, { passes, units }: Recipe): string {
  const len = (mm: number): string => lengthText(mm, units);
  const name = {
    roughing: 'Roughing',
    clearing: 'Clearing',
    finishing: 'Finishing',
    'last pass': 'Last pass',
  }[s.name];
  const steps = s.steps === 1 ? `${len(s.depth)} in one pass` : `${s.steps} steps of ${len(s.step)}`;
  const leaves =
    s.name === 'roughing' || s.name === 'clearing' ? `, leaving ${len(passes.allowance)} on the walls` : '';
  return `${name}: ${len(s.tool.diameter)} cutter, ${steps}${leaves}; ${s.rpm} rpm, ${feedText(s.feed, units)}; about ${minutes(s.seconds)} (estimate).`;
}

/** A feed for reading. */
export function feedText(feed: number, units: Recipe['units']): string {
  return units === 'in' ? `${decimal(feed / 25.4, 1)} in/min` : `${decimal(feed, 0)} mm/min`;
}

export function minutes(seconds: number): string {
  return seconds < 90 ? `${Math.max(1, Math.round(seconds))} s` : `${Math.round(seconds / 60)} min`;
}

function pocket(job: Job): string[] {
  const { depth, stock, units } = job.recipe;
  const under = stock.field - depth;
  const len = (mm: number): string => lengthText(mm, units);
  return [
    `Cut the pocket inside its lines, ${len(depth)} deep, ${under > 1e-6 ? `leaving ${len(under)} under it` : 'right through'}.`,
    ...stages(job, 'pocket'),
  ];
}

function plug(job: Job): string[] {
  const { fit, stock, table, units } = job.recipe;
  const len = (mm: number): string => lengthText(mm, units);
  const height = plugHeight(job.recipe);
  const down =
    table.onionSkin > 0
      ? `stopping ${len(table.onionSkin)} above the lower face; sand that skin off afterwards.`
      : 'right through its wood; hold each part so that it cannot come loose.';
  const how =
    fit.plug === 'carrier'
      ? `The plug’s drawing is mirrored: cut it as drawn, outside its lines, ${len(height)} deep (depth less glue gap, and saw room), and leave the carrier of ${len(Math.max(0, stock.plug - height))} under it.`
      : fit.face === 'down'
        ? `The plug’s drawing is mirrored: cut it as drawn, outside its lines, ${down} On each part mark its upper side: that side goes down into the pocket.`
        : `Cut the plug outside its lines, ${down}`;
  return [how, ...stages(job, 'plug')];
}

function dryFit(job: Job): string[] {
  const { fit, units } = job.recipe;
  const down = fit.face === 'down';
  return [
    'Clean both, no dust in the corners. Gauge both parts at mouth and foot: slim cutters leave leaning walls.',
    ...(fit.foot > 0
      ? [
          `Ease the edge of the plug’s foot by ${lengthText(fit.foot, units)}, so that it starts: the foot is the end that goes in, ${down ? 'the upper one as it was cut' : 'the lower one as it was cut'}.`,
        ]
      : []),
    'Try it by hand a little way, never all the way down: it may not come out again. Note the result (inlaywright fit record).',
  ];
}

function glue(job: Job): string[] {
  const { recipe } = job;
  const { depth, fit, stock, times, units, woods } = recipe;
  const sum = glueSum(recipe, job.pair);
  const press = pressSum(recipe, job.outline, job.pair);
  const under = stock.field - depth;
  const carrier = fit.plug === 'carrier';
  return [
    `Lay press or clamps ready first: from the first glue to the last push there are ${decimal(times.glueOpen, 1)} minutes (times.glueOpen; the glue’s maker says).`,
    `Spread the glue thinly on the pocket’s walls and floor: about ${volumeText(sum.applied, units)} in all (estimate).`,
    `${under > 1e-6 ? 'Support the whole skin on a flat block. ' : ''}${
      carrier
        ? 'Turn the plug over and press it in face down, carrier up'
        : fit.face === 'down'
          ? 'Turn each part over and press it in, marked side down'
          : 'Press the plug in as drawn'
    }, slowly, so that air and glue get out. ${stopText(recipe)}`,
    press?.limit
      ? `Stay under ${loadText(press.limit, recipe)} (half of what crushes ${woods.plug}; estimate). Hands clear while it closes.`
      : 'Press no harder than it takes. Hands clear while it closes.',
    `Leave it for ${decimal(times.glueSet, 1)} hours (times.glueSet).`,
  ];
}

/** When the plug is far enough in. */
function stopText(recipe: Recipe): string {
  const { fit, units } = recipe;
  if (fit.glueGap <= 0) return 'It goes down to the floor.';
  const len = (mm: number): string => lengthText(mm, units);
  const seen =
    fit.plug === 'carrier'
      ? `when the carrier is ${len(fit.sawRoom)} above the face`
      : standsProud(recipe) > 1e-6
        ? `when it stands ${len(standsProud(recipe))} proud`
        : 'when its top is where the section shows it';
  return `It is far enough in ${seen}; the ${len(fit.glueGap)} under it stay for glue.`;
}

/** `last`: no further wood is let in after this one, so the back may be worked. */
function flush(recipe: Recipe, last: boolean): string[] {
  const { depth, fit, stock, units } = recipe;
  const len = (mm: number): string => lengthText(mm, units);
  const under = stock.field - depth;
  return [
    fit.plug === 'carrier'
      ? `Saw off the carrier in the ${len(fit.sawRoom)} of saw room and plane flush.`
      : standsProud(recipe) > 1e-6
        ? `Plane off the ${len(standsProud(recipe))} that stand proud.`
        : 'Plane flush.',
    ...(last && under > 1e-6
      ? [
          `To show the figure on the back too, take off the ${len(under)} under the floor, the ${len(fit.glueGap)} of glue gap and the ${len(fit.foot)} of eased foot: ${len(under + fit.glueGap + fit.foot)} in all.`,
        ]
      : []),
  ];
}

function finish({ times }: Recipe): string[] {
  const hours = times.coats * times.coatDry;
  return [
    'Sand or scrape along the grain on a flat block; blow the dust of the darker wood out of the paler one.',
    times.coats === 0
      ? 'No finish is reckoned with (times.coats).'
      : `${times.coats} coat${times.coats === 1 ? '' : 's'} of finish, ${decimal(times.coatDry, 1)} hours each to dry: ${decimal(hours, 1)} hours in all (times.coats, times.coatDry). Rags with drying oil can catch fire by themselves: lay them out flat outdoors, or under water.`,
  ];
}
