import { endingAt } from '../../../geometry/chain.js';
import type { Edge } from '../../../geometry/edge.js';
import type { Matrix } from '../matrix.js';
import type { Step, Subpath } from '../outline-path.js';
import { closing, traced } from '../trace.js';
import type { Chain, Origin, Stretch } from './chain.js';
import { ONE_POINT } from './points.js';

/** A path as chains of lines and arcs where `m` puts it, mm: one a run. Runs of no length give none. */
export function chainsOf(path: readonly Subpath[], m: Matrix, origin: Origin): Chain[] {
  return path.flatMap((run): Chain[] => {
    const stretches: Stretch[] = [];
    let at = run.start;
    for (const step of run.steps) {
      const edges = traced({ start: at, steps: [step], closed: false }, m);
      const curve = isCurve(step, edges);
      for (const edge of edges) stretches.push({ edge, origin, curve });
      // A step too small to draw is left out: what follows starts where the last one ended.
      if (edges.length > 0) at = step.to;
    }
    const first = stretches[0]?.edge;
    const last = stretches[stretches.length - 1]?.edge;
    if (!first || !last) return [];
    const meets = Math.abs(last.x1 - first.x0) + Math.abs(last.y1 - first.y0) <= ONE_POINT;
    if (!run.closed && !(meets && stretches.length > 1)) return [{ stretches, closed: false }];
    const edges = stretches.map((s) => s.edge);
    const ring = run.closed ? closing(edges) : endingAt(edges, edges[0]!.x0, edges[0]!.y0);
    return [
      {
        stretches: ring.map((edge, i) => ({ edge, origin, curve: stretches[i]?.curve ?? false })),
        closed: true,
      },
    ];
  });
}

function isCurve(step: Step, edges: readonly Edge[]): boolean {
  return step.kind !== 'line' && edges.some((e) => e.r === 0 || e.r !== edges[0]!.r || step.kind !== 'arc');
}

/** A place in words, mm: "(12.5, -3.25) mm". */
export function placeText(x: number, y: number): string {
  const n = (v: number): number => Number(v.toFixed(3)) + 0;
  return `(${n(x)}, ${n(y)}) mm`;
}
