import { type Motion, moved, type Point } from './drawing.js';

/** Lengths under this are nothing, mm: headings of polygons are good to about 1e-4 over distances of 50 mm. */
const NOTHING = 0.05;
/** Angles under this are nothing, radians. */
const SMALL = 0.005;

/** What the motions of a pattern are, as geometry has it. */
export interface Elements {
  /** Centres of rotation with the highest order there, each once. */
  readonly centres: readonly { at: Point; order: number }[];
  readonly mirrors: readonly Axis[];
  /** Glides along axes that are no mirrors. */
  readonly glides: readonly Axis[];
  /** How many turns and flips there are, shifts left aside. */
  readonly pointGroupOrder: number;
}

/** A line by the direction of its normal (0 to pi) and its distance along it. */
export interface Axis {
  readonly normal: number;
  readonly far: number;
}

const wrap = (a: number, period: number): number => ((a % period) + period) % period;
const near = (a: number, b: number, period: number): boolean => {
  const d = wrap(a - b, period);
  return Math.min(d, period - d) < SMALL;
};

export function elementsOf(motions: readonly Motion[]): Elements {
  const turns = motions.filter((m) => !m.flips && !near(m.angle, 0, 2 * Math.PI));
  const found: { at: Point; orders: number[] }[] = [];
  for (const m of turns) {
    // The centre c solves c = R c + d.
    const [c, s] = [1 - Math.cos(m.angle), Math.sin(m.angle)];
    const det = c * c + s * s;
    const at: Point = [(c * m.dx - s * m.dy) / det, (s * m.dx + c * m.dy) / det];
    const order = (2 * Math.PI) / Math.min(wrap(m.angle, 2 * Math.PI), wrap(-m.angle, 2 * Math.PI));
    const known = found.find((f) => Math.hypot(f.at[0] - at[0], f.at[1] - at[1]) < NOTHING);
    if (known) known.orders.push(order);
    else found.push({ at, orders: [order] });
  }
  const axes = motions
    .filter((m) => m.flips)
    .map((m) => {
      const along = m.angle / 2;
      const normal = wrap(along + Math.PI / 2, Math.PI);
      return {
        shift: m.dx * Math.cos(along) + m.dy * Math.sin(along),
        normal,
        far: (m.dx * Math.cos(normal) + m.dy * Math.sin(normal)) / 2,
      };
    });
  const mirrors = axes.filter((a) => Math.abs(a.shift) < NOTHING);
  const linear: Motion[] = [];
  for (const m of motions)
    if (!linear.some((o) => o.flips === m.flips && near(o.angle, m.angle, 2 * Math.PI))) linear.push(m);
  return {
    centres: found.map(({ at, orders }) => ({ at, order: Math.max(...orders) })),
    mirrors,
    glides: axes.filter((a) => !mirrors.some((b) => sameAxis(a, b))),
    pointGroupOrder: linear.length,
  };
}

function sameAxis(a: Axis, b: Axis): boolean {
  if (!near(a.normal, b.normal, Math.PI)) return false;
  // A normal near 0 may be read as one near pi, with the distance of other sign.
  const flipped = Math.abs(a.normal - b.normal) > Math.PI / 2;
  return Math.abs(a.far - (flipped ? -b.far : b.far)) < NOTHING;
}

export function onMirror({ at: [x, y] }: { at: Point }, mirrors: readonly Axis[]): boolean {
  return mirrors.some((m) => Math.abs(x * Math.cos(m.normal) + y * Math.sin(m.normal) - m.far) < NOTHING);
}

/**
 * The wallpaper group by highest order of rotation, mirrors and glides: the questions of D. Schattschneider, "The plane
 * symmetry groups: their recognition and notation", American Mathematical Monthly 85 (1978), from memory.
 */
export function wallpaperGroupOf(motions: readonly Motion[]): string {
  const { centres, mirrors, glides } = elementsOf(motions);
  const order = Math.round(Math.max(1, ...centres.map((c) => c.order)));
  const allOn = (n: number): boolean =>
    centres.filter((c) => Math.round(c.order) === n).every((c) => onMirror(c, mirrors));
  const directions = mirrors.filter(
    (m, i) => mirrors.findIndex((o) => near(o.normal, m.normal, Math.PI)) === i,
  ).length;
  switch (order) {
    case 1:
      if (mirrors.length > 0) return glides.length > 0 ? 'cm' : 'pm';
      return glides.length > 0 ? 'pg' : 'p1';
    case 2:
      if (directions === 2) return allOn(2) ? 'pmm' : 'cmm';
      if (directions === 1) return 'pmg';
      return glides.length > 0 ? 'pgg' : 'p2';
    case 3:
      if (mirrors.length === 0) return 'p3';
      return allOn(3) ? 'p3m1' : 'p31m';
    case 4:
      if (mirrors.length === 0) return 'p4';
      return allOn(4) ? 'p4m' : 'p4g';
    case 6:
      return mirrors.length > 0 ? 'p6m' : 'p6';
    default:
      return `rotation of order ${order}`;
  }
}

/** The frieze group of a pattern along x. */
export function friezeGroupOf(motions: readonly Motion[]): string {
  const { centres, mirrors, glides } = elementsOf(motions);
  const upright = mirrors.some((m) => near(m.normal, 0, Math.PI));
  const along = mirrors.some((m) => near(m.normal, Math.PI / 2, Math.PI));
  if (upright && along) return 'p2mm';
  if (upright) return centres.length > 0 ? 'p2mg' : 'p1m1';
  if (along) return 'p11m';
  if (centres.length > 0) return 'p2';
  return glides.length > 0 ? 'p11g' : 'p1';
}

/** Orders of rotation centres off mirrors and on them, one for each kind that no motion brings onto another; falling. */
export function centreKinds(motions: readonly Motion[]): { off: number[]; on: number[] } {
  const { centres, mirrors } = elementsOf(motions);
  const kinds: { at: Point; order: number }[] = [];
  for (const c of centres)
    if (
      !kinds.some((k) =>
        motions.some((m) => {
          const [x, y] = moved(m, k.at);
          return Math.hypot(x - c.at[0], y - c.at[1]) < NOTHING;
        }),
      )
    )
      kinds.push(c);
  const orders = (on: boolean): number[] =>
    kinds
      .filter((k) => onMirror(k, mirrors) === on)
      .map((k) => Math.round(k.order))
      .sort((a, b) => b - a);
  return { off: orders(false), on: orders(true) };
}
