import { useEffect, useRef } from 'preact/hooks';
import { settle, shownIn } from '../state/card.js';
import type { Item } from './items.js';
import { faultAt, put, standing, units } from './on-card.js';
import { stepItem } from './step.js';
import { bareText, fits, typed } from './values.js';

/** A field to type the value in: what the reader takes is drawn as it is typed, the rest once it is done. */
export function Typed({ item, now, unit }: { item: Item; now: string; unit: string }) {
  const p = item.parameter;
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    // While it is typed in, the field is the maker's.
    if (field.current && document.activeElement !== field.current) field.current.value = now;
  });
  const take = (text: string, going: boolean): void => {
    const written = typed(p, text, shownIn.value, units());
    if (!going || fits(p, written, units())) put(item, written, going);
  };
  return (
    <span class="typing">
      <input
        ref={field}
        class="typed"
        type="text"
        inputMode={p.kind === 'count' ? 'numeric' : 'decimal'}
        autocomplete="off"
        spellcheck={false}
        defaultValue={now}
        aria-label={`${p.meaning}${unit === '' ? '' : ` In ${unit === '°' ? 'degrees' : unit}.`}`}
        aria-invalid={faultAt(item.key) !== ''}
        aria-describedby={faultAt(item.key) ? 'dock-fault' : undefined}
        onInput={(e) => take(e.currentTarget.value, true)}
        onChange={(e) => {
          if (e.currentTarget.value.trim() !== '') take(e.currentTarget.value, false);
          settle();
        }}
        onBlur={(e) => {
          if (faultAt(item.key) === '') e.currentTarget.value = now;
        }}
        onKeyDown={(e) => {
          if (e.key === 'Enter' && !e.ctrlKey && !e.metaKey) {
            e.currentTarget.dispatchEvent(new Event('change'));
            e.currentTarget.select();
          }
          const steps = { ArrowUp: 1, ArrowDown: -1 }[e.key];
          if (steps === undefined) return;
          e.preventDefault();
          const it = e.currentTarget;
          stepItem(item, e.shiftKey ? 10 * steps : steps);
          const { held: next, written } = standing(item);
          if (next !== null) it.value = bareText(p, next, shownIn.value, written);
        }}
      />
      <span class="unit">{unit}</span>
    </span>
  );
}
