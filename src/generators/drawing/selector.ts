import type { CssNode } from 'css-tree';
import generate from 'css-tree/generator';
import { shortened } from './shortened.js';
import { Unreadable } from './unreadable.js';
import type { SvgElement } from './xml.js';

/** How much a selector counts: ids, then classes, then names (Selectors 3, section 9). */
export type SelectorRank = readonly [ids: number, classes: number, names: number];

/** What one element must be. */
interface Compound {
  readonly name: string | null;
  readonly ids: readonly string[];
  readonly classes: readonly string[];
  /** Is this about the parent of the next compound (true), or about any element round it? */
  readonly direct: boolean;
}

/** Compounds from the outermost to the element itself. */
export type Pattern = readonly Compound[];

/** More parts than this in one selector are refused: matching would take long. */
const MOST_PARTS = 8;

/** States that a drawing on paper is never in. */
const NEVER = /^(hover|focus|focus-within|focus-visible|active|visited|target)$/;

/**
 * Reads a selector of names, classes, ids, `*`, and what is within what. Null for one that never matches; throws
 * Unreadable for any other.
 */
export function readSelector(selector: CssNode): { pattern: Pattern; rank: SelectorRank } | null {
  const refuse = (): never => {
    throw new Unreadable(
      `has a rule for "${shortened(generate(selector))}", which is not read; use names, classes and ids only`,
    );
  };
  if (selector.type !== 'Selector') return refuse();
  const pattern: Compound[] = [];
  let part = { name: null as string | null, ids: [] as string[], classes: [] as string[] };
  let empty = true;
  for (const node of selector.children.toArray()) {
    empty = false;
    if (node.type === 'TypeSelector')
      part.name = node.name === '*' ? null : node.name.replace(/^(\*|svg)\|/, '');
    else if (node.type === 'ClassSelector') part.classes.push(node.name);
    else if (node.type === 'IdSelector') part.ids.push(node.name);
    else if (node.type === 'PseudoClassSelector' && NEVER.test(node.name)) return null;
    else if (node.type === 'PseudoClassSelector' && node.name === 'root') part.name = 'svg';
    else if (node.type === 'Combinator' && (node.name === ' ' || node.name === '>')) {
      pattern.push({ ...part, direct: node.name === '>' });
      part = { name: null, ids: [], classes: [] };
      empty = true;
    } else return refuse();
  }
  if (empty || pattern.length >= MOST_PARTS) return refuse();
  pattern.push({ ...part, direct: false });
  const count = (of: (c: Compound) => number): number => pattern.reduce((sum, c) => sum + of(c), 0);
  return {
    pattern,
    rank: [count((c) => c.ids.length), count((c) => c.classes.length), count((c) => (c.name ? 1 : 0))],
  };
}

/** Is the element one that the pattern is about? */
export function matches(element: SvgElement, pattern: Pattern): boolean {
  return fits(element, pattern, pattern.length - 1);
}

function fits(element: SvgElement, pattern: Pattern, k: number): boolean {
  if (!is(element, pattern[k]!)) return false;
  if (k === 0) return true;
  const direct = pattern[k - 1]!.direct;
  for (let above = element.parent; above; above = above.parent) {
    if (fits(above, pattern, k - 1)) return true;
    if (direct) return false;
  }
  return false;
}

function is({ name, attributes }: SvgElement, c: Compound): boolean {
  if (c.name !== null && c.name !== name) return false;
  if (!c.ids.every((id) => attributes.get('id') === id)) return false;
  if (c.classes.length === 0) return true;
  const classes = (attributes.get('class') ?? '').split(/\s+/);
  return c.classes.every((own) => classes.includes(own));
}
