import { useComputed } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { held } from '../state/bench.js';
import { at, change, text } from '../state/card.js';
import { withValue } from '../state/edit.js';
import './card-words.css';
import { type Item, type Kind, layerPaths, type Paragraph, type Sentence } from './items.js';
import { faultAt, paragraphs } from './on-card.js';
import { Value } from './Value.js';

/** What the recipe says, as the sentences of a job card. */
export function Sentences() {
  return (
    <>
      {paragraphs.value.map((p) =>
        p.apart ? <Apart key={p.title} paragraph={p} /> : <Said key={p.title} paragraph={p} />,
      )}
    </>
  );
}

function Said({ paragraph: { title, sentences } }: { paragraph: Paragraph }) {
  return (
    <section class="paragraph" aria-label={title}>
      <h2>{title}</h2>
      <Body sentences={sentences} />
      {title === 'The figure' ? <Layers /> : null}
    </section>
  );
}

function Apart({ paragraph: { title, sentences } }: { paragraph: Paragraph }) {
  return (
    <details class="paragraph apart">
      <summary>
        <h2>{title}</h2>
      </summary>
      {sentences.map((s) => (
        <p key={s.begins}>
          {s.begins}: <Clauses items={s.items} begun />
        </p>
      ))}
    </details>
  );
}

/** Values the recipe names, or that matter in any case, first; the others are as usual and stay folded. */
function Body({ sentences }: { sentences: readonly Sentence[] }) {
  const parted = useMemo(
    () =>
      sentences.map((s) => {
        const shows = (i: Item): boolean => i.always || at(i.path) !== undefined;
        return { ...s, items: s.items.filter(shows), rest: s.items.filter((i) => !shows(i)) };
      }),
    [sentences],
  );
  const rest = parted.filter((s) => s.rest.length > 0);
  return (
    <>
      {parted.map((s, k) => (
        <One key={k} sentence={s} />
      ))}
      {rest.length > 0 ? (
        <details class="more">
          <summary>{rest.reduce((n, s) => n + s.rest.length, 0)} more, as usual</summary>
          {rest.map((s, k) => (
            <p key={k}>
              {s.layer === null ? '' : `Layer ${s.layer}: `}
              <Clauses items={s.rest} begun={s.layer !== null} />
            </p>
          ))}
        </details>
      ) : null}
    </>
  );
}

function One({ sentence: { kind, begins, items, layer } }: { sentence: Sentence }) {
  if (!kind && items.length === 0) return null;
  return (
    <p>
      {layer === null ? null : <span class="layer">{layer} </span>}
      {kind ? (
        <>
          {begins === '' ? '' : `${begins}, `}
          <KindValue kind={kind} />
          {items.length > 0 ? ': ' : '.'}
        </>
      ) : null}
      <Clauses items={items} begun={kind !== null} />
    </p>
  );
}

function Clauses({ items, begun }: { items: readonly Item[]; begun: boolean }) {
  return (
    <>
      {items.map((item, k) => (
        <Value key={item.key} item={item} first={k === 0 && !begun} last={k === items.length - 1} />
      ))}
    </>
  );
}

/** The shape or generator a sentence is about. */
function KindValue({ kind }: { kind: Kind }) {
  const picked = useComputed(() => held.value === kind.key);
  const fault = useComputed(() => faultAt(kind.key));
  const title = kind.entry?.title ?? 'something unknown';
  const look = ['value', 'kind', fault.value ? 'wrong' : '', picked.value ? 'picked' : ''];
  return (
    <button
      type="button"
      class={look.filter(Boolean).join(' ')}
      data-key={kind.key}
      aria-label={`${title}: choose another ${kind.word === 'shape' ? 'shape' : 'pattern'}`}
      aria-pressed={picked.value}
      title={kind.entry?.summary}
      onClick={() => (held.value = kind.key)}
    >
      {title}
    </button>
  );
}

/** A layer more, or one less. */
function Layers() {
  const many = useComputed(() => layerPaths(at(['pattern'])).length);
  return (
    <p class="layers">
      <button type="button" onClick={addLayer}>
        One more layer
      </button>
      {many.value > 1 ? (
        <button type="button" onClick={takeLayer}>
          Take the last layer out
        </button>
      ) : null}
    </p>
  );
}

/** What a new layer draws until another pattern is chosen for it. */
const PLAIN = { generator: 'dots' };

function addLayer(): void {
  const pattern = at(['pattern']);
  const layers = Array.isArray(pattern) ? pattern : [pattern ?? PLAIN];
  change(withValue(text.value, ['pattern'], [...layers, PLAIN]));
  held.value = `pattern.${layers.length}.generator`;
}

function takeLayer(): void {
  const pattern = at(['pattern']);
  if (!Array.isArray(pattern)) return;
  const rest = pattern.slice(0, -1);
  change(withValue(text.value, ['pattern'], rest.length === 1 ? rest[0] : rest));
  held.value = null;
}
