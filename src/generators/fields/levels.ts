import { contains, type Region } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import { mm } from '../values.js';
import type { Samples } from './level.js';
import type { Surface } from './smooth.js';

/** More levels than these make lines too many to follow in a few seconds. */
const MOST_LEVELS = 100;

/** Shifts of the levels that are tried. */
const SHIFTS = 32;

/**
 * Levels evenly spaced, so far apart that their lines keep `pitch` mm where the ground is steepest. They keep clear of
 * summits, hollows and passes: a line that only just rounds one is a crumb, or all but touches itself.
 */
export function evenLevels(surface: Surface, samples: Samples, field: Region, pitch: number): number[] {
  const { box, cell, across, up, heights } = samples;
  let steep = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const turning: number[] = [];
  for (let j = 1; j + 1 < up; j++)
    for (let i = 1; i + 1 < across; i++) {
      const x = box.minX + i * cell;
      const y = box.minY + j * cell;
      if (!contains(field, x, y)) continue;
      const [gx, gy] = surface.gradient(x, y);
      steep = Math.max(steep, Math.sqrt(gx * gx + gy * gy));
      const h = heights[j * across + i]!;
      low = Math.min(low, h);
      high = Math.max(high, h);
      if (turns(heights, j * across + i, across)) turning.push(h);
    }
  const step = steep * pitch;
  if ((high - low) / step > MOST_LEVELS) {
    const least = Math.ceil(((high - low) / steep / MOST_LEVELS) * 100) / 100;
    throw new Refusal(
      'too-large',
      `pattern.gap: lines ${mm(pitch)} apart are more than ${MOST_LEVELS}; use strap and gap of ${mm(least)} or more together`,
    );
  }
  let best = { clear: -1, first: low };
  for (let k = 0; k < SHIFTS; k++) {
    const first = low + (step * (k + 0.5)) / SHIFTS;
    const clear = Math.min(step, ...turning.map((h) => offLevel(h, first, step)));
    if (clear > best.clear + 1e-9 * step) best = { clear, first };
  }
  const out: number[] = [];
  for (let k = 0; best.first + k * step < high; k++) out.push(best.first + k * step);
  return out;
}

function offLevel(height: number, first: number, step: number): number {
  const k = Math.round((height - first) / step);
  return Math.abs(height - first - k * step);
}

/** Whether a sample is a summit, a hollow or a pass: its neighbours in turn are higher or lower, with 0 or 4 changes. */
function turns(heights: Float64Array, k: number, across: number): boolean {
  const round = [1, 1 + across, across, across - 1, -1, -1 - across, -across, 1 - across];
  const higher = round.map((d) => heights[k + d]! > heights[k]!);
  const changes = higher.filter((h, i) => h !== higher[(i + 1) % 8]).length;
  return changes !== 2;
}
