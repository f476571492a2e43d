import { signal } from '@preact/signals';
import type { ViewName } from '../worker/protocol.js';

/** What lies before the maker: which view, which finding is looked at, and what else is open. */

export const view = signal<ViewName>('piece');
/** The finished vessel is looked at instead, where the card is of one. */
export const round = signal(false);
/** Number of the finding that is pointed at; null: none. */
export const picked = signal<number | null>(null);
/** Path of the value that lies under the rule, such as pattern.gap; null: none. */
export const held = signal<string | null>(null);
/** The pattern book is open. */
export const choosing = signal(false);
/** One line for everyone to read, also aloud; '' for none. */
export const notice = signal('');
