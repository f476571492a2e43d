import { bounds, type Contour, contourArea, distanceToBoundary } from '../geometry/region.js';
import { SAME_POINT } from '../geometry/tolerances.js';
import { namesTogether } from './between.js';
import { type Depth, depths } from './depth.js';
import { extentOf, middleOf } from './extent.js';
import type { Drawn, Family, Loss } from './family.js';
import { type Body, gapsOf, kinOf } from './kin.js';
import { meeting } from './meeting.js';

/** What changed in kind: parts and holes that are gone, several, or one with others. */
export function lossesOf(family: Family, r: number): Loss[] {
  const parts = lostParts(family, r);
  if (family.after.length === 0) return parts;
  return [...parts, ...lostGaps(family, parts, r)];
}

function lostParts({ before, after, kin }: Family, r: number): Loss[] {
  const out: Loss[] = [];
  before.forEach(({ body, of }, i) => {
    const own = kin[i]!;
    if (own.size === 0) out.push(loss('vanished', of, middleOf(body.box), extentOf(body.box)));
    if (own.size < 2) return;
    const pieces = [...own].map((j) => after[j]!).sort((a, b) => extentOf(b.box) - extentOf(a.box));
    const cut = deepest(
      body.contours,
      pieces.flatMap((p) => p.contours),
      'limb',
      r,
    );
    out.push(loss('split', of, cut ?? middleOf(pieces[1]!.box), extentOf(pieces[1]!.box), own.size));
  });
  after.forEach((_, j) => {
    const own = before.filter((_b, i) => kin[i]!.has(j));
    if (own.length < 2) return;
    const at = meeting(
      own.map((b) => b.body),
      r,
    );
    // Drawn touching: they were never apart.
    if (!at) return;
    const of = [...new Set(own.map((b) => b.of))];
    const smallest = Math.min(...own.map((b) => extentOf(b.body.box)));
    out.push(loss('merged', whole(of), at, smallest, own.length));
  });
  return out;
}

function lostGaps(family: Family, parts: readonly Loss[], r: number): Loss[] {
  const { drawn, before, after, kin, frame } = family;
  const kept = before.filter((_, i) => kin[i]!.size > 0).flatMap(({ body }) => body.contours);
  const left = after.flatMap((b) => b.contours);
  const was = gapsOf(kept, frame);
  const is = gapsOf(left, frame);
  const { after: to, before: from } = kinOf(was, is, r);
  const outside = was.findIndex((g) => g.contours[0] === frame);
  const merged = parts.some((p) => p.kind === 'merged');
  const split = parts.some((p) => p.kind === 'split');
  const out: Loss[] = [];
  was.forEach((gap, i) => {
    if (i === outside) return;
    const of = ownerOf(gap, drawn);
    const own = [...to[i]!];
    if (own.length === 0) out.push(loss('filled', of, middleOf(gap.box), extentOf(gap.box)));
    else if (own.length > 1 && !merged)
      out.push(
        loss('divided', of, deepest(gap.contours, left, 'gap', r) ?? middleOf(gap.box), extentOf(gap.box)),
      );
    // A part cut in two lets its hole out as well; that is said of the part.
    const shared = own.some((j) => from[j]!.size > 1);
    if (shared && !split)
      out.push(
        loss('opened', of, deepest(gap.contours, left, 'limb', r) ?? middleOf(gap.box), extentOf(gap.box)),
      );
  });
  if (merged) return out;
  is.forEach((gap, j) => {
    if (gap.contours[0] === frame || from[j]!.size !== 1 || !from[j]!.has(outside)) return;
    const around = is.find((g) => g.contours[0] === frame)!.contours.slice(1);
    out.push(loss('closed', whole(drawn), mouthOf(gap, around, kept, left, r), extentOf(gap.box)));
  });
  return out;
}

/** A shorter arm is a bump; a gap that closes for as little changes how a letter reads. In corner radii. */
const MOST = { limb: 2, gap: 1 } as const;

