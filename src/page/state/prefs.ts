import { effect, signal } from '@preact/signals';
import { shownIn } from './card.js';

/** What the maker likes, kept in the browser where it lets us. */

export type Light = 'day' | 'night';

/** Null: as the system has it. */
export const light = signal<Light | null>(null);

const KEY = 'inlaywright-likes';

/** Takes up what was liked last time, and keeps what is liked from now on. */
export function startPrefs(): void {
  try {
    const liked = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Record<string, unknown>;
    if (liked.light === 'day' || liked.light === 'night') light.value = liked.light;
    if (liked.shownIn === 'mm' || liked.shownIn === 'in') shownIn.value = liked.shownIn;
  } catch {
    // A browser that keeps nothing, or something that is not ours: the usual will do.
  }
  effect(() => {
    const liked = JSON.stringify({ light: light.value, shownIn: shownIn.value });
    if (light.value) document.documentElement.dataset.light = light.value;
    else delete document.documentElement.dataset.light;
    try {
      localStorage.setItem(KEY, liked);
    } catch {
      // As above.
    }
  });
}

/** Is it dark now? */
export function isNight(): boolean {
  return (light.value ?? (matchMedia('(prefers-color-scheme: dark)').matches ? 'night' : 'day')) === 'night';
}
