import { Refusal } from '../../schema/fault.js';
import { computed, properties, type Style, startingStyle } from './properties.js';
import { matches, type SelectorRank } from './selector.js';
import { type Declaration, readDeclarations, readStyleSheet, type StyleRule } from './stylesheet.js';
import type { DrawingFaults } from './unreadable.js';
import type { SvgElement } from './xml.js';

/** Rules of all style sheets of a drawing; each is tried on every element. */
const MOST_RULES = 1000;

/** Works out the style of each element: attributes, then style sheets by rank and order, then its own `style`. */
export class Cascade {
  readonly #rules: readonly StyleRule[];

  constructor(root: SvgElement, faults: DrawingFaults) {
    const rules: StyleRule[] = [];
    for (const sheet of sheets(root))
      faults.collect(sheet, () => {
        for (const rule of readStyleSheet(sheet.text)) rules.push(rule);
      });
    if (rules.length > MOST_RULES)
      throw new Refusal(
        'too-large',
        `the drawing's style sheets hold more than ${MOST_RULES} rules; remove those not used`,
      );
    // Sorting keeps the order of rules of one rank.
    this.#rules = rules.sort((a, b) => byRank(a.rank, b.rank));
  }

  style(element: SvgElement, parent: Style | null): Style {
    const { attributes } = element;
    const style = startingStyle(parent);
    for (const p of properties) {
      const value = attributes.get(p);
      if (value !== undefined) style[p] = computed(p, value, parent);
    }
    const own = attributes.get('style');
    const declared: Declaration[] = [
      ...this.#rules.filter((r) => matches(element, r.pattern)).flatMap((r) => r.declarations),
      ...(own === undefined ? [] : readDeclarations(own)),
    ];
    for (const important of [false, true])
      for (const d of declared)
        if (d.important === important) style[d.property] = computed(d.property, d.value, parent);
    return style;
  }
}

function byRank(a: SelectorRank, b: SelectorRank): number {
  return a[0] - b[0] || a[1] - b[1] || a[2] - b[2];
}

function sheets(element: SvgElement): SvgElement[] {
  return element.name === 'style' ? [element] : element.children.flatMap(sheets);
}
