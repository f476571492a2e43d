import { bulgedContour, type Region } from '../../geometry/region.js';
import { atan2, tan } from '../../geometry/trig.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { polar, UP } from './polar.js';
import { annulus, drawDisc, drawPiece, size, stageOf } from './stage.js';

export const rings: Generator = {
  name: 'rings',
  title: 'Rings',
  family: 'radial',
  summary: 'Concentric rings of one width or in progression, whole or in segments, round a disc.',
  parameters: [
    {
      kind: 'count',
      name: 'rings',
      meaning: 'Number of rings; 0 for as many as fit.',
      say: 'numbering …',
      zero: 'as many as fit',
      default: 0,
      min: 0,
      max: 200,
    },
    length('ring', 'Width of the outermost ring.', 'the outermost … wide', 6.4, 0.2),
    {
      kind: 'number',
      name: 'progression',
      meaning: 'Width of each ring as a share of the next one out; 1 for rings of one width.',
      say: 'each … as wide as the next one out',
      often: [0.5, 1.2],
      default: 0.85,
      min: 0.2,
      max: 3,
    },
    length(
      'least',
      'Width below which no more rings follow in a progression.',
      'none narrower than …',
      4,
      0.2,
    ),
    length('gap', 'Width of the walls between rings, segments and disc.', 'walls … wide', 4.2, 0.2),
    {
      kind: 'count',
      name: 'segments',
      meaning: 'Number of equal segments of each ring; 0 for whole rings.',
      say: 'each parted into … segments',
      one: 'each parted into … segment',
      zero: 'no',
      often: [0, 36],
      default: 0,
      min: 0,
      max: 120,
    },
    {
      kind: 'flag',
      name: 'stagger',
      meaning: 'Whether the segments of every second ring are moved on by half a segment.',
      say: 'every second ring … by half a segment',
      words: ['moved on', 'not moved on'],
      default: true,
    },
    length(
      'eye',
      'Diameter that the rings leave free in the middle, at least.',
      '… left free in the middle',
      12,
      0,
      3000,
    ),
    {
      kind: 'flag',
      name: 'disc',
      meaning: 'Whether a disc fills what the rings leave in the middle.',
      say: 'the middle … by a disc',
      words: ['filled', 'not filled'],
      default: true,
    },
    size,
    turn,
    seed,
  ],
  draw(values, outline, pen) {
    const stage = stageOf(values, outline, pen);
    const gap = num(values, 'gap');
    const eye = Math.max(stage.bore, num(values, 'eye') / 2);
    const laid = ringsOf(values, stage.radius, eye);
    checkNumber(num(values, 'segments'), laid.length);
    laid.forEach(({ outer, inner }, k) => {
      const shift = values.stagger === true && k % 2 === 1;
      segmentsOf(values, outer, inner, shift).forEach((region, i, all) => {
        drawPiece(stage.pen, all.length > 1 ? `ring ${k + 1}, segment ${i + 1}` : `ring ${k + 1}`, region);
      });
    });
    const left = laid[laid.length - 1]!.inner - gap;
    if (values.disc === true && stage.bore === 0 && left > 0) drawDisc(stage.pen, 'disc', left);
  },
};

/** The most segments a pattern may have. */
const MOST = 2000;

function checkNumber(segments: number, rings: number): void {
  if (segments * rings <= MOST) return;
  throw new Refusal(
    'too-large',
    `pattern.segments: ${segments * rings} segments are more than ${MOST}; use ${Math.floor(MOST / rings)} at most in each of ${rings} rings`,
  );
}

/** A ring between two radii, mm. */
export interface Ring {
  readonly outer: number;
  readonly inner: number;
}

/** The rings from the outside in. Throws BadInput when the asked number does not fit round the eye. */
export function ringsOf(values: Values, radius: number, eye: number): Ring[] {
  const asked = num(values, 'rings');
  const gap = num(values, 'gap');
  const out: Ring[] = [];
  let outer = radius;
  let width = num(values, 'ring');
  // Rings that are thinner from the first are what was asked for.
  const least = Math.min(num(values, 'least'), width);
  while (outer - width >= eye && width >= least && (asked === 0 || out.length < asked)) {
    out.push({ outer, inner: outer - width });
    outer -= width + gap;
    width *= num(values, 'progression');
  }
  if (out.length === 0)
    throw bad(
      'ring',
      `${mm(width)} does not fit round the eye; make it ${mm(Math.max(0.2, radius - eye))} at most`,
    );
  if (out.length < asked)
    throw bad(
      'rings',
      `${asked} do not fit round the eye, or get too narrow; use ${out.length} at most, narrower ones, or a smaller least`,
    );
  return out;
}

/** The ring in segments, with walls of one width between their ends; whole when there are none. */
function segmentsOf(values: Values, outer: number, inner: number, shift: boolean): Region[] {
  const n = num(values, 'segments');
  if (n === 0) return [annulus(outer, inner)];
  const gap = num(values, 'gap');
  // Half the angle that a segment spans at a radius: its ends lie half a wall off the lines between segments.
  const half = (r: number): number => {
    const sine = gap / 2 / r;
    return sine < 1 ? Math.PI / n - atan2(sine, Math.sqrt(1 - sine * sine)) : 0;
  };
  if (half(inner) <= 0) {
    const most = Math.floor(
      Math.PI / atan2(gap / 2, Math.sqrt(Math.max(0, inner * inner - (gap * gap) / 4))),
    );
    throw bad('segments', `${n} leave nothing of the inmost ring; use ${most} at most, or fewer rings`);
  }
  const first = num(values, 'turn') + UP + (shift ? Math.PI / n : 0);
  return Array.from({ length: n }, (_, i): Region => {
    const middle = first + (Math.PI * (2 * i + 1)) / n;
    const corner = (r: number, side: 1 | -1, bulge: number): { x: number; y: number; bulge: number } => {
      const [x, y] = polar(r, middle + side * half(r));
      return { x, y, bulge };
    };
    const arc = (r: number): number => tan(half(r) / 2);
    return {
      contours: [
        bulgedContour([
          corner(outer, -1, arc(outer)),
          corner(outer, 1, 0),
          corner(inner, 1, -arc(inner)),
          corner(inner, -1, 0),
        ]),
      ],
    };
  });
}
