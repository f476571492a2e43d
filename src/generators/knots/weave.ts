import { subtract, union } from '../../geometry/boolean.js';
import type { Edge } from '../../geometry/edge.js';
import { offset } from '../../geometry/offset.js';
import { area, parts, type Region } from '../../geometry/region.js';
import { stroke } from '../../geometry/stroke.js';
import { backwards, parted, pathLength, type Strand } from './strand.js';

/**
 * Bands of one width (mm) along strands, as pieces from one place where the band goes under to the next. The under
 * band ends `gap` short of the over band on either side. A piece that has no room between two over bands is null.
 */
export function weave(strands: readonly Strand[], width: number, gap: number): (Region | null)[] {
  const over = new Map<string, Region>();
  for (const s of strands)
    s.nodes.forEach((node, k) => {
      if (node.over) over.set(node.crossing, around(s, k, width, gap));
    });
  return strands.flatMap((s) => {
    const under = s.nodes.flatMap((node, k) => (node.over ? [] : [k]));
    if (under.length === 0) return [stroke(s.stretches.flat(), width, { closed: true })];
    return under.map((from, i) => piece(s, from, under[(i + 1) % under.length]!, width, over));
  });
}

/** All within the gap of the band at node k: what it takes from the band under it. */
function around({ nodes, stretches }: Strand, k: number, width: number, gap: number): Region {
  const n = nodes.length;
  // Far enough for crossings at half a right angle, and never as far as the next crossing: half way there, or a
  // quarter of a loop back to this one, the rest of which is the band under it.
  const near = (path: readonly Edge[], to: number): readonly Edge[] => {
    const share = nodes[to]!.crossing === nodes[k]!.crossing ? 0.25 : 0.5;
    return parted(path, Math.min(2 * (width + gap), share * pathLength(path)))[0];
  };
  const before = near(backwards(stretches[(k + n - 1) % n]!), (k + n - 1) % n);
  const after = near(stretches[k]!, (k + 1) % n);
  return offset(stroke([...backwards(before), ...after], width, { closed: false }), gap);
}

/** The strand's stretches from one node to another, all the way round when they are the same. */
function run({ stretches }: Strand, from: number, to: number): (readonly Edge[])[] {
  const out: (readonly Edge[])[] = [];
  let k = from;
  do {
    out.push(stretches[k]!);
    k = (k + 1) % stretches.length;
  } while (k !== to);
  return out;
}

/**
 * The band from one node to another less what the bands over its ends take, by crossing. Only the first and the last
 * stretch are cut, or the outer half of a loop back to the same crossing: elsewhere this band may itself be one of
 * those that lie over.
 */
function piece(
  strand: Strand,
  from: number,
  to: number,
  width: number,
  over: ReadonlyMap<string, Region>,
): Region | null {
  const { nodes } = strand;
  const n = nodes.length;
  const stretches = run(strand, from, to);
  const outer = (path: readonly Edge[], end: number, next: number): [Edge[], Edge[]] =>
    parted(
      path,
      nodes[end]!.crossing === nodes[next]!.crossing ? pathLength(path) / 2 : Number.POSITIVE_INFINITY,
    );
  const [first, afterFirst] = outer(stretches[0]!, from, (from + 1) % n);
  const [last, beforeLast] = outer(backwards(stretches[stretches.length - 1]!), to, (to + n - 1) % n);
  const middle = [...afterFirst, ...stretches.slice(1, -1).flat(), ...backwards(beforeLast)];
  const band = (path: readonly Edge[]): Region => stroke(path, width, { closed: false });
  const start = largest(subtract(band(first), over.get(nodes[from]!.crossing)!));
  const end = largest(subtract(band(last), over.get(nodes[to]!.crossing)!));
  return start && end && union([band(middle), start, end]);
}

/** The largest part of a region: beyond an over band that bends away a crumb may be left. */
function largest(region: Region): Region | null {
  let best: Region | null = null;
  for (const contours of parts(region)) if (!best || area({ contours }) > area(best)) best = { contours };
  return best;
}
