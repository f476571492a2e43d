import { apart } from './apart.js';
import { difference } from './difference.js';
import { type Drawing, mirrored } from './drawing.js';
import { boxOf, select } from './pieces.js';
import { type Four, measured, type Proof, type ProofFiles, readFour, unread } from './prove.js';
import { reach } from './reach.js';
import { readDxfDots } from './read-dxf.js';
import { readDots } from './read-svg.js';

/** SVG and DXF of the dots may differ by rounding only, mm; and what is measured may fall short by as much. */
const ROUNDING = 0.0002;

/** One step of a coupon: its wood on the pocket's drawing, mm from the sheet's middle, y up. */
export interface CouponStepAsked {
  readonly box: readonly [minX: number, minY: number, maxX: number, maxY: number];
  /** Gap per side, mm. */
  readonly clearance: number;
  /** How many dots it is marked with. */
  readonly dots: number;
}

export interface StepsAsked {
  /** The cutter's radius, mm. */
  readonly radius: number;
  /** Is the plug's drawing mirrored? */
  readonly carrier: boolean;
  readonly steps: readonly CouponStepAsked[];
  /** Least room for the saw between the wood of two steps, mm. */
  readonly saw: number;
  /** Least wood between a pocket and the edge of its step, mm. */
  readonly edge: number;
}

/** The proof of a coupon: of all steps together the worst of each measure, and every step by itself. */
export interface CouponProof extends Proof {
  readonly steps: readonly Proof[];
}

/**
 * Reads a coupon's four drawings back, shares the contours out among the steps and proves every step as a pair of its
 * own, with its own clearance. Everything drawn must lie in the wood of one step; the dots, read from both drawings,
 * must be as many as asked, wide enough for the cutter, and farther from the figure than the cutter is wide.
 */
export function proveSteps(files: ProofFiles, asked: StepsAsked): CouponProof {
  const failures: string[] = [];
  const all = readFour(files, failures);
  const { radius, carrier, steps } = asked;
  if (!all || steps.length === 0)
    return { ...unread({ radius, carrier, clearance: Number.NaN }, failures), steps: [] };
  const { width, height } = all.pocket;
  const boxes = steps.map(({ box: [x0, y0, x1, y1] }): Box => {
    const [mx, my] = [width! / 2, height! / 2];
    return [x0 + mx, y0 + my, x1 + mx, y1 + my];
  });
  const turned = carrier ? boxes.map(([x0, y0, x1, y1]): Box => [width! - x1, y0, width! - x0, y1]) : boxes;
  roomBetween(boxes, asked.saw, failures);
  const shared = {
    pocket: share('pocket.svg', all.pocket, boxes, asked.edge, failures),
    pocketDxf: share('pocket.dxf', all.pocketDxf, boxes, asked.edge, failures),
    plugAsCut: share('plug.svg', all.plugAsCut, turned, asked.edge, failures),
    plugDxf: share('plug.dxf', all.plugDxf, turned, asked.edge, failures),
  };
  const proofs = steps.map(({ clearance }, k) => {
    const four = Object.fromEntries(
      Object.entries(shared).map(([f, list]) => [f, list[k]]),
    ) as unknown as Four;
    const own = { radius, carrier, clearance };
    if (Object.values(four).some((d: Drawing) => d.edges.count === 0))
      return unread(own, ['nothing of it is drawn in one of the files']);
    return measured(four, own);
  });
  proofs.forEach((p, k) => {
    failures.push(...p.failures.map((f) => `step ${k + 1}: ${f}`));
  });
  dots('pocket', files.pocketSvg, files.pocketDxf, all.pocket, boxes, asked, failures);
  dots('plug', files.plugSvg, files.plugDxf, all.plugAsCut, turned, asked, failures);
  return { ...worst(proofs), holds: failures.length === 0, failures, steps: proofs };
}

type Box = readonly [number, number, number, number];

