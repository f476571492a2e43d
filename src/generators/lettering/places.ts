import type { Box } from '../../geometry/region.js';
import { sin } from '../../geometry/trig.js';
import type { Outline } from '../../outline/outline.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import type { Room } from '../bands/room.js';
import { staveTrack } from '../bands/stave-track.js';
import { type Track, trackLength } from '../bands/track.js';
import { largestCircle } from '../middle.js';
import { num } from '../values.js';
import { type Circle, circleBase, straightBase } from './bases.js';
import { movedBox } from './gap.js';
import { type Layout, layLines, type Setting } from './layout.js';

/** Level lines, the block from first cap line to last base line about the middle of the outline. */
export function onLine(setting: Setting): Layout | null {
  const layout = layLines(setting, straightBase([0, 0], 0));
  return layout && shifted(layout, 0, (stack(setting, layout.leading) - setting.height) / 2);
}

/** From the first base line to the last, mm. */
export function stack({ lines, height }: Setting, leading: number): number {
  return (lines.at(-1)!.set.line.number - lines[0]!.set.line.number) * leading * height;
}

/**
 * Along a circle of the given radius about the middle of the outline; one too large to lie there bears a block that is
 * centred like level lines. Radius 0 is the largest that brings the letters to the edge.
 */
export function onArc(setting: Setting, values: Values, { inner }: Outline): Layout | null {
  const radius = num(values, 'radius');
  const home = largestCircle(inner);
  const circle = { ...sideOf(values), centre: [home.x, home.y], radius } as const;
  if (radius === 0) return toEdge(setting, circle, home.radius, 1);
  const layout = layLines(setting, circleBase(circle, 1));
  if (!layout || radius < home.radius) return layout;
  const box = inkBox(layout);
  return shifted(layout, -(box.minX + box.maxX) / 2, -(box.minY + box.maxY) / 2);
}

/** Round a circle or ring, `inset` mm inside its margin. */
export function onRing(setting: Setting, values: Values, { inner }: Outline): Layout | null {
  const home = largestCircle(inner);
  const circle = { ...sideOf(values), centre: [home.x, home.y], radius: 0 } as const;
  return toEdge(setting, circle, home.radius - num(values, 'inset'), num(values, 'repeats'));
}

function sideOf(values: Values): { side: Circle['side']; middle: number } {
  const side = values.side === 'inside' ? 'inside' : 'outside';
  return { side, middle: (side === 'outside' ? Math.PI / 2 : -Math.PI / 2) + num(values, 'centred') };
}

/** Letters this near to where they should reach are there, mm. */
const THERE = 1e-3;

/** On the circle whose letters just reach the radius `most`: rigid letters stand out at their corners. */
function toEdge(setting: Setting, circle: Circle, most: number, repeats: number): Layout | null {
  const { ascent, descent } = extent(setting);
  const first = circle.side === 'outside' ? ascent : descent + stack(setting, setting.leading);
  let radius = most - first;
  for (let round = 0; round < 12; round++) {
    if (radius <= 0) return null;
    const layout = layLines(setting, circleBase({ ...circle, radius }, repeats));
    if (!layout) return null;
    const over = farthest(layout, circle) - most;
    if (over <= 0 && over > -THERE) return layout;
    radius -= over + THERE / 4;
  }
  return null;
}

function farthest({ letters }: Layout, { centre }: Circle): number {
  let most = 0;
  for (const { pose, shape } of letters) {
    const [c, s] = turned(pose.turn);
    for (const [px, py] of shape.points) {
      const x = px * c - py * s + pose.x - centre[0];
      const y = px * s + py * c + pose.y - centre[1];
      most = Math.max(most, x * x + y * y);
    }
  }
  return Math.sqrt(most);
}

function turned(turn: number): [number, number] {
  return [sin(turn + Math.PI / 2), sin(turn)];
}

/** How far ink reaches above the base lines and below them, mm. */
export function extent({ lines, shapes }: Setting): { ascent: number; descent: number } {
  const boxes = lines.flatMap((l) => l.set.clusters.flatMap((c) => shapes(c)?.box ?? []));
  return {
    ascent: Math.max(...boxes.map((b) => b.maxY)),
    descent: Math.max(...boxes.map((b) => -b.minY)),
  };
}

/** Across a stave from joint to joint: along the circle that meets both squarely, level where they are parallel. */
export function onStave(setting: Setting, values: Values, outline: Outline): Layout | null {
  const { ascent, descent } = extent(setting);
  const high = ascent + descent + stack(setting, setting.leading);
  // The track's own repeats are no matter here: one, as long as the whole.
  const room = { half: high / 2, outer: high / 2, repeat: 1e6, least: 1e-6 };
  const track = trackOn(values, outline, room);
  if (!track) return null;
  const length = trackLength(track);
  const repeats = num(values, 'repeats');
  const { at, along } = track.spot(length / 2, 0);
  const beside = track.spot(length / 2, 1).along;
  const curvature = 1 - Math.abs(beside[0] / along[0]);
  const up = (descent + stack(setting, setting.leading) - ascent) / 2;
  if (Math.abs(curvature) < 1e-9) {
    const middles = Array.from({ length: repeats }, (_, k) => ((k + 0.5) / repeats - 0.5) * length);
    return layLines(setting, straightBase([at[0], at[1] + up], 0, middles));
  }
  // Upright: tops away from a centre below, towards one above.
  const side = curvature < 0 ? 'outside' : 'inside';
  const centre = [at[0], at[1] + 1 / curvature] as const;
  const radius = 1 / Math.abs(curvature) + (side === 'outside' ? up : -up);
  if (radius <= 0) return null;
  const middle = side === 'outside' ? Math.PI / 2 : -Math.PI / 2;
  return layLines(setting, circleBase({ centre, radius, middle, side }, repeats, length));
}

/** Null where the stave is too low for the letters. Throws BadInput for a level that is out of range. */
function trackOn(values: Values, outline: Outline, room: Room): Track | null {
  try {
    return staveTrack({ ...values, run: 'arched' }, outline, room).track;
  } catch (e) {
    if (e instanceof Refusal) return null;
    throw e;
  }
}

export function inkBox({ letters }: Layout): Box {
  const boxes = letters.map((l) => movedBox(l.shape.box, l.pose));
  return {
    minX: Math.min(...boxes.map((b) => b.minX)),
    maxX: Math.max(...boxes.map((b) => b.maxX)),
    minY: Math.min(...boxes.map((b) => b.minY)),
    maxY: Math.max(...boxes.map((b) => b.maxY)),
  };
}

function shifted(layout: Layout, dx: number, dy: number): Layout {
  return {
    ...layout,
    letters: layout.letters.map((l) => ({ ...l, pose: { ...l.pose, x: l.pose.x + dx, y: l.pose.y + dy } })),
  };
}
