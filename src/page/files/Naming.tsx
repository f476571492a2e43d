import { useEffect, useRef } from 'preact/hooks';
import { naming } from './saving.js';

/** Asks for the name of a new file. */
export function Naming() {
  const ask = naming.value;
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (ask) dialog.current?.showModal();
  }, [ask]);
  if (!ask) return null;
  return (
    <dialog ref={dialog} class="naming" aria-labelledby="naming" onClose={() => ask.done(null)}>
      <form
        onSubmit={(e) => {
          e.preventDefault();
          const given = String(new FormData(e.currentTarget).get('file')).trim();
          if (given !== '') ask.done(/\.json$/i.test(given) ? given : `${given}.json`);
        }}
      >
        <h2 id="naming">Save this card</h2>
        <label>
          File in the served folder
          <input name="file" value={ask.offer} spellcheck={false} autocomplete="off" />
        </label>
        <p class="soft">A recipe: plain text that the command line makes too.</p>
        <div class="deeds">
          <button type="button" onClick={() => ask.done(null)}>
            Not now
          </button>
          <button type="submit" class="main">
            Save
          </button>
        </div>
      </form>
    </dialog>
  );
}
