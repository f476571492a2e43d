import { type Box, bounds, type Contour, circle, distanceToEdge } from '../../geometry/region.js';
import type { Ball, Boundary } from '../../geometry/thicken/balls.js';
import { bandOf, radiusOf, type Stretched, stretched } from '../../geometry/thicken/band.js';
import { decided } from '../../geometry/thicken/decided.js';
import { limbs } from '../../geometry/thicken/limbs.js';
import type { Run } from '../../geometry/thicken/runs.js';
import { runLength } from '../../geometry/thicken/stretches.js';
import { SPARE } from '../../geometry/tolerances.js';
import { alongAxis } from './along-axis.js';
import { type Dot, homeOf, NEARLY, narrowPlaces, type Side } from './narrow.js';
import { roomOf, type Wanted } from './room.js';
import { type Span, shifted, shiftsOf, spanOf } from './shift.js';

/** The outside of a limb's bend goes out to a point up to this many half-widths away: bends of 37 degrees and more. */
const MITER = 3.2;

/** What makes a narrow place as wide as asked: taken from the pieces beside a gap, or added to the piece of a limb. */
export interface Band {
  readonly contours: readonly Contour[];
  readonly box: Box;
  readonly what: Stretched;
  /** Points of its middle line. */
  readonly middle: readonly (readonly [number, number])[];
  /** Numbers of the contours on either side. */
  readonly homes: readonly number[];
}

/** What bands are to do. */
export interface Wish {
  readonly side: Side;
  /** Half the width asked, mm. */
  readonly h: number;
  /** Widths to be left beside them, mm, the one wished for first. */
  readonly keeps: readonly number[];
  /** Whether what lies beyond the sides may be widened too and takes its share. */
  readonly shared: boolean;
  /** As in `Wanted`. */
  readonly behind?: number;
  /** Radius that all corners have, mm. */
  readonly rounding: number;
}

/**
 * Bands for all narrow places of sound contours whose sides can give what is lacking. Between the same two contours a
 * place is opened as a whole or not at all.
 */
export function bandsFor(contours: readonly Contour[], wish: Wish): Band[] {
  const { side, h, keeps, rounding } = wish;
  const { boundary, runs, dots } = narrowPlaces(contours, h, side);
  const able = runs.flatMap((run) => withRoom(boundary, run, wish));
  // A gap's axis is followed as it is, so that a disc gets through, and so is a short neck's of a limb. Longer limbs are
  // put together as strokes are drawn, with their ends and corners.
  const isPlain = (run: Run): boolean => side === 'gap' || isNeck(run, h);
  const strokes = able.filter((run) => !isPlain(run));
  const lines = [
    ...able
      .filter(isPlain)
      .map((run, k) => ({ own: [run], make: () => alongAxis(boundary, run, radiusOf(h, k)) })),
    ...limbs(boundary, strokes, h, { sharpest: 1 / MITER, rounding }).map((limb, k) => ({
      own: limb.runs.map((i) => strokes[i]!),
      make: () => bandOf(limb, radiusOf(h, k), MITER * 1.02),
    })),
  ];
  const out = lines.flatMap(({ own, make }): Band[] => {
    const band = decided(make);
    if (!band || band.length === 0) return [];
    const balls = own.flatMap((run) => run.balls);
    const homes = balls
      .filter((ball) => ball.w < h)
      .flatMap((ball) => [homeOf(boundary, ball.p), homeOf(boundary, ball.q)]);
    return [
      {
        contours: band,
        box: bounds(band),
        what: stretched(own),
        middle: balls.map((ball) => [ball.x, ball.y]),
        homes: [...new Set(homes)],
      },
    ];
  });
  const least = keeps[keeps.length - 1]!;
  return [...out, ...dots.flatMap((dot) => dotBand(boundary, dot, h, least))];
}

/** Whether a stretch is short and leads from one wide place to another. */
function isNeck({ balls, closed }: Run, h: number): boolean {
  return !closed && balls[0]!.w >= h && balls[balls.length - 1]!.w >= h && runLength(balls) < 2 * h;
}

/** The stretches of a run that can be made as wide as asked, their balls moved where one side gives more. */
function withRoom(b: Boundary, run: Run, { side, h, keeps, shared, behind }: Wish): Run[] {
  const units = byNeighbours(b, run).map((balls) => {
    for (const keep of keeps) {
      const spans = spansOf(b, balls, { side, h, keep, shared, ...(behind === undefined ? {} : { behind }) });
      if (!spans) continue;
      // Limbs grow on their own middle lines or not at all.
      if (side === 'limb' && spans.some((s) => s.least > 0 || s.most < 0)) continue;
      return { balls, by: shiftsOf(balls, spans, h) };
    }
    return null;
  });
  const out: Run[] = [];
  let own: NonNullable<(typeof units)[number]>[] = [];
  const finish = (closed: boolean): void => {
    const balls = own.flatMap((u) => u.balls);
    const by = own.flatMap((u) => u.by);
    if (balls.length > 0) out.push({ balls: shifted(balls, by), closed });
    own = [];
  };
  for (const unit of units)
    if (unit) own.push(unit);
    else finish(false);
  finish(run.closed && own.length === units.length);
  return out;
}

function spansOf(b: Boundary, balls: readonly Ball[], wanted: Wanted): Span[] | null {
  const out: Span[] = [];
  for (const ball of balls) {
    const room = ball.w < wanted.h ? roomOf(b, ball, wanted) : { left: 0, right: 0 };
    const span = spanOf(ball.w, room, wanted.h);
    if (!span) return null;
    out.push(span);
  }
  return out;
}

/** A run cut where it comes between other contours. */
function byNeighbours(b: Boundary, run: Run): Ball[][] {
  const out: Ball[][] = [];
  let before = '';
  for (const ball of run.balls) {
    const [i, j] = [homeOf(b, ball.p), homeOf(b, ball.q)];
    const key = i < j ? `${i} ${j}` : `${j} ${i}`;
    if (key === before) out[out.length - 1]!.push(ball);
    else out.push([ball]);
    before = key;
  }
  return out;
}

/** A dot or a small hole that no disc of radius h fits in: the disc itself, where nothing else is too near. */
function dotBand(b: Boundary, { contour, at: [x, y], w }: Dot, h: number, keep: number): Band[] {
  const [from, to] = [b.first[contour]!, b.first[contour + 1]!];
  const apart = h + keep + NEARLY;
  for (const j of b.index.near({ minX: x, maxX: x, minY: y, maxY: y }, apart))
    if ((j < from || j >= to) && distanceToEdge(b.edges[j]!, x, y) < apart) return [];
  const disc = circle(x, y, h + SPARE);
  return [
    {
      contours: [disc],
      box: bounds([disc]),
      what: { at: [x, y], length: 2 * w, width: 2 * w },
      middle: [[x, y]],
      homes: [contour],
    },
  ];
}
