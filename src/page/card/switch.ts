import type { Units } from '../../schema/units.js';
import { read, type Written, withValue, writtenAt } from '../state/edit.js';
import type { Kind } from './items.js';
import { fits } from './values.js';

/** Keys of a layer that are not its generator's. */
const OF_LAYER = ['combine', 'clear', 'nearby', 'within'];
/** Keys of `within` that are not its shape's. */
const OF_PLACE = ['inset', 'x', 'y'];

/**
 * The text with another shape or generator, in the ways to be tried, the best first: with those of the values written
 * that the new one has a place for, and with none of its own.
 */
export function switched(text: string, kind: Kind, name: string, units: Units): string[] {
  const path = kind.path.slice(0, -1);
  const before = writtenAt(read(text), path);
  const entry = kind.entries.find((e) => e.name === name);
  if (!entry || before === null || typeof before !== 'object' || Array.isArray(before)) return [text];
  const more = path.at(-1) === 'within' ? OF_PLACE : kind.word === 'generator' ? OF_LAYER : [];
  const kept = (own: boolean): string => {
    const after: Record<string, Written> = {};
    for (const [key, value] of Object.entries(before) as [string, Written][]) {
      const p = entry.parameters.find((q) => q.name === key);
      if (key === kind.word) after[key] = name;
      else if (p ? own && fits(p, value, units) : more.includes(key)) after[key] = value;
    }
    return withValue(text, path, { [kind.word]: name, ...after });
  };
  return [kept(true), kept(false)];
}
