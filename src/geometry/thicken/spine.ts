import type { Vector } from '../bezier.js';
import { fitStretch, type Smooth } from '../biarc.js';
import { type Edge, line } from '../edge.js';
import { SAME_POINT } from '../tolerances.js';

/** A point of a spine and the spine's unit direction there. */
export interface Node {
  readonly x: number;
  readonly y: number;
  readonly tx: number;
  readonly ty: number;
}

/** Turn after which a new stretch is fitted: cos 75 degrees. */
const FRESH = 0.26;

/** Lines and arcs along the nodes of a smooth spine, tangent throughout (Hermite's cubics between nodes, then biarcs). */
export function fitted(nodes: readonly Node[], closed: boolean): Edge[] {
  const through = closed ? [...nodes, nodes[0]!] : nodes;
  if (through.length < 2) return [];
  const at: number[] = [0];
  for (let i = 1; i < through.length; i++) at.push(at[i - 1]! + apart(through[i - 1]!, through[i]!));
  const curve = hermite(through, at);
  const out: Edge[] = [];
  let from = 0;
  for (let i = 1; i < through.length; i++) {
    const [a, b, next] = [through[from]!, through[i]!, through[i + 1]];
    if (next && a.tx * next.tx + a.ty * next.ty > FRESH) continue;
    fitStretch(curve, at[from]!, at[i]!, [a.x, a.y], [b.x, b.y], out);
    from = i;
  }
  return out;
}

function apart(a: Node, b: Node): number {
  return Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));
}

function hermite(nodes: readonly Node[], at: readonly number[]): Smooth {
  const segment = (t: number, side: 1 | -1): number => {
    let lo = 0;
    let hi = at.length - 2;
    while (lo < hi) {
      const mid = (lo + hi + 1) >> 1;
      if (side > 0 ? at[mid]! <= t : at[mid]! < t) lo = mid;
      else hi = mid - 1;
    }
    return lo;
  };
  return {
    point(t): Vector {
      const i = segment(t, 1);
      const [a, b] = [nodes[i]!, nodes[i + 1]!];
      const h = at[i + 1]! - at[i]!;
      const s = (t - at[i]!) / h;
      const s2 = s * s;
      const s3 = s2 * s;
      const [h0, h1, g0, g1] = [2 * s3 - 3 * s2 + 1, 3 * s2 - 2 * s3, (s3 - 2 * s2 + s) * h, (s3 - s2) * h];
      return [h0 * a.x + h1 * b.x + g0 * a.tx + g1 * b.tx, h0 * a.y + h1 * b.y + g0 * a.ty + g1 * b.ty];
    },
    tangent(t, side): Vector {
      const i = segment(t, side);
      const [a, b] = [nodes[i]!, nodes[i + 1]!];
      const h = at[i + 1]! - at[i]!;
      const s = (t - at[i]!) / h;
      if (s <= 0) return [a.tx, a.ty];
      if (s >= 1) return [b.tx, b.ty];
      const d = (6 * s * s - 6 * s) / h;
      const [g0, g1] = [3 * s * s - 4 * s + 1, 3 * s * s - 2 * s];
      const x = d * (a.x - b.x) + g0 * a.tx + g1 * b.tx;
      const y = d * (a.y - b.y) + g0 * a.ty + g1 * b.ty;
      const l = Math.sqrt(x * x + y * y);
      return l > 1e-9 ? [x / l, y / l] : [a.tx, a.ty];
    },
  };
}

/** A straight step between two points; none when they are one. */
export function step(x0: number, y0: number, x1: number, y1: number): Edge[] {
  return Math.abs(x0 - x1) + Math.abs(y0 - y1) < SAME_POINT ? [] : [line(x0, y0, x1, y1)];
}

/** Nodes with the last `length` mm cut off; null when nothing is left. */
export function shortened(nodes: readonly Node[], length: number): Node[] | null {
  let left = length;
  for (let i = nodes.length - 1; i > 0; i--) {
    const [a, b] = [nodes[i - 1]!, nodes[i]!];
    const l = apart(a, b);
    if (l <= left) {
      left -= l;
      continue;
    }
    const k = left / l;
    const [tx, ty] = [b.tx + (a.tx - b.tx) * k, b.ty + (a.ty - b.ty) * k];
    const n = Math.sqrt(tx * tx + ty * ty) || 1;
    const cut: Node = { x: b.x + (a.x - b.x) * k, y: b.y + (a.y - b.y) * k, tx: tx / n, ty: ty / n };
    return [...nodes.slice(0, i), cut];
  }
  return null;
}

/** Nodes gone on straight ahead by `length` mm. */
export function extended(nodes: readonly Node[], length: number): Node[] {
  const n = nodes[nodes.length - 1]!;
  if (length < SAME_POINT) return [...nodes];
  return [...nodes, { ...n, x: n.x + n.tx * length, y: n.y + n.ty * length }];
}

export function turnedNodes(nodes: readonly Node[]): Node[] {
  return nodes.map((n) => ({ x: n.x, y: n.y, tx: -n.tx, ty: -n.ty })).reverse();
}
