import { circle, distanceToBoundary, flatten, type Region, reversedContour } from '../../geometry/region.js';
import type { Fit } from '../middle.js';
import { bad, mm } from '../values.js';
import { type Arrangement, anchor, firstMotif, reachOf, same } from './arrangement.js';
import { apart } from './clearance.js';
import { after, type Isometry, image, imageOf, turned } from './isometry.js';
import { type Asked, count, halfWidth, type Laid, type Rails } from './run.js';
import { copiesAlong, type Frieze, sizeIn, strip } from './strip.js';

/** A chord may stray this far from its arc where a motif's farthest point is sought, mm. */
const CHORD = 0.001;

/**
 * Round a circle, clockwise from the top, whole repeats all the way. Copies keep their shape: each figure is turned so
 * that its upright points outwards at its place. `outer` is the radius to the outside of the rails, mm.
 */
export function round(f: Frieze, asked: Asked, rails: Rails, at: Fit, outer: number): Laid {
  const half = halfWidth(f, rails);
  const middle = outer - half;
  const bore = middle - half;
  if (bore < at.bore) {
    const most = Math.floor((f.height - (at.bore - bore)) * 100) / 100;
    throw bad('height', `${mm(f.height)} does not fit the ring; use ${mm(most)} at most, or no rails`);
  }
  const around = 2 * Math.PI * middle;
  const repeats = count(f, asked, around);
  const inRing = (v: Arrangement, size: number): boolean => {
    const [least, most] = span(bent(v, size, middle, copiesAlong(v, size, 0, 1)));
    return least >= middle - f.height / 2 - CHORD && most <= middle + f.height / 2 + CHORD;
  };
  const holds = (v: Arrangement, size: number, gap = f.gap): boolean =>
    keepsGapRound(v, gap, size, middle, repeats) && inRing(v, size);
  const w = strip(f, around / repeats, holds);
  const size = sizeIn(asked.size, f, 2 * Math.max(f.height, around / repeats), {
    within: (v) => inRing(w, v),
    fits: (v, gap) => holds(w, v, gap),
  });
  const home = turned(0, at.x, at.y);
  const ring = (radius: number): Region => ({
    contours: [circle(at.x, at.y, radius), reversedContour(circle(at.x, at.y, radius - rails.width))],
  });
  return {
    motifs: bent(w, size, middle, copiesAlong(w, size, 0, repeats)).map((r) => imageOf(home, r)),
    rails: rails.width > 0 ? [ring(outer), ring(bore + rails.width)] : [],
  };
}

/** Copies of the straight strip brought round the circle about (0, 0): the middle line, y = 0, lies on `radius`. */
function bent(w: Arrangement, size: number, radius: number, along: readonly Isometry[]): Region[] {
  const motif = firstMotif(w, size);
  const from = anchor(w, size);
  return along.map((m) => {
    const [x] = image(m, from);
    const upright = turned(0, -x, radius);
    return imageOf(after(turned(-x / radius), after(upright, m)), motif);
  });
}

/** Does the first repeat keep the gap from itself and from the repeats on both sides? */
function keepsGapRound(w: Arrangement, gap: number, size: number, radius: number, repeats: number): boolean {
  const reach = 2 * reachOf(w.motif) * size + gap;
  const beside = Math.min(Math.ceil(reach / w.lattice.a[0]) + 1, Math.floor(repeats / 2));
  const first = copiesAlong(w, size, 0, 1);
  const own = bent(w, size, radius, first);
  const next = bent(w, size, radius, copiesAlong(w, size, 1, Math.min(beside, repeats - 1)));
  return own.every(
    (a, i) =>
      own.every((b, j) => j <= i || oneFigure(w, first[i]!, first[j]!) || apart(a, b, gap)) &&
      next.every((b) => apart(a, b, gap)),
  );
}

function oneFigure({ hinge }: Arrangement, m: Isometry, n: Isometry): boolean {
  return hinge !== null && same(image(m, hinge), image(n, hinge));
}

/** Least and greatest distance of regions from (0, 0), mm. */
function span(regions: readonly Region[]): [number, number] {
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (const r of regions) {
    least = Math.min(least, distanceToBoundary(r, 0, 0));
    for (const c of r.contours)
      for (const [x, y] of flatten(c, CHORD)) most = Math.max(most, Math.sqrt(x * x + y * y));
  }
  return [least, most];
}
