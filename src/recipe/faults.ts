import { BadInput, type Fault, shortKey } from '../schema/fault.js';
import type { Json } from './json.js';

export type Path = readonly string[];

/** More than this tells nobody anything. */
const MOST = 20;

/** Collects faults, giving each the line that its path stands on. */
export class Faults {
  readonly #tree: Json;
  readonly #list: Fault[] = [];
  #more = 0;

  constructor(tree: Json) {
    this.#tree = tree;
  }

  add(path: Path, message: string): void {
    if (this.#list.length >= MOST) {
      this.#more++;
      return;
    }
    const where = path.map(shortKey).join('.');
    this.#list.push({ where, message, source: sourceOf(this.#tree, path) });
  }

  get any(): boolean {
    return this.#list.length > 0;
  }

  error(): BadInput {
    const rest = this.#more > 0 ? [{ where: '', message: `and ${this.#more} more faults` }] : [];
    return new BadInput([...this.#list, ...rest]);
  }
}

/** The line of the value at the path, or of the nearest thing round it that exists. */
function sourceOf(tree: Json, path: Path): string {
  let at = tree;
  for (const key of path) {
    const next =
      at.kind === 'object' ? at.members.get(key) : at.kind === 'array' ? at.items[Number(key)] : undefined;
    if (!next) break;
    at = next;
  }
  return at.source;
}

/** A value as the user gave it, short enough for a line. */
export function shown(value: unknown): string {
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) return String(value);
  if (typeof value !== 'string') return typeof value;
  return JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}...` : value);
}
