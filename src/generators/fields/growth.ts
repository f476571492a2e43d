import { wholePower } from '../../geometry/power.js';
import { sin } from '../../geometry/trig.js';
import { along, facing, type Limb, mirrored } from './limb.js';
import { apart, type Room } from './room.js';

/** How a plant grows: lengths in mm, angles in radians. */
export interface Habit {
  /** Shoots along a stem with a leaf at its top, or stems that fork in two again and again. */
  readonly form: 'sprig' | 'tree';
  /** How often shoots branch in turn. */
  readonly depth: number;
  /** Pairs of shoots along a stem. */
  readonly nodes: number;
  /** Of a shoot to the stem it leaves, or between the two branches of a fork. */
  readonly angle: number;
  /** Length of a shoot as a share of that of its stem. */
  readonly ratio: number;
  /** Shoots leave a stem by turns left and right, not in pairs. */
  readonly alternate: boolean;
  /** Width of a leaf as a share of its length; 0 for no leaves. */
  readonly leaf: number;
  /** Width of the stem at its foot, of the thinnest stem, and of the least gap. */
  readonly foot: number;
  readonly least: number;
  readonly gap: number;
  /** How far lengths and angles stray by chance, 0 to 1. */
  readonly wild: number;
}

/** A shoot yet to grow. */
interface Bud {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  /** Of `angle` to the stem's own, to the left; 0 for the stem's continuation. */
  readonly aside: number;
  readonly length: number;
  readonly width: number;
  /** The stem that it leaves, and that one's width there. */
  readonly parent: Limb | null;
  readonly from: number;
  /** How often it may still branch; 0 for a leaf. */
  readonly level: number;
}

/** Shares of its full length at which a shoot is tried. */
const TRIES = [1, 0.93, 0.86, 0.79, 0.72, 0.65, 0.58, 0.51, 0.44, 0.37, 0.3];

/** Shoots bend back to the way of their stem by this share of the angle at which they left. */
const BEND = 0.25;

/** The bare part of a sprig's stem, below its first shoots, and what the leaf at its top has of the whole. */
const BARE = 0.12;
const TOP = 0.32;

/** Shoots near the top of a stem are shorter than the lowest by up to this share. */
const SHORTER = 0.35;

/** A stem's tip is this share of its foot, where the least width lets it. */
const TAPER = 0.62;

/** A leaf is at least this many least widths long and wide. */
const LEAF_LONG = 3;
const LEAF_WIDE = 1.45;

/** How far chance may turn a shoot, radians, and lengthen or shorten it, at its wildest. */
const STRAY_ANGLE = 0.4;
const STRAY_LENGTH = 0.3;

/**
 * Grows a plant from (x, y) upwards into the room, level by level: each shoot as long as there is room for, up to its
 * full length, and none where there is none. Without chance and with shoots in pairs its two sides are mirror images.
 */
export function grow(
  how: Habit,
  x: number,
  y: number,
  height: number,
  room: Room,
  chance: () => number,
): Limb[] {
  const symmetric = !how.alternate && how.wild === 0;
  const limbs: Limb[] = [];
  const images = new Map<Limb | null, Limb>();
  let buds: Bud[] = [seedling(how, x, y, height)];
  while (buds.length > 0) {
    const next: Bud[] = [];
    for (const bud of buds) {
      const sided = symmetric && !(bud.aside === 0 && Math.abs(bud.x - x) < 1e-9);
      const limb = longest(how, bud, room, sided ? x : null);
      if (!limb) continue;
      const grown = sided ? [limb, mirrored(limb, x, images.get(limb.parent) ?? limb.parent)] : [limb];
      images.set(limb, grown[grown.length - 1]!);
      for (const l of grown) room.place(l);
      limbs.push(...grown);
      // What leaves the middle to the right has its mirror image on the left.
      const own = bud.level > 0 ? budsOn(how, limb, bud, chance) : [];
      next.push(...(symmetric && !sided ? own.filter((b) => b.aside <= 0) : own));
    }
    buds = next;
  }
  return limbs;
}

/** Buds that a plant may have at most. */
export function budCount(how: Habit): number {
  return how.form === 'tree' ? wholePower(2, levelsOf(how)) : wholePower(2 * how.nodes + 1, how.depth);
}

/** Generations of stems: a tree forks after each but the last. */
function levelsOf({ form, depth }: Habit): number {
  return form === 'tree' ? depth + 2 : depth;
}

