import { useState } from 'preact/hooks';
import { Entry } from './Entry.js';
import type { BookEntry, Section } from './entries.js';

/** A section of the book. The Tab key stops at one of its entries, the one used last; arrow keys go on from there. */
export function Leaf({ section, onChoose }: { section: Section; onChoose: (entry: BookEntry) => void }) {
  const [last, setLast] = useState('');
  const { key, title, about, of, entries } = section;
  const stop = entries.some((e) => e.key === last) ? last : entries[0]?.key;
  return (
    <section class="leaf" aria-labelledby={`leaf-${key}`}>
      <h3 id={`leaf-${key}`} data-leaf={key} tabIndex={-1}>
        {title}
      </h3>
      <p class="soft">{about}</p>
      <ul
        class={of}
        onFocusIn={(e) =>
          setLast((e.target as HTMLElement).closest<HTMLElement>('[data-entry]')?.dataset.entry ?? '')
        }
      >
        {entries.map((e) => (
          <Entry key={e.key} entry={e} stop={e.key === stop} onChoose={onChoose} />
        ))}
      </ul>
    </section>
  );
}
