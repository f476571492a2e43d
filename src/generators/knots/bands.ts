import { drawRegion } from '../../geometry/draw-region.js';
import type { Pen } from '../../geometry/pen.js';
import { bad, mm } from '../values.js';
import type { Strand } from './strand.js';
import { weave } from './weave.js';

/** Draws bands along strands, a piece from one place where it goes under to the next. Throws BadInput without room. */
export function drawBands(pen: Pen, strands: readonly Strand[], strap: number, gap: number): void {
  const pieces = weave(strands, strap, gap);
  if (pieces.includes(null)) throw tooWide(strands, strap, gap);
  pieces.forEach((region, i) => {
    pen.piece(`band ${i + 1}`);
    drawRegion(pen, region!);
  });
}

/** Says which strap would leave room between crossings. */
function tooWide(strands: readonly Strand[], strap: number, gap: number): Error {
  const room = (width: number): boolean => !weave(strands, width, gap).includes(null);
  let lo = 0.2;
  let hi = strap;
  if (!room(lo))
    return bad('gap', `${mm(gap)} leaves no band between crossings; make it less, or the knot larger`);
  while (hi - lo > 0.01) {
    const mid = (lo + hi) / 2;
    if (room(mid)) lo = mid;
    else hi = mid;
  }
  return bad(
    'strap',
    `${mm(strap)} leaves no band between crossings; use ${mm(Math.floor(lo * 100) / 100)} or less`,
  );
}
