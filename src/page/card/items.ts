import type { JSONPath } from 'jsonc-parser';
import type { Layer } from '../../generators/layer.js';
import { degrees } from '../../geometry/trig.js';
import type { Recipe } from '../../recipe/recipe.js';
import type { ChoiceParameter, Parameter } from '../../schema/parameter.js';
import { type Written, writtenAt } from '../state/edit.js';
import type { Book, Entry, Field } from '../worker/protocol.js';
import type { Held } from './values.js';

/** A value of the card: where the recipe says it, and what it may be. */
export interface Item {
  readonly path: JSONPath;
  /** What goes when the value is to be as usual: mostly the value alone. */
  readonly out: JSONPath;
  /** The path with points between, as faults name it. */
  readonly key: string;
  readonly parameter: Parameter;
  readonly need: Field['need'];
  /** What holds when it is left out, in words; '' for the parameter's default. */
  readonly otherwise: string;
  /** Does it stand on the card in any case, or only once the recipe says it? */
  readonly always: boolean;
  /** The value as a recipe was read: lengths mm, angles degrees; null: there is none. */
  of(recipe: Recipe): Held | null;
}

/** What is chosen first in a sentence: a shape or a generator, which brings parameters of its own. */
export interface Kind {
  readonly path: JSONPath;
  readonly key: string;
  readonly word: 'shape' | 'generator';
  readonly entries: readonly Entry[];
  /** The chosen one; undefined while the recipe names none there is. */
  readonly entry: Entry | undefined;
}

/** One sentence: what it begins with, and its values in the order of the clauses. */
export interface Sentence {
  readonly kind: Kind | null;
  /** What it begins with where nothing is chosen; '' for nothing. */
  readonly begins: string;
  readonly items: readonly Item[];
  /** Number of the layer it is about, where there are several. */
  readonly layer: number | null;
}

export interface Paragraph {
  readonly title: string;
  readonly sentences: readonly Sentence[];
  /** Closed until it is wanted. */
  readonly apart: boolean;
}

/** Values that stand on the card in any case; others do once a recipe says them. */
const ALWAYS = new Set([
  'depth',
  'skin',
  'cutter.diameter',
  'roughing.diameter',
  'fit.clearance',
  'fit.from',
  'fit.plug',
  'woods.field',
  'woods.plug',
]);

/** So many of a generator's parameters stand on the card in any case. */
const FIRST = 7;

/** All that a card says, in paragraphs. `tree` is what its text says as JSON. */
export function paragraphsOf(book: Book, tree: unknown): Paragraph[] {
  const section = (name: string, only?: readonly string[]): Item[] => {
    const fields = book.sections.find((s) => s.name === name)?.fields ?? [];
    return fields
      .filter(({ parameter }) => !only || only.includes(parameter.name))
      .map((f) => itemOf([name, f.parameter.name], f, (r) => ofSection(r, name, f.parameter)));
  };
  const top = (...names: string[]): Item[] =>
    names.map((name) => {
      const field = book.top.find((f) => f.parameter.name === name)!;
      return itemOf([name], field, (r) => (r as unknown as Record<string, Held>)[name] ?? null);
    });
  const roughs = writtenAt(tree, ['roughing', 'diameter']) !== undefined;
  const loose = writtenAt(tree, ['fit', 'plug']) !== 'carrier';
  const face = kindAt(tree, ['outline'], 'shape', book.outlines);
  const bowl = writtenAt(tree, ['bowl']) !== undefined;
  return [
    said('The piece', [
      ...(bowl
        ? [plain('', vessel(book, section('bowl'))), ...profiles(book, tree)]
        : [
            {
              kind: face,
              begins: '',
              items: own(['outline'], face, (r) => r.outline.values, true),
              layer: null,
            },
          ]),
      plain('', [...top('depth', 'skin'), ...section('stock'), ...top('name', 'units')]),
    ]),
    said('The figure', figure(book, tree)),
    said('The cutters', [
      plain('', section('cutter')),
      plain('', section('roughing', roughs ? undefined : ['diameter']).map(orSame)),
      plain('', section('passes')),
    ]),
    said('The fit', [
      plain(
        '',
        section('fit').filter((i) => i.key !== (loose ? 'fit.sawRoom' : 'fit.proud')),
      ),
    ]),
    said('The woods', [
      plain('', [...section('woods'), ...plugWoods(book, tree)]),
      plain('', section('moisture')),
    ]),
    {
      title: 'On the machine, and after',
      apart: true,
      sentences: [
        plain('The machine', section('machine')),
        plain('On its table', section('table')),
        plain('Made to be', section('walls')),
        plain('The press', section('press')),
        plain('Boards', section('boards')),
        plain('Times', section('times')),
      ],
    },
  ];
}

/** What the card says of a vessel: its single values, and how far the pattern stays from a stave's edges. */
function vessel(book: Book, values: readonly Item[]): Item[] {
  const margin = book.outlines[0]!.parameters.find((p) => p.name === 'margin')!;
  return [
    ...values,
    itemOf(['outline', 'margin'], asField(margin), (r) => r.outline.values.margin ?? null, true),
  ];
}

