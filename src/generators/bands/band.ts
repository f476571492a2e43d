import { intersect } from '../../geometry/boolean.js';
import { closedChain } from '../../geometry/chain.js';
import { drawRegion } from '../../geometry/draw-region.js';
import { type Edge, line } from '../../geometry/edge.js';
import { offset } from '../../geometry/offset.js';
import type { Pen } from '../../geometry/pen.js';
import { area, type Contour, polygon, type Region, reversedContour } from '../../geometry/region.js';
import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import { placer } from '../field.js';
import { num } from '../values.js';
import { bentFrame } from './bent-frame.js';
import { crossTrack } from './cross.js';
import { hasCorners } from './frame.js';
import { type Laid, type Room, unwarped, type Wish } from './room.js';
import { ringTrack } from './round.js';
import { staveTrack, staveWindow } from './stave-track.js';
import { laid, type Track, trackLength } from './track.js';

/** A track with what borders and ends the band on it. */
export interface Band extends Laid {
  readonly half: number;
  /** What the band is cut off by where it runs past the edges of a stave. */
  readonly window: Region | null;
  /** The face, which a piece must reach to be worth drawing. */
  readonly face: Region;
  /** Numbers of the repeats to draw: beyond both ends where those are cut off. */
  readonly first: number;
  readonly last: number;
  /** How far lines must run on past a joint to reach the window's end, mm. */
  readonly beyond: number;
}

/** Lays a track for a band where its parameters say. Throws BadInput or Refusal when there is no room. */
export function layBand(values: Values, outline: Outline, wish: Wish): Band {
  const outer = wish.half + num(values, 'rails') * (num(values, 'lane') + num(values, 'rail'));
  const over = num(values, 'over') + (wish.past ?? 0);
  return bandOn(trackFor(values, outline, { ...wish, outer }), wish.half, over, outline);
}

function trackFor(values: Values, outline: Outline, room: Room): Laid {
  if (values.across === true) return unwarped(crossTrack(values, outline, room));
  if (outline.shape === 'stave') return staveTrack(values, outline, room);
  if (hasCorners(outline)) return unwarped(bentFrame(values, outline, room));
  return unwarped(ringTrack(values, outline, room));
}

/** The band on a track laid already. */
export function bandOn({ track, warp, share }: Laid, half: number, over: number, outline: Outline): Band {
  const joint = track.ends === 'joint';
  const more = joint ? Math.ceil((2 * over + 1) / track.repeat) : 0;
  return {
    track,
    warp,
    share,
    half,
    window: joint ? staveWindow(outline, over) : null,
    face: outline.face,
    first: -more,
    last: track.repeats - 1 + more,
    beyond: 2 * over + 1,
  };
}

/**
 * Draws a piece of the band, less what lies past its ends. Pieces that do not reach the face are left out. Corners
 * that the cut leaves are rounded by `round` mm, by less where a warp has made straps thinner: they must survive it.
 */
export function drawPiece(pen: Pen, band: Band, name: string, region: Region, round = 0): void {
  let kept = band.warp ? warped(band.warp, region) : region;
  if (band.window) {
    const where = placer(band.window)(kept);
    if (where === 'outside') return;
    if (where === 'across') kept = opened(intersect(kept, band.window), round * band.share);
    if (area(intersect(kept, band.face)) < LEAST_SHOWN) return;
  }
  if (kept.contours.length === 0) return;
  pen.piece(name);
  drawRegion(pen, kept);
}

/** A region of the strip, laid on the face. */
function warped(track: Track, region: Region): Region {
  return { contours: region.contours.map((c) => closedChain(laid(track, c))) };
}

/** The region with its corners rounded and what is narrower than a disc of this radius left out. */
export function opened(region: Region, radius: number): Region {
  return offset(offset(region, -radius), radius);
}

/** A piece that shows less than this on the face is not worth cutting, mm2. */
const LEAST_SHOWN = 1;

/** The closed chain of edges along one line of a closed track. */
export function rim(track: Track, t: number): Contour {
  return closedChain(track.along(t, 0, trackLength(track)));
}

/** The strip between two lines along the band, the whole way: two rims, or a strip cut off at the ends. */
export function stripe(band: Band, t0: number, t1: number): Region {
  const { track } = band;
  if (track.ends === 'closed') return { contours: [rim(track, t0), reversedContour(rim(track, t1))] };
  const from = band.first * track.repeat;
  const to = (band.last + 1) * track.repeat;
  const low = track.along(t0, from, to);
  const high = track.along(t1, to, from);
  const a = low[low.length - 1]!;
  const b = high[0]!;
  const c = high[high.length - 1]!;
  const d = low[0]!;
  const ends = (p: Edge, q: Edge): Edge => line(p.x1, p.y1, q.x0, q.y0);
  return { contours: [[...low, ends(a, b), ...high, ends(c, d)]] };
}

/** Draws the border lines on both sides of the band. */
export function drawRails(pen: Pen, band: Band, values: Values): void {
  const rail = num(values, 'rail');
  const lane = num(values, 'lane');
  for (let k = 0; k < num(values, 'rails'); k++) {
    const near = band.half + lane + k * (rail + lane);
    drawPiece(pen, band, `lower rail ${k + 1}`, stripe(band, -near - rail, -near));
    drawPiece(pen, band, `upper rail ${k + 1}`, stripe(band, near, near + rail));
  }
}

/** A rectangle of the strip as a closed chain, counter-clockwise. */
export function box(s0: number, s1: number, t0: number, t1: number): Contour {
  return polygon([
    [s0, t0],
    [s1, t0],
    [s1, t1],
    [s0, t1],
  ]);
}
