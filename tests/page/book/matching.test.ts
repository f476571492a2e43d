import { describe, expect, it, test } from 'vitest';
import { matches, wordsIn } from '../../../src/page/book/matching.js';

const words = wordsIn('Star trivet, eight points: sugar maple and black walnut. Café-table n°2');

describe('the words of a text', () => {
  it('are in small letters, without accents, signs or gaps', () => {
    expect(wordsIn('  Café-table, N°2: ÉTOILE ')).toEqual(['cafe', 'table', 'n', '2', 'etoile']);
  });

  it('are none of a text of signs', () => expect(wordsIn(' -- … ')).toEqual([]));
});

test.each([
  '',
  '   ',
  '- …',
  'star',
  'STAR',
  'sta',
  'wal star',
  'sugar maple',
  'café',
  'cafe',
  '2',
  'point, walnut',
])('%j finds it', (asked) => expect(matches(asked, words)).toBe(true));

// "alnut" stands within a word, "stars" is longer than the word, "star oak" has one word that is not there.
test.each(['alnut', 'stars', 'star oak', 'trivetstar', '3'])('%j does not', (asked) =>
  expect(matches(asked, words)).toBe(false),
);