/** The wall's outside, and its inside where the recipe gives it. */
function profiles(book: Book, tree: unknown): Sentence[] {
  return (['outside', 'inside'] as const).flatMap((face): Sentence[] => {
    const path = ['bowl', face];
    if (writtenAt(tree, path) === undefined) return [];
    const kind = kindAt(tree, path, 'shape', book.profiles);
    const items = own(path, kind, (r) => r.bowl?.[face]?.values, true);
    return [{ kind, begins: face === 'outside' ? 'Outside' : 'Inside', items, layer: null }];
  });
}

/** Every value of a card. */
export function itemsOf(paragraphs: readonly Paragraph[]): Item[] {
  return paragraphs.flatMap((p) => p.sentences.flatMap((s) => s.items));
}

function said(title: string, sentences: readonly Sentence[]): Paragraph {
  return { title, sentences, apart: false };
}

function plain(begins: string, items: readonly Item[]): Sentence {
  return { kind: null, begins, items, layer: null };
}

function itemOf(path: JSONPath, f: Field, of: Item['of'], always = ALWAYS.has(path.join('.'))): Item {
  const { parameter, need, otherwise = '' } = f;
  return { path, out: path, key: path.join('.'), parameter, need, otherwise, always, of };
}

/** A roughing cutter's diameter is what makes there be one at all. */
function orSame(item: Item): Item {
  if (item.key !== 'roughing.diameter') return item;
  return { ...item, need: 'otherwise', otherwise: 'the same cutter', out: ['roughing'] };
}

function asField(parameter: Parameter): Field {
  return { parameter, need: 'default' };
}

function inDegrees(p: Parameter, value: Held | null | undefined): Held | null {
  if (value === null || value === undefined) return null;
  return p.kind === 'angle' && typeof value === 'number' ? Number(degrees(value).toFixed(6)) : value;
}

function ofSection(recipe: Recipe, name: string, p: Parameter): Held | null {
  const group = (recipe as unknown as Record<string, Record<string, Held | null> | null>)[name];
  const value = group?.[p.name];
  // Boards are read into sizes of their own: what the recipe does not say of them is none.
  return typeof value === 'object' ? null : inDegrees(p, value);
}

function kindAt(tree: unknown, path: JSONPath, word: Kind['word'], entries: readonly Entry[]): Kind {
  const name = writtenAt(tree, [...path, word]);
  const entry = entries.find((e) => e.name === name);
  return { path: [...path, word], key: [...path, word].join('.'), word, entries, entry };
}

/** Values of a shape or a generator. */
function own(
  path: JSONPath,
  { entry }: Kind,
  values: (recipe: Recipe) => Readonly<Record<string, Held>> | undefined,
  always?: boolean,
): Item[] {
  return (entry?.parameters ?? []).map((p, k) =>
    itemOf([...path, p.name], asField(p), (r) => inDegrees(p, values(r)?.[p.name]), always ?? k < FIRST),
  );
}

/** Where the layers stand: one alone, or a list. */
export function layerPaths(pattern: Written | undefined): JSONPath[] {
  return Array.isArray(pattern) ? pattern.map((_, k) => ['pattern', k]) : [['pattern']];
}

function figure(book: Book, tree: unknown): Sentence[] {
  const paths = layerPaths(writtenAt(tree, ['pattern']));
  return paths.map((path, k) => {
    const kind = kindAt(tree, path, 'generator', book.generators);
    const layer = (r: Recipe): Layer | undefined => [r.pattern].flat()[k];
    const several = paths.length > 1 ? book.layer : [];
    const within = withinOf(book, tree, path, layer);
    const together = several
      .filter((p) => k > 0 || p.name === 'combine')
      .map((p) =>
        itemOf([...path, p.name], asField(p), (r) => {
          return (layer(r) as unknown as Record<string, Held> | undefined)?.[p.name] ?? null;
        }),
      );
    return {
      kind,
      begins: '',
      items: [...own(path, kind, (r) => layer(r)?.values), ...together, ...within],
      layer: paths.length > 1 ? k + 1 : null,
    };
  });
}

/** Where a layer is drawn: only when the recipe says something of it. */
function withinOf(
  book: Book,
  tree: unknown,
  path: JSONPath,
  layer: (r: Recipe) => Layer | undefined,
): Item[] {
  const here = [...path, 'within'];
  if (writtenAt(tree, here) === undefined) return [];
  const shape = kindAt(tree, here, 'shape', book.outlines);
  const places = book.within
    .filter((p) => shape.entry || p.name === 'inset')
    .map((p) =>
      itemOf([...here, p.name], asField(p), (r) => {
        return (layer(r)?.within as unknown as Record<string, Held> | undefined)?.[p.name] ?? null;
      }),
    );
  return [...own(here, shape, (r) => layer(r)?.within.shape?.values, true), ...places];
}

/** The woods of single pieces, each by its key. */
function plugWoods(book: Book, tree: unknown): Item[] {
  const given = writtenAt(tree, ['woods', 'plugs']);
  if (given === null || typeof given !== 'object' || Array.isArray(given)) return [];
  const wood = book.sections.find((s) => s.name === 'woods')!.fields.find((f) => f.parameter.name === 'plug')!
    .parameter as ChoiceParameter;
  return Object.keys(given).map((key) => {
    const parameter = { ...wood, name: key, say: `${key} of …`, meaning: `Wood of ${key}.` };
    return itemOf(['woods', 'plugs', key], asField(parameter), (r) => {
      return r.woods.plugs?.find((w) => w.pieces === key)?.wood ?? null;
    });
  });
}
