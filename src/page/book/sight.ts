import { useEffect } from 'preact/hooks';
import { countOf, type Section } from './entries.js';
import { see, stopDrawing } from './little-drawings.js';

/** How far outside the page that is open drawings are begun, px. */
const AHEAD = 160;

/** Has what can be seen of the entries drawn, as the book is scrolled and searched. */
export function useSight(
  pages: { readonly current: HTMLElement | null },
  sections: readonly Section[],
): void {
  // The same entries again need no new look.
  const which = sections.map((s) => s.entries.map((e) => e.key).join('\n')).join('\n\n');
  useEffect(() => {
    const root = pages.current;
    if (!root || countOf(sections) === 0) return;
    const all = new Map(sections.flatMap((s) => s.entries.map((e) => [e.key, e] as const)));
    const observer = new IntersectionObserver(
      (looks) => {
        const keys = (inside: boolean): string[] =>
          looks
            .filter((l) => l.isIntersecting === inside)
            .map((l) => (l.target as HTMLElement).dataset.entry!);
        see(all, keys(true), keys(false));
      },
      { root, rootMargin: `${AHEAD}px 0px` },
    );
    for (const button of root.querySelectorAll('[data-entry]')) observer.observe(button);
    return () => observer.disconnect();
  }, [which]);
  useEffect(() => stopDrawing, []);
}
