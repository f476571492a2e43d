import { cos, sin } from '../../geometry/trig.js';
import { type Curvature, lowering, opening, type Pose } from './gap.js';
import type { Shapes } from './shapes.js';
import type { GroupedLine, Known, Opened, SpacedLine, Standing } from './spacing.js';
import { spaceLine } from './spacing.js';

/** All that a layout needs beside the place: the lines at one size. */
export interface Setting {
  readonly lines: readonly GroupedLine[];
  readonly shapes: Shapes;
  /** Cap height, mm, and mm a font unit. */
  readonly height: number;
  readonly scale: number;
  /** Least distance between pieces, and extra room between letters, mm. */
  readonly gap: number;
  readonly tracking: number;
  /** Distance of lines in cap heights. */
  readonly leading: number;
  readonly align: 'left' | 'centre' | 'right';
}

/** A letter on the face. */
export interface Placed extends Standing {
  readonly pose: Pose;
  readonly line: SpacedLine;
  /** Number of the copy of the text, from 0. */
  readonly copy: number;
}

export interface Layout {
  readonly letters: readonly Placed[];
  readonly opened: readonly Opened[];
  /** Distance of lines in cap heights after opening. */
  readonly leading: number;
}

/** A base line of the first line of text and how the next ones follow it. */
export interface Base {
  /** Curvature of the base line `down` mm below the first; null where there is none. */
  curvature(down: number): Curvature | null;
  /** The pose `s` mm from the middle of the base line `down` mm below the first. */
  pose(down: number, s: number): Pose;
  /** Middles of the copies of the text, mm along the first base line. */
  readonly middles: readonly number[];
  /** Length after which the first base line meets itself, mm; 0 when it does not. */
  readonly round: number;
}

const MOST_ROUNDS = 12;

/** Stands the lines on their base lines, opened where letters or lines come too near; null where there is no room. */
export function layLines(setting: Setting, base: Base): Layout | null {
  let { leading } = setting;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const laid = layAt(setting, base, leading);
    if (!laid) return null;
    const more = neededLeading(laid.lines, setting);
    if (more <= 1e-6) return copies(setting, base, leading, laid);
    leading += more;
  }
  return null;
}

interface LaidLine {
  readonly spaced: SpacedLine;
  readonly down: number;
  /** What turns the line's own s into mm from the base line's middle. */
  readonly shift: number;
  readonly poses: readonly Pose[];
}

function layAt(
  setting: Setting,
  base: Base,
  leading: number,
): { lines: LaidLine[]; opened: Opened[] } | null {
  const { lines, height, align } = setting;
  const first = lines[0]!.set.line.number;
  const own: { spaced: SpacedLine; down: number; stretch: number }[] = [];
  const start = base.curvature(0);
  if (start === null) return null;
  for (const grouped of lines) {
    const down = (grouped.set.line.number - first) * leading * height;
    const curvature = base.curvature(down);
    if (curvature === null) return null;
    const spaced = spaceLine(grouped, setting.shapes, { ...setting, curvature }, knownOf(setting, curvature));
    if (spaced.letters.length === 0) continue;
    // Lines on other circles are lined up by angle, so by length on the first one's.
    own.push({ spaced, down, stretch: curvature === 0 ? 1 : curvature / start });
  }
  const half = Math.max(...own.map(({ spaced, stretch }) => ((spaced.to - spaced.from) * stretch) / 2));
  return {
    opened: own.flatMap((l) => l.spaced.opened),
    lines: own.map(({ spaced, down, stretch }) => {
      const side = align === 'left' ? -half - spaced.from * stretch : half - spaced.to * stretch;
      const shift = align === 'centre' ? -(spaced.from + spaced.to) / 2 : side / stretch;
      return { spaced, down, shift, poses: spaced.letters.map((l) => base.pose(down, l.s + shift)) };
    }),
  };
}

const caches = new WeakMap<Shapes, Map<string, Known>>();

/** What was measured at one size and on one curvature. */
function knownOf({ shapes, gap }: Setting, curvature: Curvature): Known {
  const all = caches.get(shapes) ?? new Map<string, Known>();
  caches.set(shapes, all);
  const key = `${gap}/${curvature}`;
  const known = all.get(key) ?? new Map<string, number>();
  all.set(key, known);
  return known;
}

/** How much more distance the lines need to be clear of each other, cap heights. */
function neededLeading(lines: readonly LaidLine[], { gap, height }: Setting): number {
  let most = 0;
  for (let i = 0; i + 1 < lines.length; i++) {
    const [upper, lower] = [lines[i]!, lines[i + 1]!];
    const steps = lower.spaced.set.line.number - upper.spaced.set.line.number;
    upper.spaced.letters.forEach((a, j) => {
      const pose = upper.poses[j]!;
      lower.spaced.letters.forEach((b, k) => {
        const to = lower.poses[k]!;
        const reach = a.shape.size + b.shape.size + gap;
        if (Math.abs(to.x - pose.x) > reach || Math.abs(to.y - pose.y) > reach) return;
        most = Math.max(most, lowering(a.shape, b.shape, relative(pose, to), gap) / steps / height);
      });
    });
  }
  return most;
}

/** A pose as it is seen from another. */
export function relative(from: Pose, to: Pose): Pose {
  const [c, s] = [cos(from.turn), sin(from.turn)];
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  return { x: dx * c + dy * s, y: dy * c - dx * s, turn: to.turn - from.turn };
}

/** The text at each of its places; null when a copy's end comes too near to the next one's start, or to its own. */
function copies(
  setting: Setting,
  base: Base,
  leading: number,
  { lines, opened }: { lines: LaidLine[]; opened: Opened[] },
): Layout | null {
  const { middles, round } = base;
  for (const line of lines) {
    const curvature = base.curvature(line.down)!;
    const stretch = curvature === 0 ? 1 : base.curvature(0)! / curvature;
    const steps = middles.slice(1).map((m, k) => m - middles[k]!);
    if (round > 0) steps.push(round - (middles.at(-1)! - middles[0]!));
    const least = Math.min(...steps) * stretch;
    const alone = middles.length === 1;
    if (steps.length > 0 && !clear(line.spaced, least, curvature, setting.gap, alone)) return null;
  }
  const letters = middles.flatMap((middle, copy) =>
    lines.flatMap(({ spaced, down, shift }) => {
      const curvature = base.curvature(down)!;
      const stretch = curvature === 0 ? 1 : base.curvature(0)! / curvature;
      return spaced.letters.map(
        (l): Placed => ({
          ...l,
          line: spaced,
          copy,
          pose: base.pose(down, l.s + shift + middle * stretch),
        }),
      );
    }),
  );
  return { letters, opened, leading };
}

/** Is a line clear of its next copy `step` mm further on, or, when it is alone on its circle, of its own start? */
function clear(
  { letters, from, to }: SpacedLine,
  step: number,
  curvature: Curvature,
  gap: number,
  alone: boolean,
): boolean {
  if (to - from > step) return false;
  return letters.slice(-4).every((a) =>
    letters.slice(0, 4).every((b) => {
      // Alone, a letter comes round to itself, and to those after it the other way about.
      if (alone && b.s >= a.s) return true;
      return opening(a.shape, b.shape, b.s + step - a.s, curvature, gap) === 0;
    }),
  );
}
