import { Coloured, Stamp } from '../drawing/Small.js';
import type { BookEntry } from './entries.js';
import { littleOf } from './little-drawings.js';

/** One thing to begin with: its name, a line and its drawing, which stands first to the eye. */
export function Entry({
  entry,
  stop,
  onChoose,
}: {
  entry: BookEntry;
  /** The Tab key stops here. */
  stop: boolean;
  onChoose: (entry: BookEntry) => void;
}) {
  return (
    <li>
      <button
        type="button"
        class="entry"
        data-entry={entry.key}
        tabIndex={stop ? 0 : -1}
        onClick={() => onChoose(entry)}
      >
        <span class="entry-words">
          <span class="entry-title">{entry.title}</span>
          <span class="entry-lines">
            {entry.lines.map((line) => (
              <span key={line}>{line}</span>
            ))}
          </span>
        </span>
        <Little of={entry.key} />
      </button>
    </li>
  );
}

/** A small drawing on its paper; the paper is there before it. */
function Little({ of }: { of: string }) {
  const little = littleOf(of).value;
  return (
    <span class="plate">
      {little === null ? null : 'figure' in little ? (
        <Stamp box={little.figure.box}>
          <Coloured figure={little.figure} />
        </Stamp>
      ) : (
        <span class="plate-trouble" title={little.trouble}>
          Not drawn: {little.trouble}
        </span>
      )}
    </span>
  );
}
