import type { Vector } from '../../geometry/bezier.js';
import { subtract } from '../../geometry/boolean.js';
import { drawContour } from '../../geometry/draw-region.js';
import type { Pen } from '../../geometry/pen.js';
import { bulgedContour, type Contour, circle, type Region, reversedContour } from '../../geometry/region.js';
import { stroke } from '../../geometry/stroke.js';
import { placed } from '../../geometry/transform.js';
import { atan2, cos, sin } from '../../geometry/trig.js';
import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num } from '../values.js';
import { type Band, bandOn, drawPiece, drawRails, layBand, opened } from './band.js';
import { hasCorners } from './frame.js';
import { bandParameters } from './parameters.js';
import { repeatsOn, unwarped } from './room.js';
import { drawFrameRails } from './sharp-frame.js';
import { along, middleSides, type Station, stations } from './stations.js';
import { straightTrack } from './tracks.js';

export const chain: Generator = {
  name: 'chain',
  title: 'Chain band',
  family: 'bands',
  summary: 'Discs, ovals or rings in a row, or links that pass over and under each other.',
  parameters: bandParameters(
    [
      {
        kind: 'choice',
        name: 'link',
        meaning: 'What the chain is made of.',
        say: '… links',
        default: 'interlocked',
        options: [
          { value: 'interlocked', meaning: 'links that hold each other' },
          { value: 'oval', meaning: 'ovals side by side, discs at corners' },
          { value: 'disc', meaning: 'discs side by side' },
          { value: 'ring', meaning: 'rings side by side' },
        ],
      },
      length('height', 'Height of the band.', 'the band … high', 17, 1, 500),
      length(
        'repeat',
        'Length from link to link that is wished for; 0 for as close as the gap lets.',
        { say: 'a step of … from link to link', zero: 'least length' },
        0,
        0,
        3000,
      ),
      length('strap', 'Width of the strap that a link or ring is made of.', 'straps … wide', 4, 0.2, 200),
      length(
        'gap',
        'Field left between links, and beside one that passes over another.',
        'links … apart',
        4,
        0.2,
        200,
      ),
      length(
        'disc',
        'Diameter of a disc in the middle of each ring; 0 for none.',
        { say: '… disc in each ring', often: [0, 12], zero: 'no' },
        0,
        0,
        200,
      ),
    ],
    false,
  ),
  draw(values, outline, pen) {
    if (values.link === 'interlocked') drawInterlocked(values, outline, pen);
    else drawRow(values, outline, pen);
  },
};

/** A stadium about (0, 0), long side along x, counter-clockwise from the middle of its upper side. */
function stadium(long: number, high: number): Contour {
  const r = high / 2;
  const x = Math.max(0, (long - high) / 2);
  const quarter = Math.SQRT2 - 1;
  const points = [
    { x: 0, y: r, bulge: 0 },
    { x: -x, y: r, bulge: quarter },
    { x: -x - r, y: 0, bulge: quarter },
    { x: -x, y: -r, bulge: 0 },
    { x: 0, y: -r, bulge: 0 },
    { x, y: -r, bulge: quarter },
    { x: x + r, y: 0, bulge: quarter },
    { x, y: r, bulge: 0 },
  ];
  return bulgedContour(x > 1e-9 ? points : points.filter((p) => p.bulge !== 0));
}

function at(station: Station, contour: Contour): Contour {
  return placed(contour, ...station.at, atan2(station.heading[1], station.heading[0]));
}

/** Links side by side, each whole. */
function drawRow(values: Values, outline: Outline, pen: Pen): void {
  const height = num(values, 'height');
  const gap = num(values, 'gap');
  const strap = num(values, 'strap');
  const oval = values.link === 'oval';
  const asked = num(values, 'repeat');
  // Places on a circle are nearer than along it: by 1 % for a dozen.
  const least = ((oval ? Math.max(asked, 1.2 * height + gap) : height + gap) * 102) / 100;
  const repeat = asked === 0 ? (oval ? 1.7 * height + gap : least) : asked;
  const longOf = (room: number): number => (oval ? Math.max(height, room - gap) : height);
  const wish = { half: height / 2, repeat, least, depth: 0 };
  const { band, places } = stations(values, outline, wish, (room) => (longOf(room) - height) / 2);
  const hollow = values.link === 'ring' ? height - 2 * strap : 0;
  if (values.link === 'ring' && hollow <= 0)
    throw bad('strap', `${mm(strap)} leaves no opening; use less than ${mm(height / 2)}`);
  const disc = values.link === 'ring' ? num(values, 'disc') : 0;
  if (disc > 0 && disc >= hollow)
    throw bad('disc', `${mm(disc)} fills the rings; use less than ${mm(hollow)}`);
  places.forEach((station, k) => {
    const long = station.corner ? height : longOf(station.room);
    const contours = [at(station, stadium(long, height))];
    if (hollow > 0) contours.push(reversedContour(at(station, stadium(hollow, hollow))));
    drawPiece(pen, band, `link ${k + 1}`, { contours });
    if (disc > 0) drawPiece(pen, band, `disc ${k + 1}`, { contours: [circle(...station.at, disc / 2)] });
  });
  if (hasCorners(outline) && values.across !== true) drawFrameRails(pen, values, outline, height);
  else drawRails(pen, band, values);
}

