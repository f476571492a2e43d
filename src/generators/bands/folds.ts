import type { Vector } from '../../geometry/bezier.js';
import { line, withEnds } from '../../geometry/edge.js';
import type { Pen } from '../../geometry/pen.js';
import type { Contour } from '../../geometry/region.js';
import { type Band, drawPiece } from './band.js';
import { laid, type Track } from './track.js';

/** From and to, mm above the lower edge of a face. */
export type Slat = readonly [number, number];

/** A ribbon folded to and fro: its band's height, how far faces climb, the gap between them, what each face shows. */
export interface Fold {
  readonly height: number;
  readonly rise: number;
  readonly gap: number;
  slats(front: boolean): readonly Slat[];
}

/** Folds half a repeat apart; the first and the last lie on joints or at the ends. */
export function foldedRun(fold: Fold, band: Band, pen: Pen): void {
  const { track } = band;
  const base = -fold.height / 2;
  for (let k = 0; k < 2 * track.repeats; k++) {
    const at =
      (j: number) =>
      (level: number): Vector => [(j * track.repeat) / 2, base + (j % 2 === 0 ? 0 : fold.rise) + level];
    fold.slats(k % 2 === 0).forEach(([low, high], i) => {
      const contour = faceOn(track, at(k), at(k + 1), low, high, fold.gap);
      drawPiece(pen, band, `face ${k + 1}.${i + 1}`, { contours: [contour] });
    });
  }
}

/** A stripe between two folds of a strip, with half a gap left beside each at its true width. */
function faceOn(
  track: Track,
  from: (level: number) => Vector,
  to: (level: number) => Vector,
  low: number,
  high: number,
  gap: number,
): Contour {
  const shrunk = ([s, t]: Vector, sense: number): Vector => {
    const { along } = track.spot(s, t);
    return [s + (sense * gap) / 2 / Math.sqrt(along[0] * along[0] + along[1] * along[1]), t];
  };
  // The edge's own slope is kept: moving in from the fold moves along the edge.
  const edge = (level: number): [Vector, Vector] => {
    const [p, q] = [from(level), to(level)];
    const [a, b] = [shrunk(p, 1), shrunk(q, -1)];
    const climb = (q[1] - p[1]) / (q[0] - p[0]);
    return [
      [a[0], p[1] + climb * (a[0] - p[0])],
      [b[0], q[1] + climb * (b[0] - q[0])],
    ];
  };
  const [a, b] = edge(low);
  const [d, c] = edge(high);
  const lower = laid(track, [line(...a, ...b)]);
  const upper = laid(track, [line(...c, ...d)]);
  const chain = [...lower, ...upper];
  const ends = [lower.length - 1, chain.length - 1];
  return chain.flatMap((e, i) => {
    const next = chain[(i + 1) % chain.length]!;
    return ends.includes(i)
      ? [e, line(e.x1, e.y1, next.x0, next.y0)]
      : [withEnds(e, e.x0, e.y0, next.x0, next.y0)];
  });
}
