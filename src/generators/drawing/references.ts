import { shortened } from './shortened.js';
import { Unreadable } from './unreadable.js';
import type { SvgElement } from './xml.js';

/** The elements of a drawing by id: what references in it lead to. Nothing outside the file is ever looked for. */
export class References {
  readonly #ids = new Map<string, SvgElement>();

  constructor(root: SvgElement) {
    this.#note(root);
  }

  #note(element: SvgElement): void {
    const id = element.attributes.get('id');
    if (id !== undefined && !this.#ids.has(id)) this.#ids.set(id, element);
    for (const child of element.children) this.#note(child);
  }

  /** What a `url(#id)` leads to. */
  byUrl(text: string): SvgElement | undefined {
    const id = /^\s*url\(\s*['"]?#([^'")]+)['"]?\s*\)/i.exec(text)?.[1];
    return id === undefined ? undefined : this.#ids.get(id);
  }

  /** What a `use` shows. Throws Unreadable. */
  shownBy({ attributes }: SvgElement): SvgElement {
    const link = (attributes.get('href') ?? attributes.get('xlink:href') ?? '').trim();
    if (!link.startsWith('#'))
      throw new Unreadable(
        `shows "${shortened(link)}", which is not in this file; nothing else is read: copy it in`,
      );
    const target = this.#ids.get(link.slice(1));
    if (!target) throw new Unreadable(`shows "${shortened(link)}", which is not in the file; take it out`);
    return target;
  }
}
