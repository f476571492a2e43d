import type { Parameter } from '../../schema/parameter.js';
import { length, seed } from '../values.js';
import { faces } from './faces.js';

const fonts = faces.map((f) => `${f.name} (${f.style})`).join(', ');

/** A text may have this many characters. */
export const MOST_CHARACTERS = 5000;

export const parameters: readonly Parameter[] = [
  {
    kind: 'text',
    name: 'text',
    meaning: 'The text; \\n starts a new line.',
    say: 'the text …',
    default: '47',
    maxLength: MOST_CHARACTERS,
    lines: true,
  },
  {
    ...length(
      'height',
      'Height of a flat capital letter; "fit" for the largest that fits the outline.',
      'capitals of … height',
      34,
      2,
    ),
    words: ['fit'],
  },
  {
    kind: 'length',
    name: 'tracking',
    meaning: 'Extra space between any two letters; negative for tighter.',
    say: '… extra between letters',
    often: [-2, 10],
    default: 1,
    min: -50,
    max: 200,
  },
  {
    kind: 'text',
    name: 'font',
    meaning: `The letters: a bundled font by its name, ${fonts}; or a TTF, OTF or WOFF file of your own by its path from the recipe's folder.`,
    say: 'in …',
    default: 'varela-round',
    maxLength: 200,
  },
  {
    kind: 'choice',
    name: 'align',
    meaning: 'How lines of different length stand to each other.',
    say: 'lines set to the …',
    default: 'centre',
    options: [
      { value: 'left', meaning: 'their left ends in line' },
      { value: 'centre', meaning: 'about one middle' },
      { value: 'right', meaning: 'their right ends in line' },
    ],
  },
  {
    kind: 'number',
    name: 'leading',
    meaning: 'From one base line to the next, in heights of a flat capital.',
    say: 'lines … capitals apart',
    often: [1, 3],
    default: 1.6,
    min: 0.5,
    max: 20,
  },
  {
    kind: 'flag',
    name: 'kerning',
    meaning: 'Uses the spacing of letter pairs that the font has.',
    say: 'pairs … as the font has them',
    words: ['spaced', 'not spaced'],
    default: true,
  },
  {
    kind: 'flag',
    name: 'ligatures',
    meaning: 'Uses the joined letters that the font has, such as fi, where tracking is 0.',
    say: 'joined letters … where the font has them',
    words: ['used', 'not used'],
    default: true,
  },
  {
    kind: 'choice',
    name: 'joined',
    meaning: 'Which letters are one piece.',
    say: 'letters kept …',
    default: 'auto',
    options: [
      { value: 'auto', meaning: "those whose ink touches their neighbour's as the font is designed" },
      { value: 'apart', meaning: 'each for itself, moved apart where they touch' },
      { value: 'together', meaning: 'every word' },
    ],
  },
  {
    kind: 'choice',
    name: 'along',
    meaning: 'What the text runs along.',
    say: 'running along the …',
    default: 'line',
    options: [
      { value: 'line', meaning: 'level lines in the middle of the outline' },
      { value: 'arc', meaning: 'a circle' },
      {
        value: 'band',
        meaning:
          'the edge of the outline: round a circle or ring, along the sides of a rectangle or polygon (a line of text to a side), across a stave',
      },
    ],
  },
  length(
    'radius',
    'Radius of the circle of an arc, about the middle of the outline; 0 for the largest that fits. On one too large to lie in the outline the text stands in the middle.',
    { say: 'an arc of … radius', zero: 'the largest', often: [0, 200] },
    0,
    0,
    10000,
  ),
  {
    kind: 'angle',
    name: 'centred',
    meaning:
      'How far the middle of a text along a circle stands from the top, or from the bottom when it reads from inside, counter-clockwise.',
    say: 'its middle … round from the top',
    default: 0,
    min: -360,
    max: 360,
  },
  {
    kind: 'choice',
    name: 'side',
    meaning: 'Which way letters along an arc or a band stand.',
    say: 'read from the …',
    default: 'outside',
    options: [
      { value: 'outside', meaning: 'tops to the edge, read clockwise' },
      { value: 'inside', meaning: 'tops to the middle, read counter-clockwise' },
    ],
  },
  length(
    'inset',
    "Distance of a band of letters from the outline's margin.",
    'a band … inside the margin',
    0,
    0,
  ),
  length(
    'level',
    "Height of the text's middle above the bottom edge of a stave, for a band; 0 for half way up.",
    { say: 'its middle … up a stave', zero: 'half way' },
    0,
    0,
    3000,
  ),
  {
    kind: 'count',
    name: 'repeats',
    meaning: 'How often the text stands along a band, evenly spread.',
    say: '… copies along a band',
    one: '… copy along a band',
    default: 1,
    min: 1,
    max: 60,
  },
  {
    kind: 'flag',
    name: 'mirrored',
    meaning: 'Draws the text left for right, for a piece that is seen from behind.',
    say: 'its left and right …',
    words: ['changed over', 'as they are'],
    default: false,
  },
  seed,
];
