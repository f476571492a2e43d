import { fileStem } from '../fit/inlay.js';
import { islandsOf } from '../fit/islands.js';
import type { Files, Job } from './job.js';

/** The four drawings of an inlay, as the proof reads them. */
export interface InlayFiles {
  readonly pocketSvg: string;
  readonly plugSvg: string;
  readonly pocketDxf: string;
  readonly plugDxf: string;
}

/** The job as if the k-th inlay were its only one. */
export function ofInlay(job: Job, k: number): Job {
  const inlay = job.inlays[k]!;
  if (job.inlays.length === 1 && inlay.wood === job.recipe.woods.plug) return job;
  const islands = islandsOf(inlay.pair);
  // The boards are laid out for the first inlay alone.
  const layouts = k === 0 ? job.layouts : { plug: null, pocket: null };
  const woods = { ...job.recipe.woods, plug: inlay.wood };
  return {
    ...job,
    recipe: { ...job.recipe, woods },
    safe: inlay.safe,
    pair: inlay.pair,
    islands,
    layouts,
    inlays: [inlay],
  };
}

/** The drawings of the k-th inlay as they will be written. */
export function drawingsOf(files: Files, k: number): InlayFiles {
  const text = (part: 'pocket' | 'plug', ending: string): string => {
    const name = `${fileStem(part, k)}.${ending}`;
    const content = files.get(name);
    if (typeof content !== 'string') throw new Error(`${name} was not drawn`);
    return content;
  };
  return {
    pocketSvg: text('pocket', 'svg'),
    plugSvg: text('plug', 'svg'),
    pocketDxf: text('pocket', 'dxf'),
    plugDxf: text('plug', 'dxf'),
  };
}
