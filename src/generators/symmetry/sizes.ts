import { bad, floor, mm } from '../values.js';
import { type Arrangement, discsInto, keepsGap } from './arrangement.js';
import { largest } from './largest.js';
import { sides } from './lattice.js';

/** No motif is smaller, mm. */
const LEAST = 1;

/** The size asked for, or the largest that keeps the gap when it is 0, mm. Throws BadInput with one that would do. */
export function checkedSize(w: Arrangement, asked: number, gap: number): number {
  const { shorter, longer } = sides(w.lattice);
  if (asked > longer)
    throw bad('size', `${mm(asked)} is more than the cell's longer side; use ${mm(floor(longer))} at most`);
  if (asked > 0) return asked;
  const size = gap < shorter ? largest((v) => keepsGap(w, v, gap), longer) : 0;
  if (size >= LEAST) return size;
  const most = largest((v) => keepsGap(w, LEAST, v), shorter);
  if (most > 0)
    throw bad('gap', `${mm(gap)} leaves no room for the motif; use ${mm(most)} at most, or a larger cell`);
  throw bad('size', 'the copies meet where the motif stands; move it with x and y, or give a size above 0');
}

/** Throws BadInput when discs come nearer to each other than the gap. */
export function checkDisc(w: Arrangement, gap: number): void {
  if (w.disc === 0) return;
  const reach = sides(w.lattice).longer;
  const discs = discsInto(w, { minX: -reach, minY: -reach, maxX: reach, maxY: reach });
  const apart = discs.map((m) => Math.sqrt(m.dx * m.dx + m.dy * m.dy)).filter((d) => d > LEAST / 1000);
  const most = Math.min(...apart) - gap;
  if (most <= 0)
    throw bad(
      'gap',
      `${mm(gap)} leaves no room for discs; use less than ${mm(floor(most + gap))}, or a larger cell`,
    );
  if (w.disc > most)
    throw bad(
      'disc',
      `discs of ${mm(w.disc)} do not keep the gap from each other; use ${mm(floor(most))} at most`,
    );
}
