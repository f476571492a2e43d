import { redo, undo } from '../state/card.js';
import { makePiece } from './making.js';
import { save } from './saving.js';

/** Keys that hold everywhere on the page: undo, redo, save, make. */
export function startKeys(): void {
  addEventListener('keydown', (e) => {
    if (!(e.ctrlKey || e.metaKey) || e.altKey) return;
    const key = e.key.toLowerCase();
    if (key === 's') void save();
    else if (key === 'enter') void makePiece();
    else if (key === 'y' || (key === 'z' && e.shiftKey)) redo();
    else if (key === 'z') undo();
    else return;
    e.preventDefault();
  });
}
