import { type Contour, contourArea, type Region } from '../geometry/region.js';
import { mirrorX } from '../geometry/transform.js';
import { atan2 } from '../geometry/trig.js';
import { type Feature, type Shape, shapeOf, type Turn } from './shape.js';

/** The ways a part can go into its own pocket wrongly. */
export interface Turns {
  /** Angles that also fit, radians counter-clockwise, over 0 and under 2 pi, rising. Empty when `any`. */
  readonly angles: readonly number[];
  /** A round part: every angle fits. */
  readonly any: boolean;
  /** Does it fit with its other face up, turned or not? */
  readonly over: boolean;
}

/** Boundaries nearer than this, mm, are the same even without clearance: ten times what arcs fitted to curves may stray. */
const SAME = 0.02;
/** Two turns nearer than this, radians, are one; 0.06 degree. */
const ONE_TURN = 1e-3;
/** Kinds of feature looked at before the rarest is taken. */
const KINDS = 12;

/**
 * How far, mm, the boundary of a part that is put in wrongly may be off the boundary of the right one for it to go in: the
 * clearance, which is the room that the pocket gives it.
 */
export function give(clearance: number): number {
  return Math.max(clearance, SAME);
}

/** The wrong ways into its own pocket of a plug part (an outer contour and its holes; or a whole plug). */
export function turnsOf(part: Shape, clearance: number): Turns {
  const within = give(clearance);
  const mirror = shapeOf(mirrorX({ contours: part.contours }).contours);
  if (comparing(part, within).round) return { angles: [], any: true, over: true };
  const angles: number[] = [];
  for (const turn of candidates(part, part, within)) {
    const a = angleOf(turn);
    if (a < ONE_TURN || a > 2 * Math.PI - ONE_TURN) continue;
    if (angles.some((b) => Math.abs(a - b) < ONE_TURN)) continue;
    if (lies(part, part, turn, within)) angles.push(a);
  }
  angles.sort((a, b) => a - b);
  return { angles, any: false, over: fitting(mirror, part, within) !== null };
}

/** Parts of one shape: any of them goes into the pocket of any other. */
export interface Alike {
  /** Positions in the list given. */
  readonly members: readonly number[];
  /** Must some be turned for that? If not, they may be swapped and nothing shows. */
  readonly turned: boolean;
}

/** Parts that can be taken for each other, in groups of two or more, in order of their first members. */
export function alikeParts(shapes: readonly Shape[], clearance: number): Alike[] {
  const within = give(clearance);
  const groups: { first: Shape; members: number[]; turned: boolean }[] = [];
  shapes.forEach((shape, k) => {
    const home = groups.find(({ first }) => {
      if (Math.abs(first.area - shape.area) > within * first.perimeter) return false;
      return first.contours.length === shape.contours.length && fitting(shape, first, within) !== null;
    });
    if (!home) groups.push({ first: shape, members: [k], turned: false });
    else {
      home.members.push(k);
      home.turned ||= !lies(shape, home.first, { c: 1, s: 0 }, within);
    }
  });
  return groups.filter((g) => g.members.length > 1).map(({ members, turned }) => ({ members, turned }));
}

/** A turn by which a fits the place of b, both laid centroid on centroid; null when there is none. */
function fitting(a: Shape, b: Shape, within: number): Turn | null {
  const straight = { c: 1, s: 0 };
  if (comparing(a, within).round) return lies(a, b, straight, within) ? straight : null;
  for (const turn of candidates(a, b, within)) if (lies(a, b, turn, within)) return turn;
  return null;
}

/**
 * Every turn that could lay shape a on shape b: one feature of a, of a kind that is rare, must come to lie on one of b of
 * the same length and radius. Which of them do is for `lies` to say.
 */
