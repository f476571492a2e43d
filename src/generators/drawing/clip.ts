import type { Cascade } from './cascade.js';
import { type Clip, type ClipShape, fillRule } from './display.js';
import { collapses, type Matrix, multiply, readTransform } from './matrix.js';
import type { Subpath } from './outline-path.js';
import type { Style } from './properties.js';
import type { References } from './references.js';
import { isShape, lengths, type Whole } from './shapes.js';
import { shortened } from './shortened.js';
import { Unreadable } from './unreadable.js';
import type { SvgElement } from './xml.js';

/** What reading a clip takes from the walk. */
export interface Clipping {
  readonly cascade: Cascade;
  readonly references: References;
  path(element: SvgElement, whole: Whole): Subpath[];
}

/** The clip that a `clip-path` names, drawn where `matrix` puts the element that has it. Throws Unreadable. */
export function readClip(text: string, matrix: Matrix, whole: Whole, from: Clipping): Clip {
  const element = from.references.byUrl(text);
  if (element?.name !== 'clipPath')
    throw new Unreadable(
      `has clip-path="${shortened(text)}", which is no clipPath of this file; take it off`,
    );
  const style = from.cascade.style(element, null);
  const units = element.attributes.get('clipPathUnits');
  if (units === 'objectBoundingBox' || style['clip-path'] !== 'none') throw unknownKind();
  const own = multiply(matrix, readTransform(style.transform));
  return element.children.flatMap((child) => shapesOf(child, style, own, whole, from));
}

function shapesOf(
  element: SvgElement,
  parent: Style,
  outer: Matrix,
  whole: Whole,
  from: Clipping,
): ClipShape[] {
  const style = from.cascade.style(element, parent);
  if (style.display === 'none' || style.visibility !== 'visible') return [];
  if (style['clip-path'] !== 'none' || element.name === 'text') throw unknownKind();
  const matrix = multiply(outer, readTransform(style.transform));
  if (element.name === 'use') {
    const target = from.references.shownBy(element);
    if (!isShape(target.name)) return [];
    const n = lengths(element, whole);
    return shapesOf(target, style, multiply(matrix, [1, 0, 0, 1, n('x', 'x'), n('y', 'y')]), whole, from);
  }
  if (!isShape(element.name) || collapses(matrix)) return [];
  return [{ path: from.path(element, whole), matrix, rule: fillRule(style['clip-rule']) }];
}

function unknownKind(): Unreadable {
  return new Unreadable('has a clip-path of a kind that is not read; cut the paths themselves');
}
