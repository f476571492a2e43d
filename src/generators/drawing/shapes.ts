import type { Vector } from '../../geometry/bezier.js';
import { readLength, readNumbers } from './numbers.js';
import { ellipsePath, lineTo, quarterArc, rectanglePath, type Step, type Subpath } from './outline-path.js';
import { readPathData } from './path-data.js';
import { shortened } from './shortened.js';
import { Unreadable } from './unreadable.js';
import type { SvgElement } from './xml.js';

/** What 100 % is, across, down, and for a length in no direction; user units. */
export interface Whole {
  readonly x: number;
  readonly y: number;
  readonly other: number;
}

export function wholeOf(width: number, height: number): Whole {
  return { x: width, y: height, other: Math.sqrt((width * width + height * height) / 2) };
}

/** The elements that draw something by themselves, each with how its attributes are read as a path. */
const SHAPES: Readonly<Record<string, (element: SvgElement, whole: Whole) => Subpath[]>> = {
  path: (element) => readPathData(element.attributes.get('d') ?? ''),
  rect,
  circle,
  ellipse,
  line(element, whole) {
    const n = lengths(element, whole);
    return [run([n('x1', 'x'), n('y1', 'y')], [lineTo([n('x2', 'x'), n('y2', 'y')])], false)];
  },
  polyline: (element) => points(element, false),
  polygon: (element) => points(element, true),
};

export function isShape(name: string): boolean {
  return Object.hasOwn(SHAPES, name);
}

/** The path of a basic shape (SVG 2, chapter 10). Throws Unreadable. */
export function shapePath(element: SvgElement, whole: Whole): Subpath[] {
  return SHAPES[element.name]!(element, whole);
}

/** Reads lengths of an element by name; what is missing is 0. */
export function lengths(
  { attributes }: SvgElement,
  whole: Whole,
): (name: string, along: keyof Whole, missing?: number) => number {
  return (name, along, missing = 0) => {
    const text = attributes.get(name);
    return text === undefined ? missing : readLength(text, whole[along], name);
  };
}

function size(value: number, name: string): number {
  if (value < 0) throw new Unreadable(`has a negative ${name}; give one above 0`);
  return value;
}

function rect(element: SvgElement, whole: Whole): Subpath[] {
  const n = lengths(element, whole);
  const [x, y] = [n('x', 'x'), n('y', 'y')];
  const [w, h] = [size(n('width', 'x'), 'width'), size(n('height', 'y'), 'height')];
  if (w === 0 || h === 0) return [];
  const auto = (name: string): boolean => [undefined, 'auto'].includes(element.attributes.get(name));
  const own = (name: 'rx' | 'ry'): number => size(n(name, name === 'rx' ? 'x' : 'y'), name);
  const given = { rx: auto('rx') ? null : own('rx'), ry: auto('ry') ? null : own('ry') };
  const rx = Math.min(given.rx ?? given.ry ?? 0, w / 2);
  const ry = Math.min(given.ry ?? given.rx ?? 0, h / 2);
  if (rx === 0 || ry === 0) return [rectanglePath(x, y, w, h)];
  const corner = (cx: number, cy: number, quarter: number, to: Vector): Step =>
    quarterArc([cx, cy], rx, ry, quarter, to);
  const steps: Step[] = [
    lineTo([x + w - rx, y]),
    corner(x + w - rx, y + ry, 3, [x + w, y + ry]),
    lineTo([x + w, y + h - ry]),
    corner(x + w - rx, y + h - ry, 0, [x + w - rx, y + h]),
    lineTo([x + rx, y + h]),
    corner(x + rx, y + h - ry, 1, [x, y + h - ry]),
    lineTo([x, y + ry]),
    corner(x + rx, y + ry, 2, [x + rx, y]),
  ];
  return [run([x + rx, y], steps, true)];
}

function circle(element: SvgElement, whole: Whole): Subpath[] {
  const n = lengths(element, whole);
  const r = size(n('r', 'other'), 'r');
  return ellipsePath([n('cx', 'x'), n('cy', 'y')], r, r);
}

function ellipse(element: SvgElement, whole: Whole): Subpath[] {
  const n = lengths(element, whole);
  const auto = (name: string): boolean => [undefined, 'auto'].includes(element.attributes.get(name));
  const rx = auto('rx') ? null : size(n('rx', 'x'), 'rx');
  const ry = auto('ry') ? null : size(n('ry', 'y'), 'ry');
  return ellipsePath([n('cx', 'x'), n('cy', 'y')], rx ?? ry ?? 0, ry ?? rx ?? 0);
}

function points(element: SvgElement, closed: boolean): Subpath[] {
  const text = element.attributes.get('points') ?? '';
  const numbers = readNumbers(text);
  if (!numbers || numbers.length % 2 === 1)
    throw new Unreadable(`has points that are no list of pairs: "${shortened(text)}"`);
  const list: Vector[] = [];
  for (let i = 0; i < numbers.length; i += 2) list.push([numbers[i]!, numbers[i + 1]!]);
  return list.length < 2 ? [] : [run(list[0]!, list.slice(1).map(lineTo), closed)];
}

function run(start: Vector, steps: readonly Step[], closed: boolean): Subpath {
  return { start, steps, closed };
}
