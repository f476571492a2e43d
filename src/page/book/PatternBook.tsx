import { computed, signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { begun } from '../files/opening.js';
import { choosing } from '../state/bench.js';
import { book, shownIn } from '../state/card.js';
import { ContentsList } from './Contents.js';
import { type BookEntry, countOf, found, patternSections, pieceSections } from './entries.js';
import { onBookKey } from './keys.js';
import { Leaf } from './Leaf.js';
import { turnTo, useLeaves } from './leaves.js';
import { files, readAll, said, stopReading, trees } from './recipes.js';
import { useSight } from './sight.js';
import { asking, begin } from './starting.js';
import { Unsaved } from './Unsaved.js';
import './book.css';

/** The words looked for. */
const words = signal('');

const pieces = computed(() =>
  pieceSections({
    files: files.value,
    shipped: begun?.shipped ?? [],
    book: book.value,
    units: shownIn.value,
    tree: (key) => trees.value.get(key),
  }),
);
const patterns = computed(() => (book.value ? patternSections(book.value) : []));
const shown = computed(() => found([...pieces.value, ...patterns.value], words.value));

/** All that a card can begin with, to look through. */
export function PatternBook() {
  const dialog = useRef<HTMLDialogElement>(null);
  const search = useRef<HTMLInputElement>(null);
  const pages = useRef<HTMLDivElement>(null);
  const leaves = useLeaves(shown.value);
  useSight(pages, leaves);
  useEffect(() => {
    dialog.current?.showModal();
    // On a tablet the search field would bring up the keyboard over half the book.
    const first = matchMedia('(pointer: coarse)').matches ? '#book-title' : 'input';
    dialog.current?.querySelector<HTMLElement>(first)?.focus();
    void readAll();
    return () => {
      stopReading();
      words.value = '';
      asking.value = null;
    };
  }, []);
  const close = (): void => dialog.current?.close();
  const laid = (): void => {
    close();
    // Once the card shows it.
    requestAnimationFrame(() => requestAnimationFrame(toCard));
  };
  const showAll = (): void => {
    words.value = '';
    search.current?.focus();
  };
  const choose = (entry: BookEntry): void => void begin(entry).then((yes) => yes && laid());
  return (
    <dialog
      ref={dialog}
      class="book"
      aria-labelledby="book-title"
      onClose={() => {
        choosing.value = false;
        if (document.activeElement === document.body) toCard();
      }}
      onKeyDown={(e) => onBookKey(e, pages.current, search.current)}
      onDrop={close}
    >
      <header class="book-head">
        <h2 id="book-title" tabIndex={-1}>
          Pattern book
        </h2>
        <label class="book-search">
          <span>Look for</span>
          <input
            ref={search}
            type="search"
            value={words.value}
            spellcheck={false}
            autocomplete="off"
            aria-describedby="book-keys"
            onInput={(e) => (words.value = e.currentTarget.value)}
          />
        </label>
        <p class="soft book-count" role="status">
          {counted(countOf(shown.value), words.value)}
        </p>
        <button type="button" class="book-close" onClick={close}>
          Close
        </button>
        <p class="book-said" role="alert">
          {said.value}
        </p>
      </header>
      <ContentsList sections={shown.value} onTurn={(key) => turnTo(pages.current, key)} />
      <div class="pages" ref={pages}>
        {book.value === null ? <p class="soft">The patterns are coming.</p> : null}
        {leaves.map((s) => (
          <Leaf key={s.key} section={s} onChoose={choose} />
        ))}
        {book.value !== null && shown.value.length === 0 ? <Nothing onAll={showAll} /> : null}
      </div>
      <Unsaved done={laid} />
    </dialog>
  );
}

function Nothing({ onAll }: { onAll: () => void }) {
  return (
    <div class="nothing">
      <p>Nothing in the book fits these words.</p>
      <button type="button" onClick={onAll}>
        Show all again
      </button>
    </div>
  );
}

function counted(count: number, asked: string): string {
  if (asked.trim() === '') return '';
  if (count === 0) return 'None fits.';
  return count === 1 ? '1 fits.' : `${count} fit.`;
}

/** Where a new card begins to be read: its name. */
function toCard(): void {
  const name = document.querySelector<HTMLElement>('.card h1');
  if (!name) return;
  name.tabIndex = -1;
  name.focus();
}