/**
 * Ends that lost more than 2r, and gaps that lost more than r, beyond what their corner loses by its angle. What lies where a part was cut or a
 * gap closed is that loss again; between pieces that became one the gaps are filled on purpose.
 */
export function lossesOfDepth(family: Family, lost: readonly Loss[], r: number): Loss[] {
  const { before, after, kin, drawn } = family;
  const left = after.flatMap((b) => b.contours);
  const merged = lost.some((l) => l.kind === 'merged');
  const gone = lost.filter((l) => l.kind === 'filled');
  return before.flatMap(({ body, of }, i) => {
    // Of a part that was cut up the cuts are its ends.
    if (kin[i]!.size !== 1) return [];
    const kept = body.contours.filter((c) => contourArea(c) > 0 || !gone.some((l) => isAt(l, c)));
    return depths(kept, left, r)
      .filter(
        (d) =>
          d.over > MOST[d.side] * r && !(merged && d.side === 'gap') && !lost.some((l) => covers(l, d, r)),
      )
      .map((d) => loss(d.side, drawn.length === 1 ? drawn[0]! : of, d.at, d.depth));
  });
}

/** Whether a hole's contour is the one that a loss names. */
function isAt(l: Loss, c: Contour): boolean {
  const [x, y] = middleOf(bodyOf(c).box);
  return Math.abs(l.at[0] - x) < SAME_POINT && Math.abs(l.at[1] - y) < SAME_POINT;
}

function bodyOf(c: Contour): Body {
  return { contours: [c], box: bounds([c]) };
}

/** Whether an end that was cut off, or a gap that was filled, is a side of a cut or a bridge that is a loss by itself. */
function covers(l: Loss, d: Depth, r: number): boolean {
  const cut = l.kind === 'opened';
  const bridge = l.kind === 'closed' || l.kind === 'divided';
  if (!(d.side === 'limb' ? cut : bridge)) return false;
  const dx = l.at[0] - d.at[0];
  const dy = l.at[1] - d.at[1];
  return Math.sqrt(dx * dx + dy * dy) < 4 * r + d.depth;
}

/** Where the drawn boundary strays most to one side of what is left, corners aside; null when it nowhere does. */
function deepest(
  drawn: readonly Contour[],
  left: readonly Contour[],
  side: Depth['side'],
  r: number,
): readonly [number, number] | null {
  const strayed = depths(drawn, left, r).filter((d) => d.side === side);
  if (strayed.length === 0) return null;
  return strayed.reduce((a, b) => (b.over > a.over ? b : a)).at;
}

/** Where the gap closed that led from a new hole to the outside: filled places are many, this one is near both. */
function mouthOf(
  hole: Body,
  around: readonly Contour[],
  drawn: readonly Contour[],
  left: readonly Contour[],
  r: number,
): readonly [number, number] {
  const far = ([x, y]: readonly [number, number]): number =>
    distanceToBoundary(hole, x, y) + distanceToBoundary({ contours: around }, x, y);
  const filled = depths(drawn, left, r).filter((d) => d.side === 'gap');
  const nearest = [...filled].sort((a, b) => far(a.at) - far(b.at))[0];
  return nearest ? nearest.at : middleOf(hole.box);
}

/** The drawn piece that a hole is in. */
function ownerOf(gap: Body, drawn: readonly Drawn[]): Drawn {
  const { x0, y0 } = gap.contours[0]![0]!;
  const own = drawn.find((d) => d.contours.some((c) => c.some((e) => e.x0 === x0 && e.y0 === y0)));
  return own ?? whole(drawn);
}

function whole(drawn: readonly Drawn[]): Drawn {
  if (drawn.length === 1) return drawn[0]!;
  return {
    name: namesTogether(drawn.map((d) => d.name)),
    pieces: drawn.flatMap((d) => d.pieces),
    contours: drawn.flatMap((d) => d.contours),
  };
}

function loss(kind: Loss['kind'], of: Drawn, at: readonly [number, number], size: number, parts = 1): Loss {
  return { kind, piece: of.name, of: of.pieces, at, size, parts };
}
