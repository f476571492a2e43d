import type { Outline } from '../../outline/outline.js';
import type { Values } from '../../schema/parameter.js';
import { num } from '../values.js';
import { leastShare } from './stave-track.js';

/** The values with strap and gap widened so that they come out no narrower than asked where a level band is squeezed. */
export function widened(values: Values, outline: Outline, half: number): Values {
  const share = leastShare(values, outline, half);
  if (share >= 1) return values;
  return { ...values, strap: num(values, 'strap') / share, gap: num(values, 'gap') / share };
}
