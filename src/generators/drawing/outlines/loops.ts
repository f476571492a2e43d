import { edgeLength, endTangent, midpoint, startTangent } from '../../../geometry/edge.js';
import { contourArea } from '../../../geometry/region.js';
import type { Stretch } from './chain.js';
import type { Graph, Way } from './graph.js';
import type { Repairs } from './repair.js';

/**
 * The loops of stretches that hang together and have no loose end.
 *
 * Where an even number of lines meets at every corner, all of them are walked, straight on where there is a choice: what
 * they enclose by the even-odd rule is the same whichever way is taken. Where three lines meet, some of them part two
 * shapes that touch; such a line has no width, so the outline round all of them is taken, and the rest is left out.
 */
export function loopsOf(graph: Graph, component: readonly number[], repairs: Repairs): Stretch[][] {
  const corners = new Set(component.flatMap((k) => [graph.from[2 * k]!, graph.from[2 * k + 1]!]));
  if ([...corners].every((c) => graph.leaving[c]!.length % 2 === 0)) return straightOn(graph, component);
  const outer = outerFace(graph, component);
  const used = new Set(outer.map((w) => w >> 1));
  const dividers = component.filter((k) => !used.has(k));
  if (dividers.length > 0) {
    const lengths = dividers.map((k) => edgeLength(graph.stretches[k]!.edge));
    const longest = dividers[lengths.indexOf(Math.max(...lengths.slice(0, MOST)))]!;
    const { edge } = graph.stretches[longest]!;
    repairs.add('left-out', midpoint(edge), edgeLength(edge), 'line between shapes', dividers.length);
  }
  // A line that is walked both ways joins two shapes and encloses nothing.
  const both = new Set(outer);
  const solid = outer.filter((w) => !both.has(w ^ 1));
  return solid.length === outer.length
    ? [outer.map((w) => graph.stretch(w))]
    : straightOn(
        graph,
        solid.map((w) => w >> 1),
      );
}

/** Arguments a function takes safely. */
const MOST = 10_000;

function straightOn(graph: Graph, component: readonly number[]): Stretch[][] {
  const left = new Set(component);
  const loops: Stretch[][] = [];
  for (const first of component) {
    if (!left.has(first)) continue;
    const loop: Stretch[] = [];
    const start = graph.from[2 * first]!;
    let way: Way | null = 2 * first;
    while (way !== null) {
      left.delete(way >> 1);
      loop.push(graph.stretch(way));
      way = graph.to(way) === start ? null : straightest(graph, way, left);
    }
    loops.push(loop);
  }
  return loops;
}

function straightest(graph: Graph, way: Way, left: ReadonlySet<number>): Way | null {
  const [tx, ty] = endTangent(graph.edge(way));
  let best: Way | null = null;
  let bestDot = Number.NEGATIVE_INFINITY;
  for (const next of graph.leaving[graph.to(way)]!) {
    if (!left.has(next >> 1)) continue;
    const [ux, uy] = startTangent(graph.edge(next));
    if (tx * ux + ty * uy > bestDot) [best, bestDot] = [next, tx * ux + ty * uy];
  }
  return best;
}

/** The walk round the outside: of all faces, each on the left of its ways, the one whose area is below 0. */
function outerFace(graph: Graph, component: readonly number[]): Way[] {
  const following = new Map<Way, Way>();
  for (const corner of new Set(component.flatMap((k) => [graph.from[2 * k]!, graph.from[2 * k + 1]!]))) {
    const ways = graph.around(corner);
    // Coming in against one, the face on the left goes on along the next one clockwise.
    ways.forEach((w, i) => {
      following.set(w ^ 1, ways[(i + ways.length - 1) % ways.length]!);
    });
  }
  const done = new Set<Way>();
  let outer: Way[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const k of component)
    for (const first of [2 * k, 2 * k + 1]) {
      if (done.has(first)) continue;
      const face: Way[] = [];
      for (let w = first; !done.has(w); w = following.get(w)!) {
        done.add(w);
        face.push(w);
      }
      const size = contourArea(face.map((w) => graph.edge(w)));
      if (size < least) [least, outer] = [size, face];
    }
  return outer;
}