function candidates(a: Shape, b: Shape, within: number): Turn[] {
  let rarest: Feature | null = null;
  let fewest = Number.POSITIVE_INFINITY;
  for (const kind of comparing(a, within).kinds) {
    let count = 0;
    for (let k = firstAsLong(b, kind.length + 4 * within); k < b.features.length; k++) {
      const g = b.features[k]!;
      if (g.length < kind.length - 4 * within || count === fewest) break;
      if (alike(kind, g, within)) count++;
    }
    if (count === 0) return [];
    if (count < fewest) {
      rarest = kind;
      fewest = count;
    }
  }
  if (!rarest) return [];
  const kind = rarest;
  return b.features
    .filter((g) => alike(kind, g, within))
    .map((g) => ({ c: g.ux * kind.ux + g.uy * kind.uy, s: g.uy * kind.ux - g.ux * kind.uy }));
}

/** May one of two features come to lie on the other? */
function alike(f: Feature, g: Feature, within: number): boolean {
  return (
    Math.abs(f.length - g.length) <= 4 * within &&
    (f.r === 0) === (g.r === 0) &&
    f.off > 0 === g.off > 0 &&
    Math.abs(f.off - g.off) <= 4 * within &&
    // Where lengths are of use radii of long, flat arcs say little.
    (f.r > 0 === g.r > 0 || Math.abs(f.r) > f.length)
  );
}

/** What comparing a shape with any other takes of the shape alone. */
interface Comparing {
  readonly within: number;
  readonly round: boolean;
  /** Its longest features, one of each kind. */
  readonly kinds: readonly Feature[];
}

/** A shape is compared with many others: what that takes is worked out once. */
const known = new WeakMap<Shape, Comparing>();

function comparing(shape: Shape, within: number): Comparing {
  const before = known.get(shape);
  if (before?.within === within) return before;
  const kinds: Feature[] = [];
  for (const feature of shape.features) {
    if (kinds.length === KINDS) break;
    if (!kinds.some((s) => alike(s, feature, within))) kinds.push(feature);
  }
  const now = { within, round: isRound(shape, within), kinds };
  known.set(shape, now);
  return now;
}

/** Position of the first feature that is no longer than `length`: the longest come first. */
function firstAsLong({ features }: Shape, length: number): number {
  let from = 0;
  let to = features.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (features[middle]!.length > length) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** Does shape a, turned about its centroid and laid on b's, keep within `within` of b's boundary, and b of its? */
function lies(a: Shape, b: Shape, { c, s }: Turn, within: number): boolean {
  return onto(a, b, c, s, within) && onto(b, a, c, -s, within);
}

function onto(a: Shape, b: Shape, c: number, s: number, within: number): boolean {
  const p = a.samples;
  for (let i = 0; i < p.length; i += 2) {
    const dx = p[i]! - a.x;
    const dy = p[i + 1]! - a.y;
    if (b.near(b.x + dx * c - dy * s, b.y + dx * s + dy * c, within) === Number.POSITIVE_INFINITY)
      return false;
  }
  return true;
}

/** Is every contour a circle about the centroid, as far as the clearance can tell? */
function isRound(shape: Shape, within: number): boolean {
  const { x, y } = shape;
  return shape.contours.every((c: Contour) => {
    const only = c.length === shape.contours[0]!.length && shape.contours.length === 1;
    const points = only ? shape.samples : shapeOf([c]).samples;
    let least = Number.POSITIVE_INFINITY;
    let most = 0;
    for (let i = 0; i < points.length; i += 2) {
      const d = Math.sqrt((points[i]! - x) * (points[i]! - x) + (points[i + 1]! - y) * (points[i + 1]! - y));
      least = Math.min(least, d);
      most = Math.max(most, d);
      if (most - least > within) return false;
    }
    // A blob beside the centroid has a narrow range of distances too, but does not go round it.
    return Math.abs(contourArea(c)) > Math.PI * (least - within) * Math.max(0, least - within);
  });
}

function angleOf({ c, s }: Turn): number {
  const a = atan2(s, c);
  return a < 0 ? a + 2 * Math.PI : a;
}

/** A whole region as a shape: a plug that is held together by its carrier. */
export function wholeShape(region: Region): Shape {
  return shapeOf(region.contours);
}
