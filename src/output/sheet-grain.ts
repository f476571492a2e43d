import { decimal } from './format.js';
import type { Job } from './job.js';

/**
 * The direction of a part's grain as it lies on that part's own drawing. A mirrored drawing shows it at 180 degrees less
 * the angle it has on the piece, which is named then too.
 */
export function grainText({ pair, recipe }: Job, part: 'field' | 'plug'): string {
  const { fieldGrain, plugGrain } = recipe.woods;
  if (part === 'field') return `${turned(fieldGrain)} from the drawing’s x`;
  if (!pair.mirrored) return `${turned(plugGrain)} from the drawing’s x`;
  return `${turned(Math.PI - plugGrain)} from its mirrored drawing’s x (${turned(plugGrain)} on the piece)`;
}

/** A direction in degrees, 0 up to 180: grain has no sense. */
function turned(angle: number): string {
  const degrees = (angle / Math.PI) * 180;
  return `${decimal(degrees - 180 * Math.floor((degrees + 1e-7) / 180), 1)}\u00b0`;
}
