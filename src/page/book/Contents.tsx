import type { Section } from './entries.js';

/** The sections by name, with how many things each holds; a press turns to it. */
export function ContentsList({
  sections,
  onTurn,
}: {
  sections: readonly Section[];
  onTurn: (key: string) => void;
}) {
  return (
    <nav class="contents" aria-label="Sections">
      <ul>
        {sections.map(({ key, title, entries }) => (
          <li key={key}>
            <button type="button" onClick={() => onTurn(key)}>
              <span class="unseen">Turn to </span>
              <span>{title}</span>
              <span class="leader" aria-hidden="true" />
              <span class="count">{entries.length}</span>
            </button>
          </li>
        ))}
      </ul>
      {sections.length > 0 ? (
        <p class="soft" id="book-keys">
          Arrow keys go from drawing to drawing, Enter begins with it.
        </p>
      ) : null}
    </nav>
  );
}
