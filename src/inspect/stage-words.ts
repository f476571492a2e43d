import type { Recipe } from '../recipe/recipe.js';
import { lengthText, MM_PER_INCH, numberText } from '../schema/units.js';
import type { Stage } from './sums/plan/stage.js';

/** "finishing the pocket". */
export function stageText({ name, part }: Pick<Stage, 'name' | 'part'>): string {
  const doing = name === 'last pass' ? 'the last pass along' : name;
  return `${doing} the ${part}`;
}

export function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What the range of chips holds for: "a 3 mm cutter in white ash, 2.7 times its diameter deep". */
export function rangeText({ tool, wood, known, step, chip }: Stage, units: Recipe['units']): string {
  const deep = numberText(step / tool.diameter, 1);
  return (
    `a ${lengthText(tool.diameter, units)} cutter in ${wood}${known ? '' : ' (hardness not known: taken as hard)'}, ` +
    `${deep} times its diameter deep${chip.beyond ? ' (beyond 3 times nothing is published)' : ''}`
  );
}

/** "1500 mm a minute". */
export function feedText(feed: number, units: Recipe['units']): string {
  return `${units === 'in' ? `${numberText(feed / MM_PER_INCH, 1)} in` : `${numberText(feed, 0)} mm`} a minute`;
}

/** A feed moved to the next that a maker would set, mm a minute: tens, or half inches. */
export function settableFeed(feed: number, units: Recipe['units'], round: (x: number) => number): number {
  const step = units === 'in' ? MM_PER_INCH / 2 : 10;
  return round(feed / step) * step;
}

/** Turns a minute moved to the next hundred. */
export function settableRpm(rpm: number, round: (x: number) => number): number {
  return round(rpm / 100) * 100;
}
