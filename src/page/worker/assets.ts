import type { Assets } from '../../generators/generator.js';
import { faceFiles, fontChoice, fontFault } from '../../generators/lettering/font-name.js';
import type { Shaper } from '../../generators/lettering/shaper.js';
import { type Wanted, wantedBy } from '../../generators/wanted.js';
import type { Recipe } from '../../recipe/recipe.js';
import { BadInput } from '../../schema/fault.js';
import type { Origin } from './protocol.js';

/** Where a worker gets what a recipe names. Each throws an error whose message says why, in words, when it cannot. */
export interface Sources {
  /** A drawing or font at a path from the card's recipe. */
  file(origin: Origin, path: string): Promise<ArrayBuffer>;
  /** A file of a bundled font. */
  font(origin: Origin, name: string, part: number): Promise<ArrayBuffer>;
  /** The engine that shapes text, started when it is first asked for. */
  shaper(): Promise<Shaper>;
}

/** Loads what recipes name, each thing once as long as the card has the same origin. */
export class AssetStore {
  readonly #sources: Sources;
  readonly #fonts = new Map<string, readonly ArrayBuffer[]>();
  #own = new Map<string, ArrayBuffer>();
  #of = '';

  constructor(sources: Sources) {
    this.#sources = sources;
  }

  /** Throws BadInput for what cannot be had, about the key that names it. */
  async load({ pattern }: Pick<Recipe, 'pattern'>, origin: Origin): Promise<Assets> {
    const of = `${origin.file}\n${origin.shipped}`;
    if (of !== this.#of) {
      this.#own = new Map();
      this.#of = of;
    }
    const wanted = wantedBy(pattern);
    const fonts = new Map<string, readonly ArrayBuffer[]>();
    for (const w of wanted.fonts) fonts.set(w.name, await this.#font(w, origin));
    const drawings = new Map<string, string>();
    for (const w of wanted.drawings) drawings.set(w.name, textOf(await this.#file(w, origin), w));
    return fonts.size === 0 ? { fonts, drawings } : { fonts, drawings, shaper: await this.#sources.shaper() };
  }

  async #font(w: Wanted, origin: Origin): Promise<readonly ArrayBuffer[]> {
    const choice = fontChoice(w.name);
    if (!choice) throw new BadInput([{ where: w.where, message: fontFault(w.name)! }]);
    if ('path' in choice) return [await this.#file(w, origin)];
    const known = this.#fonts.get(w.name);
    if (known) return known;
    const parts = await named(w, () =>
      Promise.all(faceFiles(choice.face).map((_, k) => this.#sources.font(origin, w.name, k))),
    );
    this.#fonts.set(w.name, parts);
    return parts;
  }

  async #file(w: Wanted, origin: Origin): Promise<ArrayBuffer> {
    const bytes = this.#own.get(w.name) ?? (await named(w, () => this.#sources.file(origin, w.name)));
    this.#own.set(w.name, bytes);
    return bytes;
  }
}

async function named<T>({ where }: Wanted, get: () => Promise<T>): Promise<T> {
  try {
    return await get();
  } catch (e) {
    throw new BadInput([{ where, message: e instanceof Error ? e.message : String(e) }]);
  }
}

function textOf(bytes: ArrayBuffer, { name, where }: Wanted): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // As on the command line: older programs write DXF in the code page of Windows.
    if (/\.dxf$/i.test(name) && !new Uint8Array(bytes).includes(0))
      return new TextDecoder('windows-1252').decode(bytes);
    throw new BadInput([{ where, message: `${name} is no UTF-8; save it as UTF-8 text` }]);
  }
}
