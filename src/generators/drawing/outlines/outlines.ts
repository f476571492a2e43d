import { resolve } from '../../../geometry/boolean.js';
import { bounds, type Contour, parts, type Region } from '../../../geometry/region.js';
import { BadInput, Refusal } from '../../../schema/fault.js';
import { refuseTangle } from '../tangle.js';
import type { Chain, Stretch } from './chain.js';
import { tellCrossings } from './crossing-places.js';
import { gapFaults, type Telling } from './gaps.js';
import { Graph } from './graph.js';
import { joined } from './joins.js';
import { loopsOf } from './loops.js';
import { withoutOverlaps } from './overlaps.js';
import { refitted } from './refit.js';
import type { Repairs, Tolerances } from './repair.js';
import { cutAtTees } from './tees.js';
import { withoutTwins } from './twins.js';

/** Edges of a drawing's outlines: more are too many to follow. */
export const MOST_EDGES = 100_000;

/** What chains of edges enclose. */
export interface Outlined {
  readonly region: Region;
  /** The loops that the region was made of, for whoever asks where a part of it comes from. */
  readonly loops: readonly (readonly Stretch[])[];
}

/**
 * The region that chains of edges, mm, enclose by the even-odd rule, after mending them: lines drawn twice are taken
 * once, loose ends are joined, specks dropped, short segments refitted, crossings resolved. Everything mended is told to
 * `repairs`. Throws BadInput with the place of every gap that is left, Refusal for too many edges.
 */
export function outlined(
  chains: readonly Chain[],
  tolerances: Tolerances,
  repairs: Repairs,
  telling: Telling,
): Outlined {
  const { join, speck, refit } = tolerances;
  const all = chains.map((c) => c.stretches.map((s) => s.edge));
  if (all.reduce((sum, c) => sum + c.length, 0) > MOST_EDGES)
    throw new Refusal(
      'too-large',
      `the drawing has more than ${MOST_EDGES} edges; make it smaller or simpler`,
    );
  refuseTangle(all);
  const closed = withoutTwins(
    chains.filter((c) => c.closed),
    join,
    repairs,
  );
  const open = chains.filter((c) => !c.closed).flatMap((c) => c.stretches);
  const single = withoutOverlaps(open, closed, join, repairs);
  const lines = cutAtTees({ open: joined(single, join, repairs), closed }, join, repairs);
  const found = [
    ...lines.closed.map((c) => c.stretches),
    ...loopsOfAll(lines.open, join, speck, repairs, telling),
  ];
  // Loops of loose lines may repeat a closed shape only now that they are loops.
  const loops = withoutTwins(
    found.map((stretches) => ({ stretches, closed: true })),
    join,
    repairs,
  )
    .map((c) => c.stretches)
    .filter((l) => !isSpeck(l, speck, repairs))
    .map((l) => refitted(l, refit, repairs));
  const contours = loops.map((l) => l.map((s) => s.edge));
  tellCrossings(contours.flat(), repairs);
  return { region: withoutSpecks(resolve(contours, 'evenodd'), speck, repairs), loops };
}

function loopsOfAll(
  open: readonly Stretch[],
  join: number,
  speck: number,
  repairs: Repairs,
  telling: Telling,
): (readonly Stretch[])[] {
  const graph = new Graph(open);
  const loops: (readonly Stretch[])[] = [];
  const gaping: number[][] = [];
  for (const component of graph.components()) {
    const loose = component.some((k) =>
      [2 * k, 2 * k + 1].some((w) => graph.leaving[graph.from[w]!]!.length === 1),
    );
    const stretches = component.map((k) => graph.stretches[k]!);
    if (!loose) for (const loop of loopsOf(graph, component, repairs)) loops.push(loop);
    else if (!isSpeck(stretches, speck, repairs)) gaping.push(component);
  }
  if (gaping.length > 0) throw new BadInput(gapFaults(graph, gaping, join, telling));
  return loops;
}

/** Is it all within a box smaller than `speck`? Then it is told to `repairs`. */
function isSpeck(stretches: readonly Stretch[], speck: number, repairs: Repairs): boolean {
  const at = small([stretches.map((s) => s.edge)], speck);
  if (at) repairs.add('speck', at.middle, at.across);
  return at !== null;
}

function small(
  contours: readonly Contour[],
  speck: number,
): { middle: [number, number]; across: number } | null {
  const { minX, minY, maxX, maxY } = bounds(contours);
  const across = Math.max(maxX - minX, maxY - minY);
  return across < speck ? { middle: [(minX + maxX) / 2, (minY + maxY) / 2], across } : null;
}

/** The region less the parts and holes that came out smaller than `speck` across. */
export function withoutSpecks(region: Region, speck: number, repairs: Repairs): Region {
  if (speck === 0) return region;
  const contours = parts(region).flatMap(([outer, ...holes]) => {
    const dust = small([outer!], speck);
    if (dust) {
      repairs.add('speck', dust.middle, dust.across);
      return [];
    }
    return [
      outer!,
      ...holes.filter((hole) => {
        const tiny = small([hole], speck);
        if (tiny) repairs.add('speck', tiny.middle, tiny.across);
        return tiny === null;
      }),
    ];
  });
  return contours.length === region.contours.length ? region : { contours };
}