/** Links that hold each other; on a frame each side has a chain of its own between rings at the corners. */
function drawInterlocked(values: Values, outline: Outline, pen: Pen): void {
  const height = num(values, 'height');
  const strap = num(values, 'strap');
  const gap = num(values, 'gap');
  const lap = strap + gap;
  if (height < 2 * strap + lap)
    throw bad(
      'height',
      `${mm(height)} is too low for links of ${mm(strap)}; use ${mm(2 * strap + lap)} or more`,
    );
  // A link's neighbours on either side stay a gap apart, and a link is no shorter than it is high.
  const joint = outline.shape === 'stave' && values.across !== true;
  const least = Math.max(2 * lap, height - strap - lap, joint ? jointRoom(height, strap, gap) : 0);
  const repeat = Math.max(least, num(values, 'repeat') || 1.15 * least);
  // Beyond the outermost places links reach half their lap, half a strap more.
  const wish = { half: height / 2, repeat, least, caps: (lap + strap) / 2, depth: 0.15 * height };
  if (!hasCorners(outline) || values.across === true) {
    const band = layBand(values, outline, wish);
    drawLinks(values, band, pen, '');
    drawRails(pen, band, values);
    return;
  }
  middleSides(values, outline, wish.half).forEach(({ start, heading, length }, i) => {
    const from = wish.half + gap + wish.caps;
    const run = length - 2 * from;
    const n = repeatsOn(run, 1, wish);
    const at: Vector = [start[0] + from * cos(heading), start[1] + from * sin(heading)];
    const track = straightTrack('free', at, heading, n, run / n);
    drawLinks(values, bandOn(unwarped(track), wish.half, 0, outline), pen, `side ${i + 1}, `);
    drawRoundel(pen, `corner ${i + 1}`, start, { height, strap, gap });
  });
  drawFrameRails(pen, values, outline, height);
}

/**
 * The length of a link that a joint runs through: its straps' ends, where they go under the neighbours', must lie so
 * far off the joint that both are whole there, mm.
 */
function jointRoom(height: number, strap: number, gap: number): number {
  const radius = (height - strap) / 2;
  // The neighbour's round end keeps all free within half a strap and a gap; the strap's inner edge reaches in furthest.
  const kept = radius + strap / 2 + gap;
  const inner = radius - strap / 2;
  const cut = Math.sqrt(kept * kept - inner * inner) + (strap + gap) / 2 - radius;
  return 2 * (cut + 1.1 * strap);
}

/** A ring with a disc in it where there is room for one that is as wide as the ring's strap. */
function drawRoundel(
  pen: Pen,
  name: string,
  [x, y]: Vector,
  { height, strap, gap }: { height: number; strap: number; gap: number },
): void {
  pen.piece(name);
  drawContour(pen, circle(x, y, height / 2));
  drawContour(pen, reversedContour(circle(x, y, height / 2 - strap)));
  const disc = height / 2 - strap - gap;
  if (2 * disc < strap) return;
  pen.piece(`${name} disc`);
  drawContour(pen, circle(x, y, disc));
}

/** One chain: each link passes over the next above the band's middle and under it below. */
function drawLinks(values: Values, band: Band, pen: Pen, name: string): void {
  const strap = num(values, 'strap');
  const gap = num(values, 'gap');
  const height = num(values, 'height');
  const closed = band.track.ends === 'closed';
  // A joint runs through the middle of a link, where it has two strands square to the joint.
  const straight = (room: number): number => Math.max(0, room + strap + gap - (height - strap)) / 2;
  const places = along(band, straight, band.track.ends === 'joint' ? 0 : 0.5);
  const middles = places.map((p) => at(p, stadium(p.room + strap + gap, height - strap)));
  places.forEach((_, k) => {
    let link: Region = stroke(middles[k]!, strap, { closed: true });
    const before = k > 0 ? k - 1 : closed ? places.length - 1 : -1;
    const after = k + 1 < places.length ? k + 1 : closed ? 0 : -1;
    if (before >= 0) link = subtract(link, cover(middles[before]!, 'upper right', strap + 2 * gap));
    if (after >= 0) link = subtract(link, cover(middles[after]!, 'lower left', strap + 2 * gap));
    drawPiece(pen, band, `${name}link ${k + 1}`, opened(link, ROUND * strap), ROUND * strap);
  });
}

/** Radius of a link's cut ends in strap widths: a little under half, so that its sides stay. */
const ROUND = 0.45;

/** What a quarter of a link keeps free of the links below it. */
function cover(middle: Contour, quarter: 'upper right' | 'lower left', width: number): Region {
  const n = middle.length;
  const part = quarter === 'upper right' ? middle.slice((3 * n) / 4) : middle.slice(n / 4, n / 2);
  return stroke(part, width, { closed: false });
}
