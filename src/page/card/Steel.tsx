import type { Rule } from './rule.js';
import { ticksOf } from './rule.js';

/** Width of a slider's handle, pixels: its middle runs from half of it to the rule's end less as much. */
export const HANDLE = 18;

/** Marks and numbers of a steel rule, to lie under a slider. */
export function Steel({ rule }: { rule: Rule }) {
  return (
    <span class="steel" aria-hidden="true">
      {ticksOf(rule).map(({ at, share, size }) => (
        <span
          key={at}
          class={`tick-${size}`}
          style={{ left: `calc(${HANDLE / 2}px + ${share} * (100% - ${HANDLE}px))` }}
        >
          {size === 'long' ? at : ''}
        </span>
      ))}
    </span>
  );
}
