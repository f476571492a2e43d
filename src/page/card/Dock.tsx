import { useLayoutEffect } from 'preact/hooks';
import type { Parameter } from '../../schema/parameter.js';
import { lengthRange, numberText } from '../../schema/units.js';
import { held } from '../state/bench.js';
import { change, shownIn } from '../state/card.js';
import { OfChoice, OfText } from './Choices.js';
import type { Item, Kind } from './items.js';
import { faultAt, heldItem, heldKind, put, standing, textsAs } from './on-card.js';
import { OfSize } from './Size.js';
import { saidOf } from './said.js';
import { type Choice, Tiles } from './Tiles.js';
import { toDock } from './to-dock.js';
import { unitOf, valueText } from './values.js';

/** The foot of the words: the picked value under its rule, or its choices. */
export function Dock() {
  const item = heldItem.value;
  const kind = heldKind.value;
  const key = item?.key ?? kind?.key ?? null;
  // At once: what is typed next is meant for the field.
  useLayoutEffect(() => {
    if (key === null) return;
    document.querySelector(`[data-key="${CSS.escape(key)}"]`)?.scrollIntoView({ block: 'nearest' });
    toDock();
  }, [key]);
  return (
    <section
      class="dock"
      aria-label="The picked value"
      onKeyDown={(e) => {
        if (e.key !== 'Escape') return;
        e.preventDefault();
        putDown();
      }}
    >
      {item ? <OfItem key={item.key} item={item} /> : kind ? <OfKind key={kind.key} kind={kind} /> : <Hint />}
    </section>
  );
}

/** Lets go of the value and goes back to where it stands. */
function putDown(): void {
  const key = held.peek();
  held.value = null;
  if (key !== null) document.querySelector<HTMLElement>(`[data-key="${CSS.escape(key)}"]`)?.focus();
}

function Hint() {
  return <p class="soft">Pick a value: its rule or its choices lie here.</p>;
}

function OfKind({ kind }: { kind: Kind }) {
  const families = [...new Set(kind.entries.map((e) => e.family))];
  const choices = families.flatMap((f) => kind.entries.filter((e) => e.family === f).map(asChoice));
  return (
    <>
      <Head
        title={kind.word === 'shape' ? 'The shape' : 'The pattern'}
        meaning="What fits the new one is kept, as far as it can be drawn."
      />
      <Tiles
        label={kind.word === 'shape' ? 'Shape' : 'Pattern'}
        choices={choices}
        chosen={kind.entry?.name ?? ''}
        drawn={(name) => textsAs(kind, name)}
        onChoose={(name, best) => change(best ?? textsAs(kind, name)[0]!)}
      />
    </>
  );
}

function asChoice(e: Kind['entries'][number]): Choice {
  return { value: e.name, title: e.title, meaning: e.summary };
}

function Head({ title, meaning }: { title: string; meaning: string }) {
  return (
    <div class="dock-head">
      <h3>{title}</h3>
      <button type="button" class="quiet" onClick={putDown}>
        Done
      </button>
      <p class="soft">{meaning}</p>
    </div>
  );
}

function OfItem({ item }: { item: Item }) {
  const p = item.parameter;
  const { before, text, after } = saidOf(item);
  const fault = faultAt(item.key);
  return (
    <>
      <Head title={`${before}${text}${after}`} meaning={p.meaning} />
      {'min' in p ? (
        <OfSize item={item} p={p} />
      ) : p.kind === 'text' ? (
        <OfText item={item} />
      ) : (
        <OfChoice item={item} />
      )}
      <div class="dock-foot">
        {fault ? (
          <p class="fault" role="alert" id="dock-fault">
            {fault}
          </p>
        ) : (
          <p class="soft">{rangeOf(p)}</p>
        )}
        <AsUsual item={item} />
      </div>
    </>
  );
}

function rangeOf(p: Parameter): string {
  if (!('min' in p)) return '';
  if (p.kind === 'length') return `Allowed: ${lengthRange(p.min, p.max, shownIn.value)}.`;
  const unit = unitOf(p, shownIn.value);
  return `Allowed: ${numberText(p.min)}${unit} to ${numberText(p.max)}${unit}.`;
}

/** Takes the value out of the recipe, so that the usual one holds. */
function AsUsual({ item }: { item: Item }) {
  const { written } = standing(item);
  if (written === undefined || item.need === 'required') return null;
  const usual =
    item.otherwise === '' ? valueText(item.parameter, item.parameter.default, shownIn.value) : item.otherwise;
  return (
    <button type="button" class="quiet" onClick={() => put(item, undefined)}>
      Back to {firstWords(usual)}
    </button>
  );
}

function firstWords(text: string): string {
  return text.length > 26 ? 'what is usual' : text;
}
