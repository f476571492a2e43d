import { Refusal } from '../../schema/fault.js';
import { Cascade } from './cascade.js';
import { readClip } from './clip.js';
import { type Context, inViewport, pageSize } from './context.js';
import { type Display, fillRule, type Painted } from './display.js';
import { collapses, IDENTITY, multiply, readTransform } from './matrix.js';
import type { Subpath } from './outline-path.js';
import { opacity, readPaint } from './paint.js';
import type { Style } from './properties.js';
import { References } from './references.js';
import { isShape, lengths, shapePath, type Whole, wholeOf } from './shapes.js';
import { readStroke } from './stroke-style.js';
import { type DrawingFaults, Unreadable } from './unreadable.js';
import { readViewBox } from './viewport.js';
import type { SvgElement } from './xml.js';

/** Bounds for what references can multiply. */
const MOST_VISITS = 100_000;
const MOST_STEPS = 60_000;
const MOST_DEPTH = 400;

const REFUSED: Readonly<Record<string, string>> = {
  text: 'is text, which depends on fonts; use the lettering generator in a layer of its own, or turn it into paths',
  image: 'is a picture of pixels; trace it into paths first',
  foreignObject: 'holds something that is no drawing; take it out',
};

/** Follows a drawing from its root in the order of painting. Faults go to `faults`; the rest is still read. */
export class Walk {
  readonly #cascade: Cascade;
  readonly #faults: DrawingFaults;
  readonly #references: References;
  readonly #painted: Painted[] = [];
  #visits = 0;
  #steps = 0;

  constructor(root: SvgElement, faults: DrawingFaults) {
    this.#cascade = new Cascade(root, faults);
    this.#faults = faults;
    this.#references = new References(root);
  }

