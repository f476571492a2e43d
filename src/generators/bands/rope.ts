import { closedChain } from '../../geometry/chain.js';
import { reversed } from '../../geometry/edge.js';
import { offset } from '../../geometry/offset.js';
import type { Parametric } from '../../geometry/parametric.js';
import type { Contour } from '../../geometry/region.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num } from '../values.js';
import { drawPiece, drawRails, layBand } from './band.js';
import { bandParameters, repeatParameter } from './parameters.js';
import { laidCurve, type Track } from './track.js';

export const rope: Generator = {
  name: 'rope',
  title: 'Rope band',
  family: 'bands',
  summary: 'The strands of a twisted rope, parted by even gaps.',
  parameters: bandParameters(
    [
      length('height', 'Height of the band.', 'the band … high', 15, 1, 500),
      repeatParameter(12),
      length('gap', 'Field left between strands.', 'strands … apart', 4.2, 0.2, 200),
      length('round', "Least radius of the strands' ends.", 'strand ends rounded to …', 2.2, 0, 100),
      {
        kind: 'number',
        name: 'twist',
        meaning: 'How many repeats a strand moves along the rope while it crosses from edge to edge.',
        say: 'each strand crossing over … repeats',
        default: 1.4,
        min: 0.2,
        max: 4,
      },
      {
        kind: 'choice',
        name: 'lay',
        meaning: 'Which way the strands lean.',
        say: 'strands leaning to the …',
        default: 'right',
        options: [
          { value: 'right', meaning: 'up to the right' },
          { value: 'left', meaning: 'up to the left' },
        ],
      },
    ],
    true,
  ),
  draw(values, outline, pen) {
    const gap = num(values, 'gap');
    const round = num(values, 'round');
    const half = num(values, 'height') / 2;
    const least = gap + 2 * round;
    const twist = num(values, 'twist') * (values.lay === 'left' ? -1 : 1);
    const band = layBand(values, outline, {
      half,
      repeat: num(values, 'repeat'),
      least: Math.max(least / 2, 0.5),
      past: 2 * round,
      // The outermost strands lean over the ends of their repeats.
      caps: 0.6 * Math.abs(twist) * num(values, 'repeat'),
      bends: 2.6,
    });
    const { track } = band;
    // A joint halves a strand, rather than cut the tips off two.
    const shift = track.ends === 'joint' ? 0 : 0.5;
    let drawn = 0;
    for (let k = band.first; k <= band.last + (track.ends === 'joint' ? 1 : 0); k++) {
      // Grown by half a gap beyond its room on all sides, then moved back in: the gaps come out even.
      const room = { contours: [strandRoom(track, half + gap / 2, twist, k + shift)] };
      const strand = offset(offset(room, -gap / 2 - round), round);
      if (strand.contours.length === 0) continue;
      drawn++;
      drawPiece(pen, band, `strand ${k - band.first + 1}`, strand, round);
    }
    if (drawn === 0)
      throw bad(
        'repeat',
        `${mm(track.repeat)} leaves no strand of ${mm(2 * round)} between gaps; use ${mm(Math.ceil(2 * least))} or more`,
      );
    drawRails(pen, band, values);
  },
};

/** How much of a half turn of the strand's helix is seen: to just short of the rope's edge, radians to either side. */
const SEEN = (72 / 180) * Math.PI;

/** The helix of a strand seen from the side: s grows with the angle, t as its sine. Middle at s = 0; v in -1..1. */
function helix(half: number, lead: number, middle: number): Parametric {
  const height = half / sin(SEEN);
  return {
    point: (v) => [middle + (v * lead) / 2, height * sin(SEEN * v)],
    tangent: (v) => [lead / 2, height * SEEN * cos(SEEN * v)],
  };
}

/** What lies between one helix and the next, counter-clockwise on the strip. */
function strandRoom(track: Track, half: number, twist: number, k: number): Contour {
  const { repeat } = track;
  const lead = twist * repeat;
  const middle = k * repeat;
  const left = helix(half, lead, middle - repeat / 2);
  const right = helix(half, lead, middle + repeat / 2);
  const low = track.along(-half, left.point(-1)[0], right.point(-1)[0]);
  const high = track.along(half, left.point(1)[0], right.point(1)[0]);
  const up = laidCurve(track, right, -1, 1, 4);
  const down = laidCurve(track, left, -1, 1, 4);
  const chain = [...low, ...up, ...back(high), ...back(down)];
  return closedChain(chain);
}

function back(chain: Contour): Contour {
  return chain.map(reversed).reverse();
}
