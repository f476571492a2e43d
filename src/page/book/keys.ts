import { led } from './grid.js';

/** Keys of the book: arrows over the entries, and from the search field into them and back. */
export function onBookKey(
  e: KeyboardEvent,
  pages: HTMLElement | null,
  search: HTMLInputElement | null,
): void {
  // Ctrl Z in the search field is the field's own: the card behind hears no keys.
  if (e.ctrlKey || e.metaKey) e.stopPropagation();
  if (e.altKey || e.metaKey || e.shiftKey || !pages) return;
  const entries = [...pages.querySelectorAll<HTMLElement>('[data-entry]')];
  if (e.target === search) {
    if (e.key === 'ArrowDown' || e.key === 'Enter') go(e, entries[0]);
    return;
  }
  const from = entries.indexOf(e.target as HTMLElement);
  if (from < 0) return;
  const places = entries.map((b) => b.getBoundingClientRect());
  const to = led(places, from, e.key, e.ctrlKey);
  if (to !== null) go(e, entries[to]);
  else if (e.key === 'ArrowUp') go(e, search);
}

function go(e: KeyboardEvent, to: HTMLElement | null | undefined): void {
  if (!to) return;
  e.preventDefault();
  to.focus();
}
