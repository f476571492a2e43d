import { computed, type ReadonlySignal } from '@preact/signals';
import type { Units } from '../../schema/units.js';
import { held } from '../state/bench.js';
import { at, book, change, drawn, set, settle, shownIn, text, tree, trouble } from '../state/card.js';
import { type Written, withValue } from '../state/edit.js';
import { type Item, itemsOf, type Kind, type Paragraph, paragraphsOf } from './items.js';
import { restated } from './restate.js';
import { switched } from './switch.js';
import { type Held, heldOf } from './values.js';

/** What gives a card its sentences: they are made anew only when this changes, not with every value. */
const build = computed(() => JSON.stringify(buildOf(tree.value)));

function buildOf(given: unknown): unknown {
  const { outline, pattern, roughing, fit, woods, bowl } = (given ?? {}) as Record<
    string,
    Record<string, unknown>
  >;
  const layers = [pattern ?? {}].flat() as { generator?: unknown; within?: { shape?: unknown } }[];
  return [
    bowl && [bowl.outside, bowl.inside].map((p) => (p as { shape?: unknown } | undefined)?.shape ?? null),
    outline?.shape,
    layers.map((l) => [l?.generator, l?.within !== undefined, l?.within?.shape]),
    Array.isArray(pattern),
    roughing?.diameter !== undefined,
    fit?.plug,
    Object.keys(woods?.plugs ?? {}),
  ];
}

/** What the card says, in paragraphs. */
export const paragraphs: ReadonlySignal<readonly Paragraph[]> = computed(() => {
  void build.value;
  return book.value ? paragraphsOf(book.value, tree.peek()) : [];
});

const byKey = computed(() => new Map(itemsOf(paragraphs.value).map((i) => [i.key, i])));
const kinds = computed(() => {
  const all = paragraphs.value.flatMap((p) => p.sentences.flatMap((s) => (s.kind ? [s.kind] : [])));
  return new Map(all.map((k) => [k.key, k]));
});

export const heldItem = computed<Item | null>(() => byKey.value.get(held.value ?? '') ?? null);
export const heldKind = computed<Kind | null>(() => kinds.value.get(held.value ?? '') ?? null);

/** The unit of bare numbers in the recipe. */
export function units(): Units {
  return at(['units']) === 'in' ? 'in' : 'mm';
}

/** The recipe as last read. */
const recipe = computed(() => trouble.value?.recipe ?? drawn.value?.recipe ?? null);

export interface Standing {
  /** As the recipe's text has it; undefined where it says nothing. */
  readonly written: Written | undefined;
  /** Null: there is none, or what is written cannot be understood. */
  readonly held: Held | null;
}

/** How a value stands on the card now. */
export function standing(item: Item): Standing {
  const written = at(item.path);
  if (written !== undefined) return { written, held: heldOf(item.parameter, written, units()) ?? null };
  const read = recipe.value ? item.of(recipe.value) : null;
  if (read !== null) return { written, held: read };
  return { written, held: item.need === 'default' ? item.parameter.default : null };
}

/** What is wrong with a value, in words; '' for nothing. */
export function faultAt(key: string): string {
  const own = trouble.value?.faults.filter((f) => f.where === key) ?? [];
  return own.map((f) => f.message).join(' ');
}

/** Puts a value on the card. `going`: it is being slid or typed, and more will follow. */
export function put(item: Item, written: Written | undefined, going = false): void {
  if (item.key === 'units' && (written === 'mm' || written === 'in')) {
    const as = written;
    change(restated(text.value, itemsOf(paragraphs.value), units(), as));
    shownIn.value = as;
  } else set(written === undefined ? item.out : item.path, written, going ? item.key : null);
}

let resting: ReturnType<typeof setTimeout> | undefined;
/** How long after the last of several quick steps the exact drawing is made, ms. */
const RESTS = 350;

/** Puts a value on the card as one of several quick steps, such as a key held down. */
export function nudge(item: Item, written: Written): void {
  put(item, written, true);
  clearTimeout(resting);
  resting = setTimeout(settle, RESTS);
}

/** The card's text with an item's value set, for a picture of it. */
export function textWith(item: Item, written: Written): string {
  return withValue(text.value, item.path, written);
}

/** The same with another shape or generator, in the ways to be tried. */
export function textsAs(kind: Kind, name: string): string[] {
  return switched(text.value, kind, name, units());
}
