import { useEffect, useRef } from 'preact/hooks';
import { asking, leaveThenBegin, saveThenBegin, unsavedBecause } from './starting.js';

/** Asks what becomes of a card's changes before another takes its place. `done` hears that it has. */
export function Unsaved({ done }: { done: () => void }) {
  const entry = asking.value;
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const d = dialog.current;
    if (entry && !d?.open) d?.showModal();
    // Closed before it goes: only then does the focus return to what was chosen.
    if (!entry && d?.open) d.close();
  }, [entry]);
  const then = (begun: Promise<boolean>): void => void begun.then((yes) => yes && done());
  return (
    <dialog
      ref={dialog}
      class="naming unsaved"
      aria-labelledby="unsaved"
      onClose={() => (asking.value = null)}
    >
      <h3 id="unsaved">The card has changes that are not saved.</h3>
      <p>{entry ? `${entry.title} would take its place.` : ''}</p>
      <p role="status">{unsavedBecause.value}</p>
      <div class="deeds">
        <button type="button" onClick={() => dialog.current?.close()}>
          Go back
        </button>
        <button type="button" onClick={() => then(leaveThenBegin())}>
          Leave them
        </button>
        <button type="button" class="main" onClick={() => then(saveThenBegin())}>
          Save them first
        </button>
      </div>
    </dialog>
  );
}
