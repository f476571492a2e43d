import type { Assets } from '../../generators/generator.js';
import type { Job } from '../../output/job.js';
import { readRecipe } from '../../recipe/read.js';
import type { Recipe } from '../../recipe/recipe.js';
import { AssetStore, type Sources } from './assets.js';
import { bookOf } from './book.js';
import { drawCoarse, Pace } from './coarse.js';
import { drawExact } from './exact.js';
import { measuredAt } from './measure.js';
import type { Answer, Ask, Drawn, Origin, Thumbnail, Trouble } from './protocol.js';
import { CARD, troubleOf } from './trouble.js';
import { viewNamed } from './views/index.js';

/**
 * What answers the page: keeps the job that was drawn exactly last, and what was loaded. A recipe's faults are an
 * answer; what is our own fault is thrown. `now` gives milliseconds.
 */
export class Answerer {
  readonly #store: AssetStore;
  readonly #now: () => number;
  readonly #pace = new Pace();
  #last: { readonly job: Job; readonly assets: Assets } | null = null;

  constructor(sources: Sources, now: () => number) {
    this.#store = new AssetStore(sources);
    this.#now = now;
  }

  async answer(body: Ask): Promise<Answer<Ask['ask']>> {
    switch (body.ask) {
      case 'book':
        return bookOf();
      case 'draw':
        return this.#drawn(body.text, body.origin, (recipe, assets) => {
          if (!body.exact) return drawCoarse(recipe, assets, this.#pace, this.#now);
          this.#last = null;
          const { job, drawn } = drawExact(recipe, assets, this.#now);
          this.#last = { job, assets };
          return drawn;
        });
      case 'thumbnail':
        return this.#drawn(body.text, body.origin, (recipe, assets): Thumbnail => {
          const { figure } = drawCoarse(recipe, assets, new Pace(), this.#now);
          return { kind: 'thumbnail', figure };
        });
      case 'view': {
        const last = this.#last;
        if (!last) return { kind: 'trouble', recipe: null, faults: [] };
        try {
          return viewNamed(body.view, last.job, body.units, last.assets);
        } catch (e) {
          return troubleOf(e, last.job.recipe);
        }
      }
      case 'measure':
        return this.#last ? measuredAt(this.#last.job, body.at[0], -body.at[1]) : null;
    }
  }

  async #drawn<T extends Drawn | Thumbnail>(
    text: string,
    origin: Origin,
    draw: (recipe: Recipe, assets: Assets) => T,
  ): Promise<T | Trouble> {
    let recipe: Recipe | null = null;
    try {
      recipe = readRecipe(text, CARD);
      return draw(recipe, await this.#store.load(recipe, origin));
    } catch (e) {
      return troubleOf(e, recipe);
    }
  }
}
