import type { ChoiceParameter, CountParameter, FlagParameter, Parameter } from '../../schema/parameter.js';
import { length, seed } from '../values.js';

const across: FlagParameter = {
  kind: 'flag',
  name: 'across',
  meaning: 'Runs straight across the middle of the outline and ends there, instead of along its edge.',
  say: 'running …',
  words: ['across the middle', 'along the edge'],
  default: false,
};

const run: ChoiceParameter = {
  kind: 'choice',
  name: 'run',
  meaning: 'How the band crosses a stave.',
  say: '… across a stave',
  default: 'arched',
  options: [
    {
      value: 'arched',
      meaning: 'along the circle that meets both joints squarely, so that it runs on evenly when unrolled',
    },
    { value: 'level', meaning: 'straight, stretched with the width of the stave' },
  ],
};

const rails: CountParameter = {
  kind: 'count',
  name: 'rails',
  meaning: 'Number of border lines on either side of the band.',
  say: '… border lines on either side',
  zero: 'no',
  one: '… border line on either side',
  default: 0,
  min: 0,
  max: 4,
};

/** Where a band runs and what borders it. */
export const placeParameters: readonly Parameter[] = [
  across,
  run,
  length(
    'level',
    "Height of the band's middle above the bottom edge of a stave, along the stave's middle; 0 for half way up.",
    { say: 'its middle … up a stave', zero: 'half way' },
    0,
    0,
    3000,
  ),
  length(
    'over',
    'How far the band runs on past the edges of a stave, so that its ends, rounded by the cutter, are sawn off.',
    { say: 'going on … past the edges of a stave', often: [0, 10] },
    3,
    0,
    20,
  ),
  length('inset', "Distance of the band's outer edge from the margin.", '… inside the margin', 0, 0),
  rails,
  length('rail', 'Width of a border line.', 'border lines … wide', 4.2, 0.2, 200),
  length(
    'lane',
    'Field left between the band and a border line, and between border lines.',
    '… of field beside border lines',
    4.2,
    0.2,
    200,
  ),
];

/** For bands that turn corners in a bend. */
export const bendParameter = length(
  'bend',
  "Least radius of the band's middle where it turns a corner; 0 for what suits the band.",
  { say: 'corner bends of … radius', zero: 'fitting' },
  0,
  0,
  3000,
);

export function repeatParameter(value: number): Parameter {
  return length(
    'repeat',
    value === 0
      ? 'Length of one repeat that is wished for, of which the nearest that closes is taken; 0 for what suits the height.'
      : 'Length of one repeat that is wished for; the nearest that closes without a gap is taken.',
    value === 0 ? { say: 'repeating after …', zero: 'a fitting length' } : 'repeating after …',
    value,
    value === 0 ? 0 : 1,
    3000,
  );
}

/** A band's own parameters, then those of its place, then the seed. */
export function bandParameters(own: readonly Parameter[], bends: boolean): readonly Parameter[] {
  return [...own, ...placeParameters, ...(bends ? [bendParameter] : []), seed];
}
