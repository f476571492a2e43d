import { enforce } from '../../src/cutter/enforce.js';
import { makePair } from '../../src/fit/split.js';
import { crossings } from '../../src/geometry/crossings.js';
import { bulge, type Edge } from '../../src/geometry/edge.js';
import { bulgedContour, type Contour, windingNumber } from '../../src/geometry/region.js';
import { Refusal } from '../../src/schema/fault.js';
import { proofOf } from './proving.js';

/** A drawing for the pass as plain data: contours by points and bulges, as DXF polylines have them. */
export interface Drawn {
  readonly r: number;
  readonly touch: 'part' | 'join';
  readonly thin?: 'drop' | 'widen';
  readonly clearance: number;
  readonly pieces: readonly (readonly (readonly (readonly [x: number, y: number, bulge: number])[])[])[];
}

function contoursOf(piece: Drawn['pieces'][number]): Contour[] {
  return piece.map((c) => bulgedContour(c.map(([x, y, b]) => ({ x, y, bulge: b }))));
}

/** Whether no piece's contours cross themselves or each other, and its further ones are holes in its first. */
export function isSoundDrawing({ pieces }: Drawn): boolean {
  return pieces.every((piece) => {
    const [outer, ...holes] = contoursOf(piece);
    const edges = [outer!, ...holes].flat();
    const within = holes.every((h) => h[0] && windingNumber([outer!], h[0].x0, h[0].y0) === 1);
    return within && edges.every((e, i) => edges.slice(i + 1).every((f) => !cross(e, f)));
  });
}

/** Two ends that meet are no crossing. */
function cross(e: Edge, f: Edge): boolean {
  const isEnd = (g: Edge, x: number, y: number): boolean =>
    Math.min(Math.hypot(x - g.x0, y - g.y0), Math.hypot(x - g.x1, y - g.y1)) < 1e-6;
  let met = false;
  crossings(e, f, (x, y) => {
    met ||= !(isEnd(e, x, y) && isEnd(f, x, y));
  });
  return met;
}

/** How it went: proven, nothing left, or refused with a reason. */
export type End = 'proven' | 'nothing left' | 'refused';

/** What the pass and the proof make of it. Throws for anything but a pair that is proven or a refusal with a reason. */
export function endOf({ r, touch, thin = 'drop', clearance, pieces }: Drawn): End {
  const artwork = pieces.map((contours, i) => ({
    name: `p${i}`,
    region: { contours: contoursOf(contours) },
  }));
  try {
    const safe = enforce({ pieces: artwork }, { r, thin, touch });
    if (safe.region.contours.length === 0) return 'nothing left';
    const pair = makePair(safe, { clearance, from: 'both', face: 'down' });
    const { failures } = proofOf(pair, { radius: r, clearance });
    if (failures.length > 0) throw new Error(failures.join('; '));
    return 'proven';
  } catch (e) {
    if (e instanceof Refusal && /^[^\n]{20,400}$/.test(e.message)) return 'refused';
    throw e;
  }
}

/** A region's contours as a `Drawn` has them. */
export function asDrawn(
  contours: readonly (readonly Parameters<typeof bulge>[0][])[],
): Drawn['pieces'][number] {
  return contours.map((c) => c.map((e) => [e.x0, e.y0, bulge(e)] as const));
}

/** The smallest drawing found that still fails: pieces, contours and corners taken away one by one, places made rounder. */
export function shrunk(drawn: Drawn, fails: (d: Drawn) => boolean): Drawn {
  let now = drawn;
  for (let again = true; again; ) {
    again = false;
    for (const next of smaller(now))
      if (fails(next)) {
        now = next;
        again = true;
        break;
      }
  }
  return now;
}

function* smaller(d: Drawn): Generator<Drawn> {
  const without = <T>(list: readonly T[], i: number): T[] => list.filter((_, k) => k !== i);
  const replaced = <T>(list: readonly T[], i: number, by: T): T[] => list.map((v, k) => (k === i ? by : v));
  for (let i = 0; i < d.pieces.length; i++) yield { ...d, pieces: without(d.pieces, i) };
  for (let i = 0; i < d.pieces.length; i++) {
    const piece = d.pieces[i]!;
    const put = (p: typeof piece): Drawn => ({ ...d, pieces: replaced(d.pieces, i, p) });
    for (let k = 1; k < piece.length; k++) yield put(without(piece, k));
    for (let k = 0; k < piece.length; k++)
      for (let v = 0; v < piece[k]!.length; v++)
        if (piece[k]!.length > 3) yield put(replaced(piece, k, without(piece[k]!, v)));
  }
  for (const digits of [1, 2, 4]) {
    const round = (x: number): number => Math.round(x * 10 ** digits) / 10 ** digits;
    const rounder: Drawn = {
      ...d,
      r: round(d.r),
      clearance: round(d.clearance),
      pieces: d.pieces.map((p) => p.map((c) => c.map(([x, y, b]) => [round(x), round(y), b] as const))),
    };
    if (JSON.stringify(rounder) !== JSON.stringify(d) && rounder.clearance > 0 && rounder.r > 0) {
      yield rounder;
      return;
    }
  }
}
