import { expect, it } from 'vitest';
import { ran } from './warm.js';

it('a command that was not waited for does not answer for the next', () => {
  expect(() => ran(['list'], '.', 1)).toThrow('inlaywright list has not ended after 0.001 s');
  expect(ran(['--version'], '.').stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
});
