import type { Units } from '../../schema/units.js';
import type { Book } from '../worker/protocol.js';
import { byFamily, sentence } from './families.js';
import { matches, wordsIn } from './matching.js';
import { pieceLines, pieceWords } from './piece-line.js';
import { laidOut, plainFace } from './plain-faces.js';

/** Where an entry's recipe is: in the folder, among those that ship, or here. */
export type Start =
  | { readonly from: 'folder'; readonly file: string }
  | { readonly from: 'shipped'; readonly name: string }
  | { readonly from: 'here'; readonly text: string };

/** One thing a card can begin with. */
export interface BookEntry {
  readonly key: string;
  readonly title: string;
  /** What is said of it, line by line. */
  readonly lines: readonly string[];
  readonly start: Start;
  /** What it is found by. */
  readonly words: readonly string[];
}

export interface Section {
  readonly key: string;
  readonly title: string;
  readonly about: string;
  /** Pieces are drawn larger than patterns. */
  readonly of: 'pieces' | 'patterns';
  readonly entries: readonly BookEntry[];
}

/** What the pieces of the book are known by. `tree` gives a recipe, taken apart, once it has been read. */
export interface Pieces {
  readonly files: readonly string[];
  readonly shipped: readonly string[];
  readonly book: Pick<Book, 'outlines' | 'generators'> | null;
  readonly units: Units;
  tree(key: string): unknown;
}

/** The pieces of the folder, and those that ship. */
export function pieceSections(pieces: Pieces): Section[] {
  const all: Section[] = [
    {
      key: 'folder',
      title: 'In this folder',
      about: 'Recipes kept here; saving writes them again.',
      of: 'pieces',
      entries: pieces.files.map((file) =>
        piece(pieces, `folder:${file}`, stem(file), { from: 'folder', file }, [file]),
      ),
    },
    {
      key: 'shipped',
      title: 'Pieces to start from',
      about: 'Whole pieces, ready to be changed; the first save asks for a name of your own.',
      of: 'pieces',
      entries: pieces.shipped.map((name) =>
        piece(pieces, `shipped:${name}`, name, { from: 'shipped', name }, []),
      ),
    },
  ];
  return all.filter((s) => s.entries.length > 0);
}

/** The patterns by family, each as it looks by itself, then a plain face of each shape. */
export function patternSections({ generators, outlines }: Pick<Book, 'generators' | 'outlines'>): Section[] {
  const families = byFamily(generators).map(
    ({ name, title, about, members }): Section => ({
      key: `family:${name}`,
      title,
      about,
      of: 'patterns',
      entries: members.map((g) =>
        entry(
          `pattern:${g.name}`,
          g.title,
          [g.summary],
          here(laidOut(JSON.parse(g.sample))),
          `${g.name} ${title}`,
        ),
      ),
    }),
  );
  const faces: Section = {
    key: 'faces',
    title: 'Plain faces',
    about: 'Nothing but a frame, to begin from the shape; any pattern can take its place.',
    of: 'patterns',
    entries: outlines.map((o) =>
      entry(
        `face:${o.name}`,
        o.title,
        ['A frame along the edge, the rest plain.'],
        here(plainFace(o)),
        'plain empty',
      ),
    ),
  };
  return [...families, faces];
}

function piece(
  { book, units, tree }: Pieces,
  key: string,
  name: string,
  start: Start,
  lines: readonly string[],
): BookEntry {
  const recipe = tree(key);
  const what = recipe !== undefined && book ? pieceLines(recipe, book, units) : [];
  return entry(key, sentence(name), [...lines, ...what], start, `${name} ${pieceWords(recipe)}`);
}

function entry(key: string, title: string, lines: readonly string[], start: Start, more: string): BookEntry {
  return { key, title, lines, start, words: wordsIn([title, ...lines, more].join(' ')) };
}

function here(text: string): Start {
  return { from: 'here', text };
}

/** coasters/star-2.json is star-2. */
function stem(file: string): string {
  return file.replace(/^.*\//, '').replace(/\.json$/i, '');
}

/** The same sections with only the entries that all words asked for fit. */
export function found(sections: readonly Section[], asked: string): Section[] {
  return sections
    .map((s) => ({ ...s, entries: s.entries.filter((e) => matches(asked, e.words)) }))
    .filter((s) => s.entries.length > 0);
}

/** How many entries lie in sections. */
export function countOf(sections: readonly Section[]): number {
  return sections.reduce((sum, s) => sum + s.entries.length, 0);
}
