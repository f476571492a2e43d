import type { CssNode, Rule, SelectorList } from 'css-tree';
import generate from 'css-tree/generator';
import parse from 'css-tree/parser';
import { isProperty, type Property } from './properties.js';
import { type Pattern, readSelector, type SelectorRank } from './selector.js';
import { shortened } from './shortened.js';
import { Unreadable } from './unreadable.js';

export interface Declaration {
  readonly property: Property;
  readonly value: string;
  readonly important: boolean;
}

/** A rule for one selector. */
export interface StyleRule {
  readonly pattern: Pattern;
  readonly rank: SelectorRank;
  readonly declarations: readonly Declaration[];
}

/** The declarations of a `style` attribute that matter here. */
export function readDeclarations(text: string): Declaration[] {
  return declarationsOf(parse(text, { context: 'declarationList', parseValue: false }));
}

/**
 * The rules of a style sheet, as far as they set what matters here. Rules inside @media and the like are left out: they
 * are for screens of some kind. Throws Unreadable for a selector that is not read but would matter.
 */
export function readStyleSheet(text: string): StyleRule[] {
  const sheet = parse(text, { parseValue: false, positions: false });
  const rules: StyleRule[] = [];
  if (sheet.type !== 'StyleSheet') return rules;
  for (const node of sheet.children.toArray())
    if (node.type === 'Rule') for (const rule of rulesOf(node)) rules.push(rule);
  return rules;
}

function rulesOf(rule: Rule): StyleRule[] {
  const declarations = declarationsOf(rule.block);
  if (declarations.length === 0) return [];
  if (rule.prelude.type === 'Raw')
    throw new Unreadable(`has a rule that cannot be read: "${shortened(rule.prelude.value)}"`);
  return selectors(rule.prelude).flatMap((selector) => {
    const read = readSelector(selector);
    return read ? [{ ...read, declarations }] : [];
  });
}

function selectors(list: SelectorList): CssNode[] {
  return list.children.toArray();
}

function declarationsOf(list: CssNode): Declaration[] {
  if (list.type !== 'DeclarationList' && list.type !== 'Block') return [];
  return list.children.toArray().flatMap((node) => {
    if (node.type !== 'Declaration') return [];
    const property = node.property.toLowerCase();
    if (!isProperty(property)) return [];
    return [{ property, value: generate(node.value).trim(), important: node.important !== false }];
  });
}
