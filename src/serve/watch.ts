import type { Change } from '../wire.js';
import { Denied } from './denied.js';
import { openRecipe } from './recipes.js';

/** How often the files on the card are looked at, ms. Asking is surer than being told: editors replace files in many ways. */
const EVERY = 400;

/** Watches the recipes that the page has opened or saved, and tells of contents that are new. */
export class Watch {
  readonly #root: string;
  readonly #known = new Map<string, string | null>();
  readonly #listeners = new Set<(change: Change) => void>();
  #timer: NodeJS.Timeout | null = null;

  constructor(root: string) {
    this.#root = root;
  }

  /** What the page knows a file to hold. */
  knows(file: string, version: string | null): void {
    this.#known.set(file, version);
  }

  /** Hears of changes until the returned function is called. */
  listen(hear: (change: Change) => void): () => void {
    this.#listeners.add(hear);
    this.#timer ??= setInterval(() => this.#look(), EVERY).unref();
    return () => {
      this.#listeners.delete(hear);
      if (this.#listeners.size === 0) this.stop();
    };
  }

  stop(): void {
    if (this.#timer) clearInterval(this.#timer);
    this.#timer = null;
  }

  #look(): void {
    for (const [file, known] of this.#known) {
      const version = this.#versionOf(file, known);
      if (version === known) continue;
      this.#known.set(file, version);
      for (const hear of this.#listeners) hear({ file, version });
    }
  }

  #versionOf(file: string, known: string | null): string | null {
    try {
      return openRecipe(this.#root, file).version;
    } catch (e) {
      if (!(e instanceof Denied)) throw e;
      // Unreadable for a moment, as while it is written, is no change.
      return e.status === 404 ? null : known;
    }
  }
}
