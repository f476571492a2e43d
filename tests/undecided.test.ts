import { expect, it, vi } from 'vitest';
import { build } from '../src/build.js';
import { Undecided } from '../src/geometry/fault.js';
import { readRecipe } from '../src/recipe/read.js';
import { Refusal } from '../src/schema/fault.js';
import { exampleText } from './recipe/example.js';
import { assets } from './support/artwork.js';

vi.mock('../src/generators/compose.js', () => ({
  compose: () => {
    throw new Undecided('two edges all but coincide');
  },
}));

it('what the geometry cannot decide is a refusal that says what to do', () => {
  const job = () => build(readRecipe(exampleText(), 'x.json'), assets);
  expect(job).toThrow(Refusal);
  expect(job).toThrow(/two edges all but coincide.* hundredth of a millimetre/);
});
