import type { Vector } from '../../geometry/bezier.js';
import { cos, sin } from '../../geometry/trig.js';
import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import { frameSides } from '../bands/frame.js';
import type { FrameSide } from '../bands/frame-track.js';
import { bad, num } from '../values.js';
import { straightBase } from './bases.js';
import { type Layout, layLines, type Setting } from './layout.js';
import { extent } from './places.js';
import { type GroupedLine, spaceLine } from './spacing.js';

/** Letters on either side of a corner keep this many gaps off it: then their corners are one gap apart, and a hair. */
const CORNER = 0.75;

/** Letters keep this far off the margin's very edge: which side of it a point lies on is not sure by rounding, mm. */
const OFF_EDGE = 1e-3;

/**
 * Along the sides of a rectangle or polygon: a line of the text to a side, each about the side's middle, a line too long
 * for its side going on along the next after a space; so no letter stands in a corner.
 */
export function onFrame(setting: Setting, values: Values, outline: Outline): Layout | null {
  const { ascent, descent } = extent(setting);
  const inset = num(values, 'inset') + OFF_EDGE;
  const outside = values.side !== 'inside';
  const inner = frameSides(outline, inset + ascent + descent);
  const sides = inner && ordered(inner, outside);
  if (!sides) return null;
  const rooms = sides.map((s) => s.length - 2 * CORNER * setting.gap);
  const n = sides.length;
  const repeats = num(values, 'repeats');
  if (repeats > n && repeats % n !== 0)
    throw bad(
      'repeats',
      `${repeats} do not go evenly on ${n} sides; use up to ${n}, or ${2 * n}, ${3 * n} ...`,
    );
  if (repeats > n) return each(setting, sides, rooms, repeats / n, outside, { ascent, descent });

  const letters = [];
  const opened = [];
  let free = 0;
  for (let copy = 0; copy < repeats; copy++) {
    const start = Math.floor((copy * n) / repeats);
    if (start < free) return null;
    free = start;
    for (const line of setting.lines)
      for (let rest: GroupedLine | null = line; rest; free++) {
        if (free >= n) return null;
        const [part, after] = fill(setting, rest, rooms[free]!);
        if (!part) return null;
        const base = sideBase(sides[free]!, outside, { ascent, descent }, [0]);
        const layout = layLines({ ...setting, lines: [part], align: 'centre' }, base);
        if (!layout) return null;
        letters.push(...layout.letters.map((l) => ({ ...l, copy })));
        opened.push(...layout.opened);
        rest = after;
      }
  }
  return { letters, opened, leading: setting.leading };
}

type Extent = ReturnType<typeof extent>;

/** The whole text several times on every side. */
function each(
  setting: Setting,
  sides: readonly FrameSide[],
  rooms: readonly number[],
  times: number,
  outside: boolean,
  ink: Extent,
): Layout | null {
  if (setting.lines.length > 1) return null;
  const layouts = sides.map((side, i) => {
    const middles = Array.from({ length: times }, (_, k) => ((k + 0.5) / times - 0.5) * rooms[i]!);
    const layout = layLines({ ...setting, align: 'centre' }, sideBase(side, outside, ink, middles));
    const line = layout?.letters[0]?.line;
    return line && line.to - line.from <= rooms[i]! / times ? layout : null;
  });
  if (layouts.some((l) => l === null)) return null;
  return {
    letters: layouts.flatMap((l, i) => l!.letters.map((p) => ({ ...p, copy: i * times + p.copy }))),
    opened: layouts.flatMap((l) => l!.opened),
    leading: setting.leading,
  };
}

/** The base line of one side. Sides run counter-clockwise along the inner edge of the letters. */
function sideBase(side: FrameSide, outside: boolean, { ascent, descent }: Extent, middles: number[]) {
  const [c, s] = [cos(side.heading), sin(side.heading)];
  // Outside, tops look to the edge: the letters' feet stand on the inner line; inside, their tops do.
  const out = outside ? descent : ascent;
  const at: Vector = [
    side.start[0] + (side.length / 2) * c + out * s,
    side.start[1] + (side.length / 2) * s - out * c,
  ];
  return straightBase(at, outside ? side.heading + Math.PI : side.heading, middles);
}

/** In reading order: clockwise from the top when tops look out, counter-clockwise from the bottom when they look in. */
function ordered(sides: readonly FrameSide[], outside: boolean): FrameSide[] {
  // A counter-clockwise side on top heads to the left, one at the bottom to the right.
  const score = (f: FrameSide): number => (outside ? -cos(f.heading) : cos(f.heading));
  let first = 0;
  sides.forEach((f, i) => {
    if (score(f) > score(sides[first]!) + 1e-9) first = i;
  });
  const n = sides.length;
  return sides.map((_, k) => sides[(first + (outside ? n - k : k)) % n]!);
}

/** As much of a line as fits the room, broken at spaces, and the rest; null when not even its first word fits. */
function fill(setting: Setting, line: GroupedLine, room: number): [GroupedLine | null, GroupedLine | null] {
  const width = (part: GroupedLine): number => {
    const { from, to } = spaceLine(part, setting.shapes, { ...setting, curvature: 0 }, new Map());
    return to - from;
  };
  if (width(line) <= room) return [line, null];
  const { clusters, line: text } = line.set;
  // Clusters stand from left to right: of a line that is read from the right, the end comes first.
  const rtl = clusters[0]!.from > clusters.at(-1)!.from;
  const cut = (from: number, to: number): GroupedLine => ({
    set: { line: text, clusters: clusters.slice(from, to) },
    groups: line.groups.slice(from, to),
  });
  const spaces = clusters.flatMap((c, i) => (text.text.slice(c.from, c.to).trim() === '' ? [i] : []));
  for (const at of rtl ? spaces : spaces.reverse()) {
    const head = rtl ? cut(at + 1, clusters.length) : cut(0, at);
    const tail = rtl ? cut(0, at) : cut(at + 1, clusters.length);
    if (![head, tail].every((part) => part.groups.some((g) => g >= 0))) continue;
    if (width(head) <= room) return [head, tail];
  }
  return [null, null];
}