function roomBetween(boxes: readonly Box[], saw: number, failures: string[]): void {
  boxes.forEach((a, i) => {
    boxes.slice(i + 1).forEach((b, j) => {
      const room = Math.max(b[0] - a[2], a[0] - b[2], b[1] - a[3], a[1] - b[3]);
      if (!(room >= saw - ROUNDING))
        failures.push(
          `the wood of steps ${i + 1} and ${i + j + 2} is ${fine(room)} mm apart, and the saw needs ${fine(saw)}`,
        );
    });
  });
}

/** A drawing's contours by the step in whose wood they lie, `edge` mm or more from its border. */
function share(
  file: string,
  drawing: Drawing,
  boxes: readonly Box[],
  edge: number,
  failures: string[],
): Drawing[] {
  const lists: number[][] = boxes.map(() => []);
  for (let c = 0; c < drawing.contours; c++) {
    const [x0, y0, x1, y1] = boxOf(select(drawing, [c]));
    const least = edge - ROUNDING;
    const k = boxes.findIndex(
      (b) => x0 >= b[0] + least && y0 >= b[1] + least && x1 <= b[2] - least && y1 <= b[3] - least,
    );
    if (k >= 0) lists[k]!.push(c);
    else
      failures.push(
        `${file}: the contour at (${fine((x0 + x1) / 2)}, ${fine((y0 + y1) / 2)}) does not lie in the wood of one step, ${fine(edge)} mm from its edge`,
      );
  }
  return lists.map((list) => select(drawing, list));
}

function dots(
  part: 'pocket' | 'plug',
  svg: string,
  dxf: string,
  figure: Drawing,
  boxes: readonly Box[],
  { steps, radius, carrier }: StepsAsked,
  failures: string[],
): void {
  let drawn: Drawing;
  try {
    drawn = readDots(svg, part);
    // What DXF has is compared in the same place, so both are right when the SVG is.
    const off = difference(drawn, readDxfDots(dxf, part));
    if (!(off <= ROUNDING))
      failures.push(`the dots of ${part}.svg and ${part}.dxf differ by ${fine(off)} mm`);
  } catch (error) {
    failures.push(
      `the dots of the ${part} cannot be read back: ${error instanceof Error ? error.message : error}`,
    );
    return;
  }
  const found = share(`dots of ${part}.svg`, drawn, boxes, 0, failures).map((d) => d.contours);
  steps.forEach(({ dots: n }, k) => {
    if (found[k] !== n)
      failures.push(`step ${k + 1} has ${found[k]} dots in the ${part}, and ${n} were asked`);
  });
  if (drawn.edges.count === 0) return;
  const wide = reach(
    part === 'plug' && carrier ? mirrored(drawn, drawn.width!) : drawn,
    'inside',
    2 * radius,
  );
  if (!(wide.reach >= radius))
    failures.push(
      `a dot of the ${part} has a radius of ${fine(wide.reach)} mm, and the cutter has ${fine(radius)}`,
    );
  const clear = apart([drawn, figure], 3 * radius).least;
  if (!(clear >= 2 * radius - ROUNDING))
    failures.push(
      `a dot stands ${fine(clear)} mm from the ${part}, and the cutter is ${fine(2 * radius)} wide`,
    );
}

/** The worst of each measure over all steps. */
function worst(proofs: readonly Proof[]): Proof {
  const lowest = (get: (p: Proof) => Proof['pocket']): Proof['pocket'] =>
    proofs.map(get).reduce((a, b) => (b.reach < a.reach || !b.holds ? b : a));
  const most = (get: (p: Proof) => number): number => Math.max(...proofs.map(get));
  return {
    required: proofs[0]!.required,
    pocket: lowest((p) => p.pocket),
    plug: lowest((p) => p.plug),
    joints: { worst: most((p) => p.joints.worst) },
    gap: { least: Math.min(...proofs.map((p) => p.gap.least)), most: most((p) => p.gap.most) },
    svgDxf: most((p) => p.svgDxf),
    holds: false,
    failures: [],
  };
}

function fine(x: number): string {
  return x - x === 0 ? String(Math.round(x * 1e4) / 1e4 + 0) : 'an unknown length of';
}
