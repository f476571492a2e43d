import { choosing } from '../state/bench.js';
import { at, canRedo, canUndo, file, redo, shownIn, text, undo, unsaved } from '../state/card.js';
import { isNight, light } from '../state/prefs.js';
import { made, makePiece, making } from './making.js';
import { save } from './saving.js';

/** The head of the card: what lies on it, and what can be done with the whole of it. */
export function FileBar() {
  const empty = text.value === '';
  const name = empty ? '' : at(['name']);
  return (
    <header class="head">
      <div class="title">
        <h1>{typeof name === 'string' && name !== '' ? name.replaceAll('-', ' ') : 'Inlaywright'}</h1>
        <FileState />
      </div>
      <div class="deeds">
        <button type="button" onClick={() => (choosing.value = true)}>
          Pattern book
        </button>
        <button
          type="button"
          disabled={!canUndo.value}
          onClick={undo}
          title="Take back the last change (Ctrl Z)"
        >
          Undo
        </button>
        <button
          type="button"
          disabled={!canRedo.value}
          onClick={redo}
          title="Do again what was taken back (Ctrl Y)"
        >
          Redo
        </button>
        <UnitSwitch />
        <button
          type="button"
          title="Light or dark surroundings; the drawing's paper stays light"
          onClick={() => (light.value = isNight() ? 'day' : 'night')}
        >
          {isNight() ? 'Light' : 'Dark'}
        </button>
        <button type="button" disabled={empty || !unsaved.value} onClick={() => void save()} title="Ctrl S">
          Save
        </button>
        <button
          type="button"
          class="main"
          disabled={empty || (making.value !== null && 'now' in making.value)}
          onClick={() => void makePiece()}
          title="Write all files and prove them (Ctrl Enter)"
        >
          {made.value ? 'Make again' : 'Make'}
        </button>
      </div>
    </header>
  );
}

function FileState() {
  const { path } = file.value;
  if (text.value === '') return <p class="file">choose a piece or a pattern to start from</p>;
  if (path === null) return <p class="file">not saved yet</p>;
  return (
    <p class="file">
      {path}
      {unsaved.value ? ', with changes not saved' : ''}
    </p>
  );
}

function UnitSwitch() {
  return (
    <fieldset class="switch">
      <legend class="unseen">Lengths are shown in</legend>
      {(['mm', 'in'] as const).map((u) => (
        <label key={u}>
          <input
            type="radio"
            name="shown-in"
            class="unseen"
            checked={shownIn.value === u}
            onChange={() => (shownIn.value = u)}
          />
          <span>{u === 'mm' ? 'mm' : 'inch'}</span>
        </label>
      ))}
    </fieldset>
  );
}