function seedling(how: Habit, x: number, y: number, height: number): Bud {
  const bud = {
    x,
    y,
    angle: Math.PI / 2,
    aside: 0,
    width: how.foot,
    parent: null,
    from: 0,
    level: levelsOf(how),
  };
  if (how.form === 'sprig') return { ...bud, length: height };
  // Trunk, branches and a leaf together, were they straight: a sum of powers of the ratio.
  let sum = 0;
  for (let k = levelsOf(how) + (how.leaf > 0 ? 1 : 0); k > 0; k--) sum = 1 + how.ratio * sum;
  return { ...bud, length: height / sum };
}

/** The longest limb from a bud that there is room for, null when none is; with `middle`, its mirror image there keeps off it. */
function longest(how: Habit, bud: Bud, room: Room, middle: number | null): Limb | null {
  for (const share of TRIES) {
    const limb = bud.level === 0 ? leafOf(how, bud, share) : stemOf(how, bud, share);
    const joint = jointOf(how, bud, limb);
    const least = bud.level === 0 ? LEAF_LONG * how.least : joint;
    if (limb.length < least) return null;
    // A stem leaves room for the leaf at its end.
    const reach = bud.level > 0 && how.leaf > 0 ? LEAF_LONG * how.least : 0;
    const whole = { ...limb, length: limb.length + reach };
    if (!room.has(whole, joint)) continue;
    if (middle === null || apart(whole, mirrored(whole, middle, limb.parent), how.gap, joint)) return limb;
  }
  return null;
}

/** How far from its start a limb may be nearer than the gap to others that leave the same place: at twice its angle. */
function jointOf(how: Habit, bud: Bud, limb: Limb): number {
  const apart = sin(Math.min(Math.abs(bud.aside) * (1 - BEND / 2), Math.PI / 2));
  const wide = bud.level === 0 ? limb.width : Math.max(bud.from, limb.width);
  return (1.1 * (wide + how.gap)) / (bud.aside === 0 ? 1 : Math.min(1, 2 * apart));
}

function leafOf(how: Habit, bud: Bud, share: number): Limb {
  const longest = Math.min(bud.length, bud.width / how.leaf);
  const length = longest * share;
  const width = Math.max(LEAF_WIDE * how.least, how.leaf * length);
  return { ...start(bud), length, kind: 'leaf', width, tip: how.least };
}

function stemOf(how: Habit, bud: Bud, share: number): Limb {
  const top = how.form === 'sprig' && how.leaf > 0 ? 1 - TOP : 1;
  const tip = Math.max(how.least, bud.width * TAPER);
  return { ...start(bud), length: bud.length * share * top, kind: 'stem', width: bud.width, tip };
}

function start({ x, y, angle, aside, parent }: Bud): Pick<Limb, 'x' | 'y' | 'angle' | 'bend' | 'parent'> {
  return { x, y, angle, bend: -BEND * aside, parent };
}

/** The buds on a stem: at its end, and for a sprig along it. */
function budsOn(how: Habit, stem: Limb, bud: Bud, chance: () => number): Bud[] {
  const level = bud.level - 1;
  if (level === 0 && how.leaf === 0) return [];
  const stray = (): number => how.wild * (2 * chance() - 1);
  const budAt = (s: number, aside: number, length: number, widest: number): Bud => {
    const [x, y] = along(stem, s);
    const turn = aside === 0 ? STRAY_ANGLE * stray() * 0.5 : aside + STRAY_ANGLE * stray();
    return {
      x,
      y,
      angle: facing(stem, s) + turn,
      aside: turn,
      length: length * (1 + STRAY_LENGTH * stray()),
      width: level === 0 ? widest : Math.max(how.least, 0.8 * stem.tip),
      parent: stem,
      from: stem.width + (stem.tip - stem.width) * s,
      level,
    };
  };
  if (how.form === 'tree') {
    const length = stem.length * how.ratio;
    // The last branches end in one leaf each.
    if (level === 0) return [budAt(1, 0, Math.max(length, 1.5 * LEAF_LONG * how.least), length)];
    return [how.angle / 2, -how.angle / 2].map((a) => budAt(1, a, length, length));
  }
  const whole = how.leaf > 0 ? stem.length / (1 - TOP) : stem.length;
  const step = (1 - BARE) / (how.nodes - 0.4);
  // Leaves side by side along the stem keep the gap.
  const widest = step * stem.length * sin(how.angle * (1 - BEND)) - how.gap;
  const top = TOP * whole;
  const out = how.leaf > 0 ? [{ ...budAt(1, 0, top, top), width: top, level: 0 }] : [];
  for (let k = 0; k < how.nodes; k++)
    for (const side of [1, -1]) {
      const s = BARE + step * (k + (how.alternate && side < 0 ? 0.5 : 0));
      out.push(budAt(s, side * how.angle, how.ratio * whole * (1 - SHORTER * s), widest));
    }
  return out;
}
