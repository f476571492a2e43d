import { ChainBuilder } from './chain-builder.js';
import { Drawing, MM_PER, type Unit } from './drawing.js';
import { type Frame, readPath } from './path-data.js';
import { shown, Unreadable } from './place.js';
import { type Tag, tags } from './tags.js';

/** What would move, hide or cut the paths that are to be proven. */
const MOVING = ['transform', 'style', 'class', 'display', 'visibility', 'clip-path', 'mask', 'opacity'];

interface Sheet extends Frame {
  readonly unit: Unit;
  readonly width: number;
  readonly height: number;
}

/**
 * Reads a drawing as design.md's SVG contract has it: the paths in `<g id="pocket">` or `<g id="plug">`, even-odd, in mm,
 * y up from the sheet's lower edge. Other groups are marks and are not looked at. Throws `Unreadable` with line and column.
 */
export function readSvg(text: string): Drawing {
  const { name, sheet, edges, starts } = readGroup(text, ['pocket', 'plug']);
  return new Drawing(sheet.unit, sheet.width, sheet.height, name, edges, starts);
}

/** Reads the dots of a coupon's drawing, the paths in `<g id="dots">`, likewise. `name` is the part they are drilled in. */
export function readDots(text: string, name: 'pocket' | 'plug'): Drawing {
  const { sheet, edges, starts } = readGroup(text, ['dots']);
  return new Drawing(sheet.unit, sheet.width, sheet.height, name, edges, starts);
}

function readGroup<T extends string>(text: string, names: readonly T[]) {
  const out = new ChainBuilder();
  let sheet: Sheet | null = null;
  let name: T | null = null;
  let depth = 0;
  let group = 0;
  for (const tag of tags(text)) {
    if (tag.kind === 'end') {
      if (depth === group) group = 0;
      depth--;
      continue;
    }
    if (tag.kind === 'start') depth++;
    const id = tag.attributes.get('id')?.value;
    const wanted = names.find((n) => n === id);
    if (sheet === null) sheet = readSheet(text, tag);
    else if (group > 0) readPart(text, tag, sheet, out);
    else if (wanted !== undefined) {
      if (tag.name !== 'g')
        throw new Unreadable(text, tag.offset, `<${tag.name} id="${id}"> must be a group, <g>`);
      if (name !== null)
        throw new Unreadable(text, tag.offset, `a second group of cut paths, "${id}" after "${name}"`);
      if (depth > 2) throw new Unreadable(text, tag.offset, `the group "${id}" must stand directly in <svg>`);
      refuseMoving(text, tag);
      name = wanted;
      if (tag.kind === 'start') group = depth;
    }
  }
  if (sheet === null) throw new Unreadable(text, 0, 'no <svg> element: this is no SVG drawing');
  if (name === null)
    throw new Unreadable(
      text,
      0,
      `no ${names.map((n) => `<g id="${n}">`).join(' or ')}: nothing to cut is named`,
    );
  return { name, sheet, ...out.finish() };
}

function readPart(text: string, tag: Tag, frame: Frame, out: ChainBuilder): void {
  if (tag.name !== 'path') {
    throw new Unreadable(text, tag.offset, `<${tag.name}> among the cut paths: only <path> may stand there`);
  }
  refuseMoving(text, tag);
  const d = tag.attributes.get('d');
  if (d === undefined) throw new Unreadable(text, tag.offset, '<path> has no d');
  readPath(text, d.offset, d.offset + d.value.length, frame, out);
}

function refuseMoving(text: string, tag: Tag): void {
  for (const key of MOVING) {
    const found = tag.attributes.get(key);
    if (found)
      throw new Unreadable(text, found.offset, `${key} on <${tag.name}>: cut paths must stand as they are`);
  }
}

function readSheet(text: string, tag: Tag): Sheet {
  if (tag.name !== 'svg') throw new Unreadable(text, tag.offset, `the root is <${tag.name}>, not <svg>`);
  refuseMoving(text, tag);
  const [width, unit] = readLength(text, tag, 'width');
  const [height, other] = readLength(text, tag, 'height');
  if (unit !== other) throw new Unreadable(text, tag.offset, 'width and height are in different units');
  const box = tag.attributes.get('viewBox');
  const numbers = box
    ? box.value
        .trim()
        .split(/[\s,]+/)
        .map(Number)
    : [];
  const [left, top, w, h] = numbers as [number, number, number, number];
  if (numbers.length !== 4 || numbers.some((n) => n - n !== 0) || w <= 0 || h <= 0) {
    throw new Unreadable(
      text,
      box?.offset ?? tag.offset,
      'viewBox must be four numbers, the last two over 0',
    );
  }
  const scale = (width * MM_PER[unit]) / w;
  const off = (height * MM_PER[unit]) / h / scale - 1;
  if (off > 1e-9 || off < -1e-9) {
    throw new Unreadable(text, box!.offset, 'viewBox and size differ in shape, so the scale is not certain');
  }
  return { unit, width: w * scale, height: h * scale, scale, left: left * scale, top: (top + h) * scale };
}

function readLength(text: string, tag: Tag, key: string): [number, Unit] {
  const found = tag.attributes.get(key);
  const parts = /^\s*([\d.]+(?:[eE][-+]?\d+)?)(mm|in)\s*$/.exec(found?.value ?? '');
  const value = Number(parts?.[1]);
  if (!parts || !(value > 0) || value - value !== 0) {
    const got = found ? `, found ${shown(found.value)}` : '';
    throw new Unreadable(text, found?.offset ?? tag.offset, `${key} must be a length in mm or in${got}`);
  }
  return [value, parts[2] as Unit];
}
