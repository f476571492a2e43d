import type { Units } from '../../schema/units.js';
import type { Book } from '../worker/protocol.js';
import { byFamily, sentence } from './families.js';
import { matches, wordsIn } from './matching.js';
import { pieceLine, pieceWords } from './piece-line.js';
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
  readonly line: string;
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

/** What the book is made of. `text` gives a recipe by its entry's key, once it has been read. */
export interface Contents {
  readonly files: readonly string[];
  readonly shipped: readonly string[];
  readonly book: Book | null;
  readonly units: Units;
  text(key: string): string | undefined;
}

/** All sections of the book that have something in them, in their order. */
export function sectionsOf(contents: Contents): Section[] {
  const { files, shipped, book } = contents;
  const pieces = (of: readonly BookEntry[], key: string, title: string, about: string): Section => ({
    key,
    title,
    about,
    of: 'pieces',
    entries: of,
  });
  const all: Section[] = [
    pieces(
      files.map((file) => piece(contents, `folder:${file}`, stem(file), { from: 'folder', file }, file)),
      'folder',
      'In this folder',
      'Recipes kept here; saving writes them again.',
    ),
    pieces(
      shipped.map((name) => piece(contents, `shipped:${name}`, name, { from: 'shipped', name })),
      'shipped',
      'Pieces to start from',
      'Whole pieces, ready to be changed; the first save asks for a name of your own.',
    ),
    ...(book ? patterns(book) : []),
  ];
  return all.filter((s) => s.entries.length > 0);
}

function patterns(book: Book): Section[] {
  const families = byFamily(book.generators).map(({ name, title, about, members }): Section => ({
    key: `family:${name}`,
    title,
    about,
    of: 'patterns',
    entries: members.map((g) =>
      entry(`pattern:${g.name}`, g.title, g.summary, here(laidOut(JSON.parse(g.sample))), `${g.name} ${title}`),
    ),
  }));
  const faces: Section = {
    key: 'faces',
    title: 'Plain faces',
    about: 'Nothing but a frame, to begin from the shape; any pattern can take its place.',
    of: 'patterns',
    entries: book.outlines.map((o) =>
      entry(`face:${o.name}`, o.title, 'A frame along the edge, the rest plain.', here(plainFace(o)), 'plain empty'),
    ),
  };
  return [...families, faces];
}

function piece({ book, units, text }: Contents, key: string, name: string, start: Start, file = ''): BookEntry {
  const recipe = text(key);
  const what = recipe !== undefined && book ? pieceLine(recipe, book, units) : '';
  const line = [file, what].filter((s) => s !== '').join('. ');
  return entry(key, sentence(name), line, start, `${name} ${recipe === undefined ? '' : pieceWords(recipe)}`);
}

function entry(key: string, title: string, line: string, start: Start, more: string): BookEntry {
  return { key, title, line, start, words: wordsIn(`${title} ${line} ${more}`) };
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
