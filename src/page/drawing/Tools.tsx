import { pencilled, showWhole, whole, zoom } from './eye.js';
import { NEARER } from './gestures.js';

/** Nearer, farther, the whole; and whether findings are on the piece. */
export function Tools() {
  return (
    <div class="tools">
      <label class="tick">
        <input
          type="checkbox"
          checked={pencilled.value}
          onChange={(e) => (pencilled.value = e.currentTarget.checked)}
        />
        findings on the piece
      </label>
      <button type="button" aria-label="Farther" title="Farther (−)" onClick={() => zoom(1 / NEARER)}>
        −
      </button>
      <button type="button" aria-label="Nearer" title="Nearer (+)" onClick={() => zoom(NEARER)}>
        +
      </button>
      <button type="button" disabled={whole.value} title="The whole piece (0)" onClick={showWhole}>
        whole piece
      </button>
    </div>
  );
}
