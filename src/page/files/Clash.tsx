import { clash, file } from '../state/card.js';
import { take } from './changes.js';
import { keepMine } from './saving.js';

/** Asks which version holds when file and card have both changed. */
export function Clash() {
  const other = clash.value;
  if (!other) return null;
  return (
    <div class="ask" role="alertdialog" aria-labelledby="clash">
      <p id="clash">
        {file.value.path} was changed elsewhere while the card has changes of its own. Nothing is overwritten
        until you choose.
      </p>
      <button type="button" onClick={() => take(other)}>
        Take the file as it is now
      </button>
      <button type="button" onClick={keepMine}>
        Keep mine; saving replaces the file
      </button>
    </div>
  );
}
