import { subtract } from '../../geometry/boolean.js';
import { closedChain } from '../../geometry/chain.js';
import { offset } from '../../geometry/offset.js';
import type { Pen } from '../../geometry/pen.js';
import type { Region } from '../../geometry/region.js';
import { reversedContour } from '../../geometry/region.js';
import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num } from '../values.js';
import { drawPiece, drawRails, layBand, opened } from './band.js';
import { type Fold, foldedRun, type Slat } from './folds.js';
import { bandParameters, repeatParameter } from './parameters.js';
import { laidStrand, wavy } from './strand.js';

export const ribbon: Generator = {
  name: 'ribbon',
  title: 'Ribbon band',
  family: 'bands',
  summary: 'A ribbon folded to and fro, or twisted, that shows its faces in turn.',
  parameters: bandParameters(
    [
      {
        kind: 'choice',
        name: 'style',
        meaning: 'How the ribbon is laid.',
        say: '…',
        default: 'folded',
        options: [
          { value: 'folded', meaning: 'folded to and fro like a screen' },
          { value: 'twisted', meaning: 'twisted about its middle' },
        ],
      },
      {
        kind: 'choice',
        name: 'back',
        meaning: "What the ribbon's other face shows.",
        say: 'its other face …',
        default: 'lined',
        options: [
          { value: 'lined', meaning: 'stripes along a folded ribbon, the outline of a twisted one' },
          { value: 'solid', meaning: 'the same as the first' },
          { value: 'open', meaning: 'nothing' },
        ],
      },
      length('height', 'Height of the band.', 'the band … high', 19, 1, 500),
      repeatParameter(0),
      length(
        'rise',
        'How much higher one edge of a folded face lies than the other.',
        'folds rising …',
        6,
        0,
        300,
      ),
      length('strap', 'Width of the stripes or outlines.', 'stripes … wide', 4.3, 0.2, 200),
      length(
        'gap',
        'Field left between faces and between stripes.',
        'faces and stripes … apart',
        4.3,
        0.2,
        200,
      ),
    ],
    true,
  ),
  draw(values, outline, pen) {
    if (values.style === 'twisted') drawTwisted(values, outline, pen);
    else drawFolded(values, outline, pen);
  },
};

function drawFolded(values: Values, outline: Outline, pen: Pen): void {
  const height = num(values, 'height');
  const gap = num(values, 'gap');
  const rise = num(values, 'rise');
  const face = height - rise;
  if (face <= 0) throw bad('rise', `${mm(rise)} leaves no face; use less than ${mm(height)}`);
  const fold: Fold = { height, rise, gap, slats: (front) => (front ? [[0, face]] : backSlats(values, face)) };
  const least = 2 * (gap + num(values, 'strap'));
  const band = layBand(values, outline, {
    half: height / 2,
    repeat: num(values, 'repeat') || 2.1 * height,
    least,
    caps: -gap / 2,
  });
  foldedRun(fold, band, pen);
  drawRails(pen, band, values);
}

/** Stripes of about the strap's width with even gaps from edge to edge of a face. */
function backSlats(values: Values, face: number): Slat[] {
  if (values.back === 'open') return [];
  const strap = num(values, 'strap');
  const gap = num(values, 'gap');
  const n = values.back === 'solid' ? 1 : Math.floor((face + gap) / (strap + gap) + 1e-9);
  if (n < 2) return [[0, face]];
  const wide = (face - (n - 1) * gap) / n;
  return Array.from({ length: n }, (_, i): Slat => [i * (wide + gap), i * (wide + gap) + wide]);
}

/** Corners of twisted faces are rounded by this share of the strap. */
const ROUND = 0.5;

function drawTwisted(values: Values, outline: Outline, pen: Pen): void {
  const half = num(values, 'height') / 2;
  const strap = num(values, 'strap');
  const gap = num(values, 'gap');
  const repeat = num(values, 'repeat') || 6.8 * half;
  const band = layBand(values, outline, { half, repeat, least: 4 * strap + 2 * gap, depth: half / 2 });
  const { track } = band;
  // The two edges cross at whole and half repeats, so at joints and ends too. Faces are drawn half a gap too large.
  const upper = wavy(track, half + gap / 2, -0.25);
  const lower = wavy(track, half + gap / 2, 0.25);
  for (let k = 0; k < 2 * track.repeats; k++) {
    const front = k % 2 === 0;
    if (!front && values.back === 'open') continue;
    const [a, b] = front ? [lower, upper] : [upper, lower];
    const there = laidStrand(track, a, k / 2, (k + 1) / 2);
    const back = reversedContour(laidStrand(track, b, k / 2, (k + 1) / 2));
    const chain = [...there, ...back];
    const contour = closedChain(chain);
    const face = offset(offset({ contours: [contour] }, -gap / 2 - ROUND * strap), ROUND * strap);
    if (face.contours.length === 0) continue;
    drawPiece(pen, band, `face ${k + 1}`, front || values.back === 'solid' ? face : lined(face, strap));
  }
  drawRails(pen, band, values);
}

/** The outline of a face, or the whole of one that is too small for an opening. */
function lined(face: Region, strap: number): Region {
  const hollow = opened(offset(face, -strap), ROUND * strap);
  return hollow.contours.length > 0 ? subtract(face, hollow) : face;
}
