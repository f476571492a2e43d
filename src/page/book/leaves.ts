import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { idle } from '../drawing/views.js';
import type { Section } from './entries.js';

/** How many sections are laid out. */
const laidOut = signal(1);

/** The sections laid out by now: the book opens with the first at once, the others follow as the page finds time. */
export function useLeaves(sections: readonly Section[]): readonly Section[] {
  const count = laidOut.value;
  const more = count < sections.length;
  useEffect(() => {
    let waiting = more;
    if (more)
      void idle(100).then(() => {
        if (waiting) laidOut.value = count + 1;
      });
    return () => {
      waiting = false;
    };
  }, [count, more]);
  useEffect(
    () => () => {
      laidOut.value = 1;
    },
    [],
  );
  return sections.slice(0, count);
}

/** Turns to a section, laid out or not yet: its title comes to the top and is where the Tab key goes on from. */
export function turnTo(pages: HTMLElement | null, key: string): void {
  laidOut.value = Number.POSITIVE_INFINITY;
  requestAnimationFrame(() => {
    const heading = pages?.querySelector<HTMLElement>(`[data-leaf="${CSS.escape(key)}"]`);
    heading?.scrollIntoView({ block: 'start' });
    heading?.focus({ preventScroll: true });
  });
}
