import { BadInput, type Fault } from '../../schema/fault.js';
import { shortened } from './shortened.js';
import type { SvgElement } from './xml.js';

/** What is wrong with the element at hand, in words that follow its name. Thrown where it is seen, placed by the walk. */
export class Unreadable extends Error {}

/** The faults of one drawing, each with its line and element. */
export class DrawingFaults {
  readonly #source: string;
  readonly #faults: Fault[] = [];
  readonly #seen = new Set<string>();

  /** @param source the file's name, for messages */
  constructor(source: string) {
    this.#source = source;
  }

  /** Runs `read`; what it finds unreadable becomes a fault of the element, and the rest of the drawing is still read. */
  collect(element: SvgElement, read: () => void): void {
    try {
      read();
    } catch (e) {
      if (!(e instanceof Unreadable)) throw e;
      this.add(element, e.message);
    }
  }

  add(element: SvgElement, message: string): void {
    this.addAt(element.line, elementText(element), message);
  }

  /** @param where names the element or entity on the line */
  addAt(line: number, where: string, message: string): void {
    const source = `${this.#source}:${line}`;
    const key = `${source} ${where} ${message}`;
    if (this.#seen.has(key)) return;
    this.#seen.add(key);
    if (this.#faults.length < MOST_FAULTS) this.#faults.push({ source, where, message });
  }

  /** Throws BadInput if there is any fault. */
  check(): void {
    const more = this.#seen.size - this.#faults.length;
    if (this.#seen.size === 0) return;
    const rest =
      more > 0 ? [{ source: this.#source, where: '', message: `and ${more} more of the kind` }] : [];
    throw new BadInput([...this.#faults, ...rest]);
  }
}

const MOST_FAULTS = 8;

/** `<path id="wing">` */
export function elementText({ name, attributes }: SvgElement): string {
  const id = attributes.get('id');
  return id ? `<${shortened(name)} id="${shortened(id)}">` : `<${shortened(name)}>`;
}
