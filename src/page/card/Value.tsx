import { useComputed } from '@preact/signals';
import { held } from '../state/bench.js';
import type { Item } from './items.js';
import { faultAt } from './on-card.js';
import { saidOf } from './said.js';
import { stepItem } from './step.js';
import { toDock } from './to-dock.js';

/** A value in its clause: to be picked, and stepped with the arrow keys. */
export function Value({ item, first, last }: { item: Item; first: boolean; last: boolean }) {
  const said = useComputed(() => saidOf(item));
  const fault = useComputed(() => faultAt(item.key));
  const picked = useComputed(() => held.value === item.key);
  const { before, text, after, usual } = said.value;
  const look = ['value', usual ? 'usual' : '', fault.value ? 'wrong' : '', picked.value ? 'picked' : ''];
  return (
    <>
      {first ? capital(before) : before}
      <button
        type="button"
        class={look.filter(Boolean).join(' ')}
        data-key={item.key}
        title={item.parameter.meaning}
        aria-label={`${before}${text}${after}`}
        aria-pressed={picked.value}
        aria-invalid={fault.value !== ''}
        onClick={() => {
          if (held.value === item.key) toDock();
          else held.value = item.key;
        }}
        onKeyDown={(e) => {
          if (keyed(item, e)) e.preventDefault();
        }}
      >
        {text}
      </button>
      {after}
      {last ? '. ' : ', '}
    </>
  );
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** Arrow keys step a size where it stands. */
function keyed(item: Item, e: KeyboardEvent): boolean {
  const steps = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[e.key];
  if (steps === undefined || e.ctrlKey || e.metaKey || e.altKey) return false;
  held.value = item.key;
  return stepItem(item, e.shiftKey ? 10 * steps : steps);
}
