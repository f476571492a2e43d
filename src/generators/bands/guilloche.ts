import { subtract } from '../../geometry/boolean.js';
import { type Edge, reversed } from '../../geometry/edge.js';
import { circle, type Region } from '../../geometry/region.js';
import { stroke } from '../../geometry/stroke.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num } from '../values.js';
import { type Band, drawPiece, drawRails, layBand, opened } from './band.js';
import { bandParameters, repeatParameter } from './parameters.js';
import { type Crossing, crossingsOf, PHASE } from './plait.js';
import { ahead, before, laidStrand, shortestWave, wavy } from './strand.js';
import { arcAbout } from './track.js';

export const guilloche: Generator = {
  name: 'guilloche',
  title: 'Guilloche band',
  family: 'bands',
  summary: 'Two or three wavy strands plaited over and under, with discs in the eyes.',
  parameters: bandParameters(
    [
      {
        kind: 'count',
        name: 'strands',
        meaning: 'Number of strands.',
        say: '… strands',
        default: 2,
        min: 2,
        max: 3,
      },
      length('height', 'Height of the band.', 'the band … high', 24, 1, 500),
      repeatParameter(0),
      length('strap', 'Width of a strand.', 'strands … wide', 4.4, 0.2, 200),
      length(
        'gap',
        'Field left on both sides of a strand where another passes under it.',
        'gaps of … where one passes under',
        4.2,
        0.2,
        200,
      ),
      length(
        'disc',
        'Diameter of the discs in the eyes between two strands; 0 for none.',
        { say: '… discs in the eyes', zero: 'no' },
        5,
        0,
        200,
      ),
    ],
    true,
  ),
  draw(values, outline, pen) {
    const strands = num(values, 'strands');
    const strap = num(values, 'strap');
    const half = num(values, 'height') / 2;
    const height = half - strap / 2;
    if (height < strap)
      throw bad(
        'height',
        `${mm(2 * half)} is too low for strands of ${mm(strap)}; use ${mm(3 * strap)} or more`,
      );
    const gap = num(values, 'gap');
    const repeat = num(values, 'repeat') || (strands === 2 ? 50 : 65) * (half / 12);
    // Room for a strand and a gap at every crossing, and bends that the strand's width can follow.
    const least = Math.max(strands * (strap + gap), shortestWave(height, strap));
    const band = layBand(values, outline, {
      half,
      repeat,
      least,
      caps: strands === 2 ? half : strap / 2,
      depth: half / 2,
    });
    const weave = { strap, gap, height, strands };
    lengthsOf(band, weave).forEach(({ path, cuts }, k) => {
      let region = stroke(path, strap, { closed: false });
      for (const cut of cuts) region = subtract(region, cut);
      drawPiece(pen, band, `strand ${k + 1}`, opened(region, ROUND * strap), ROUND * strap);
    });
    if (strands === 2) drawEyes(pen, band, num(values, 'disc') / 2);
    drawRails(pen, band, values);
  },
};

/** Radius of the strands' ends in widths: a little under half, so that the sides stay. */
const ROUND = 0.45;

interface Weave {
  readonly strands: number;
  readonly strap: number;
  readonly gap: number;
  /** How far the middle of a strand swings to either side, mm. */
  readonly height: number;
}

/** One length of strand between two places where it passes under, and what it loses to the strands above. */
interface Length {
  readonly path: Edge[];
  readonly cuts: readonly Region[];
}

function lengthsOf(band: Band, weave: Weave): Length[] {
  const { track } = band;
  const n = track.repeats;
  const curve = (k: number) => wavy(track, weave.height, k / weave.strands + PHASE[weave.strands]!);
  const path = (k: number, u0: number, u1: number): Edge[] => laidStrand(track, curve(k), u0, u1);
  // Half way to the next crossing, and a little more, the strand above is clear of the one below.
  const reach = 0.75 / (2 * weave.strands);
  const made = new Map<Crossing, Region>();
  // Two lengths end at every crossing: what the strand above cuts off is worked out once.
  const cut = (c: Crossing): Region => {
    const known = made.get(c);
    if (known) return known;
    const over = path(c.over, c.u - reach, c.u + reach);
    const region = stroke(over, weave.strap + 2 * weave.gap, { closed: false });
    made.set(c, region);
    return region;
  };
  const all = crossingsOf(weave.strands, n);
  const out: Length[] = [];
  const starts: Length[] = [];
  const ends: Length[] = [];
  for (let k = 0; k < weave.strands; k++) {
    const unders = all.filter((c) => c.under === k);
    const first = unders[0]!;
    const last = unders[unders.length - 1]!;
    for (let i = 0; i + 1 < unders.length; i++) {
      const [a, b] = [unders[i]!, unders[i + 1]!];
      out.push({ path: path(k, a.u, b.u), cuts: [cut(a), cut(b)] });
    }
    const around = {
      path: path(k, last.u, first.u + n),
      cuts: [cut(last), cut({ ...first, u: first.u + n })],
    };
    if (track.ends === 'closed') out.push(around);
    else if (track.ends === 'joint' && weave.strands > 2) {
      // Cut by both joints, at no square angle: the same length of strand once at either.
      const start = {
        path: path(k, last.u - n, first.u),
        cuts: [cut({ ...last, u: last.u - n }), cut(first)],
      };
      out.push(start, around);
    } else {
      starts.push({ path: path(k, 0, first.u), cuts: [cut(first)] });
      ends.push({ path: path(k, last.u, n), cuts: [cut(last)] });
    }
  }
  return [...out, ...finished(band, starts, ends)];
}

/** The first and last lengths: run on past a joint, or two strands turned into each other at free ends. */
function finished({ track, beyond }: Band, starts: readonly Length[], ends: readonly Length[]): Length[] {
  if (track.ends === 'joint')
    return [
      ...starts.map((s) => ({ ...s, path: before(s.path, beyond) })),
      ...ends.map((s) => ({ ...s, path: ahead(s.path, beyond) })),
    ];
  if (track.ends !== 'free' || starts.length !== 2) return [...starts, ...ends];
  const turned = (from: Length, to: Length, s: number): Length => {
    const a = from.path[from.path.length - 1]!;
    const b = to.path[0]!;
    const centre = track.spot(s, 0).at;
    // Counter-clockwise round the left end from the upper strand to the lower, and round the right end back up.
    const round = arcAbout(centre, [a.x1, a.y1], [b.x0, b.y0], Math.PI);
    return { path: [...from.path, ...round, ...to.path], cuts: [...from.cuts, ...to.cuts] };
  };
  const back = (l: Length): Length => ({ ...l, path: l.path.map(reversed).reverse() });
  const [upper, lower] = [0, 1];
  return [
    turned(back(starts[upper]!), starts[lower]!, 0),
    turned(ends[lower]!, back(ends[upper]!), track.repeats * track.repeat),
  ];
}

/** A disc in every eye of two strands: where they are furthest apart. */
function drawEyes(pen: Parameters<typeof drawPiece>[0], band: Band, radius: number): void {
  if (radius === 0) return;
  const { track } = band;
  const count = 2 * track.repeats + (track.ends === 'closed' ? 0 : 1);
  for (let k = 0; k < count; k++) {
    const [x, y] = track.spot((k * track.repeat) / 2, 0).at;
    drawPiece(pen, band, `eye ${k + 1}`, { contours: [circle(x, y, radius)] });
  }
}
