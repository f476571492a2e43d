import { union } from '../../geometry/boolean.js';
import type { Edge } from '../../geometry/edge.js';
import { offset } from '../../geometry/offset.js';
import type { Parametric } from '../../geometry/parametric.js';
import { circle, type Region } from '../../geometry/region.js';
import { stroke } from '../../geometry/stroke.js';
import { placed } from '../../geometry/transform.js';
import { atan2 } from '../../geometry/trig.js';
import type { Generator } from '../generator.js';
import { length, num } from '../values.js';
import { drawPiece, drawRails, layBand } from './band.js';
import { widened } from './lean.js';
import { bandParameters, repeatParameter } from './parameters.js';
import { arcAbout, laidCurve, type Track } from './track.js';

export const scroll: Generator = {
  name: 'scroll',
  title: 'Running scroll',
  family: 'bands',
  summary: 'Spirals linked by a stem that springs from each to wind into the next.',
  parameters: bandParameters(
    [
      length('strap', 'Width of the stem and spirals.', 'the stem … wide', 4, 0.2, 200),
      length('gap', 'Field left between the turns of a spiral.', 'turns … apart', 4.2, 0.2, 200),
      {
        kind: 'count',
        name: 'halves',
        meaning: 'Half turns of each spiral.',
        say: '… half turns to a spiral',
        default: 2,
        min: 2,
        max: 8,
      },
      repeatParameter(0),
      length(
        'eye',
        "Diameter of the round end in each spiral's middle; 0 for one as wide as the strap.",
        { say: 'spirals ending in rounds of …', often: [0, 12], zero: "the stem's width" },
        0,
        0,
        200,
      ),
    ],
    true,
  ),
  draw(given, outline, pen) {
    const asked = num(given, 'strap');
    const high = (num(given, 'halves') * (asked + num(given, 'gap')) + asked) / 2;
    const values = widened(given, outline, high);
    const strap = num(values, 'strap');
    const pitch = strap + num(values, 'gap');
    const radius = (num(values, 'halves') * pitch) / 2;
    const eye = num(values, 'eye') / 2;
    const band = layBand(values, outline, {
      half: radius + strap / 2,
      repeat: num(values, 'repeat') || 2 * radius + WIDE * pitch,
      least: 2 * radius + NARROW * pitch,
      depth: 0,
      caps: radius + strap / 2,
      past: strap,
      bends: 1.4,
    });
    const { track } = band;
    // A joint runs about half a gap before a spiral, where it crosses the stem alone.
    const shift = track.ends === 'joint' ? radius : 0;
    const last = band.last + (track.ends === 'closed' ? 0 : 1);
    const parts: Region[] = [];
    for (let k = band.first; k <= last; k++) {
      const s = k * track.repeat + shift;
      const spiral = laidSpiral(track, s, radius, pitch);
      // At a free end the first spiral has nothing to spring from.
      const springs = track.ends !== 'free' || k > band.first;
      const path = springs ? [...laidStem(track, s, radius), ...spiral] : spiral;
      parts.push(stroke(path, strap, { closed: false, cap: 'round' }));
      const end = spiral[spiral.length - 1]!;
      if (eye > strap / 2) parts.push({ contours: [circle(end.x1, end.y1, eye)] });
    }
    // The sharp places where a stem springs from a spiral are filled as a cutter a little narrower than the gap would.
    const fill = FILL * (pitch - strap);
    drawPiece(pen, band, 'scroll', offset(offset(union(parts), fill), -fill), 0.45 * strap);
    drawRails(pen, band, values);
  },
};

/** Room along the band beside a spiral, in pitches: what suits, and the least that keeps the stem off both spirals. */
const WIDE = 1.9;
const NARROW = 1.45;

/** Radius of the filling in gaps. */
const FILL = 0.42;

/** How far the stem's curve keeps level where it springs and where it arrives: its handles, in repeats. */
const FIRST = 0.75;
const LAST = 0.56;

/** The stem from the bottom of the spiral before to the top of the one at s, level at both ends. */
function laidStem(track: Track, s: number, radius: number): Edge[] {
  const stem: Parametric = {
    point(v) {
      const w = 1 - v;
      const along = 3 * w * w * v * FIRST + 3 * w * v * v * (1 - LAST) + v * v * v;
      return [s + (along - 1) * track.repeat, radius * (2 * v * v * (3 - 2 * v) - 1)];
    },
    tangent(v) {
      const w = 1 - v;
      const along = 3 * w * w * FIRST + 6 * w * v * (1 - LAST - FIRST) + 3 * v * v * LAST;
      return [along * track.repeat, 12 * radius * v * w];
    },
  };
  return laidCurve(track, stem, 0, 1, 4);
}

/**
 * A spiral of half circles from its top at s, winding clockwise, each half a pitch smaller than the one before, so that
 * turns lie one pitch apart and top and bottom are level. It is not bent with the band.
 */
function laidSpiral(track: Track, s: number, radius: number, pitch: number): Edge[] {
  const path: Edge[] = [];
  let y = radius;
  let sense = 1;
  for (let r = radius; r > 1e-9; r -= pitch / 2) {
    const next = y - 2 * sense * r;
    path.push(...arcAbout([0, y - sense * r], [0, y], [0, next], -Math.PI));
    y = next;
    sense = -sense;
  }
  const { at, along } = track.spot(s, 0);
  return [...placed(path, at[0], at[1], atan2(along[1], along[0]))];
}
