import { push, room, showWhole, under, zoom } from './eye.js';
import { NEARER } from './gestures.js';
import { clearMeasured, measureAt } from './measuring.js';

/** Pixels an arrow key pushes the paper, and with Shift. */
const STEP = 48;
const LEAP = 240;

/** What a key does to the drawing. False: nothing, the key is somebody else's. */
export function keyed(e: KeyboardEvent): boolean {
  if (e.ctrlKey || e.metaKey || e.altKey) return false;
  if (e.key === 'm') {
    const { width, height } = room.peek();
    measureAt(under([width / 2, height / 2]), true);
    return true;
  }
  const by = e.shiftKey ? LEAP : STEP;
  if (e.key === '+' || e.key === '=') zoom(NEARER);
  else if (e.key === '-' || e.key === '_') zoom(1 / NEARER);
  else if (e.key === '0') showWhole();
  else if (e.key === 'ArrowLeft') push(by, 0);
  else if (e.key === 'ArrowRight') push(-by, 0);
  else if (e.key === 'ArrowUp') push(0, by);
  else if (e.key === 'ArrowDown') push(0, -by);
  else if (e.key !== 'Escape') return false;
  clearMeasured();
  return true;
}