  display(root: SvgElement): Display {
    let page: Display['page'] = null;
    this.#faults.collect(root, () => {
      const box = readViewBox(root);
      page = pageSize(root, box);
      const style = this.#cascade.style(root, null);
      const whole = box ?? page ?? { width: Number.NaN, height: Number.NaN };
      const outer: Context = { style, matrix: IDENTITY, whole: wholeOf(1, 1), clips: [], used: [], depth: 0 };
      const port = page && { x: 0, y: 0, ...page };
      const inner = port ? inViewport(outer, root, style, port, box) : outer;
      if (style.display !== 'none')
        this.#children(root, { ...inner, whole: wholeOf(whole.width, whole.height) });
    });
    return { painted: this.#painted, page };
  }

  #children(element: SvgElement, context: Context): void {
    for (const child of element.children) this.#faults.collect(child, () => this.#element(child, context));
  }

  #element(element: SvgElement, outer: Context): void {
    if (++this.#visits > MOST_VISITS)
      throw new Refusal('too-large', `the drawing shows more than ${MOST_VISITS} elements; make it simpler`);
    if (outer.depth > MOST_DEPTH)
      throw new Unreadable(`is nested deeper than ${MOST_DEPTH} elements; ungroup it`);
    const { name } = element;
    const container = ['g', 'a', 'svg', 'use', 'switch'].includes(name);
    const refused = Object.hasOwn(REFUSED, name);
    if (!container && !refused && !isShape(name)) return;
    const style = this.#cascade.style(element, outer.style);
    if (style.display === 'none' || opacity(style, 'opacity') === 0) return;
    if (refused) {
      if (style.visibility === 'visible') throw new Unreadable(REFUSED[name]!);
      return;
    }
    for (const p of ['mask', 'filter'] as const)
      if (style[p] !== 'none')
        throw new Unreadable(`has a ${p}, which is not read; take it off, or turn it into paths`);
    const context = this.#within(style, outer);
    if (collapses(context.matrix)) return;
    if (isShape(name)) this.#shape(element, style, context);
    else if (name === 'svg') this.#nested(element, element, style, context);
    else if (name === 'use') this.#use(element, style, context);
    else if (name === 'switch') this.#children({ ...element, children: chosen(element) }, context);
    else this.#children(element, context);
  }

  #within(style: Style, outer: Context): Context {
    if (style.transform !== 'none' && !/^0(px|%)?(\s+0(px|%)?)*$/.test(style['transform-origin']))
      throw new Unreadable('has a transform-origin, which is not read; give the transform about the origin');
    const matrix = multiply(outer.matrix, readTransform(style.transform));
    const clips = [...outer.clips];
    if (style['clip-path'] !== 'none')
      clips.push(
        readClip(style['clip-path'], matrix, outer.whole, {
          cascade: this.#cascade,
          references: this.#references,
          path: (shape, whole) => this.#path(shape, whole),
        }),
      );
    return { ...outer, style, matrix, clips, depth: outer.depth + 1 };
  }

  #shape(element: SvgElement, style: Style, { matrix, clips, whole }: Context): void {
    if (style.visibility !== 'visible') return;
    const path = this.#path(element, whole);
    const server = (url: string): string | undefined => this.#references.byUrl(url)?.name;
    const common = { element, path, matrix, clips, rule: fillRule(style['fill-rule']) };
    const fill = readPaint(style, 'fill', server);
    const line = readPaint(style, 'stroke', server);
    const stroke = line === 'none' ? null : readStroke(style, whole.other);
    if (['marker-start', 'marker-mid', 'marker-end'].some((p) => style[p as keyof Style] !== 'none'))
      throw new Unreadable(
        'has markers (arrowheads), which are not read; draw them as paths, or take them off',
      );
    const fills: Painted[] = fill === 'none' ? [] : [{ ...common, white: fill === 'white', stroke: null }];
    const strokes: Painted[] = stroke ? [{ ...common, white: line === 'white', stroke }] : [];
    const strokeFirst = /^(markers\s+)?stroke/.test(style['paint-order']);
    this.#painted.push(...(strokeFirst ? [...strokes, ...fills] : [...fills, ...strokes]));
  }

  #path(element: SvgElement, whole: Whole): Subpath[] {
    const path = shapePath(element, whole);
    for (const { steps } of path) this.#steps += steps.length + 1;
    if (this.#steps > MOST_STEPS)
      throw new Refusal('too-large', `the drawing has more than ${MOST_STEPS} edges; make it simpler`);
    return path;
  }

  /** A `svg` or `symbol` with a viewport of its own; sizes come from `sized`, the element or what uses it. */
  #nested(element: SvgElement, sized: SvgElement, style: Style, context: Context): void {
    const read = (from: SvgElement, name: 'width' | 'height'): number => {
      const along = name === 'width' ? 'x' : 'y';
      const given = from.attributes.has(name) && from.attributes.get(name) !== 'auto' ? from : element;
      const none = given.attributes.get(name) === 'auto' || !given.attributes.has(name);
      return none ? context.whole[along] : lengths(given, context.whole)(name, along);
    };
    const own = element.name === 'svg' ? lengths(element, context.whole) : () => 0;
    const port = {
      x: own('x', 'x'),
      y: own('y', 'y'),
      width: read(sized, 'width'),
      height: read(sized, 'height'),
    };
    if (!(port.width > 0 && port.height > 0)) return;
    this.#children(element, inViewport(context, element, style, port, readViewBox(element)));
  }

  #use(element: SvgElement, style: Style, context: Context): void {
    const target = this.#references.shownBy(element);
    if (context.used.includes(target) || isWithin(element, target))
      throw new Unreadable('leads back to itself; take it out');
    const n = lengths(element, context.whole);
    const matrix = multiply(context.matrix, [1, 0, 0, 1, n('x', 'x'), n('y', 'y')]);
    const inner = { ...context, matrix, style, used: [...context.used, target] };
    if (target.name !== 'symbol' && target.name !== 'svg') {
      this.#faults.collect(target, () => this.#element(target, inner));
      return;
    }
    const own = this.#cascade.style(target, style);
    if (own.display === 'none') return;
    this.#faults.collect(target, () => this.#nested(target, element, own, this.#within(own, inner)));
  }
}

/** The first child of a `switch` that asks for nothing. */
function chosen(element: SvgElement): SvgElement[] {
  const asks = ['requiredExtensions', 'requiredFeatures', 'systemLanguage'];
  return element.children.filter((c) => !asks.some((a) => c.attributes.has(a))).slice(0, 1);
}

function isWithin(element: SvgElement, other: SvgElement): boolean {
  for (let e: SvgElement | null = element; e; e = e.parent) if (e === other) return true;
  return false;
}
