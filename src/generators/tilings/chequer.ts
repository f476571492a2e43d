import { num } from '../values.js';
import { type Periodic, periodic } from './lay.js';
import { rectangle } from './rectangle.js';
import { rhombCell } from './rhombs.js';
import { SHADES } from './shades.js';
import { tilePattern } from './tile-pattern.js';

const SQUARES: Periodic = {
  steps: [
    [1, 1],
    [-1, 1],
  ],
  cell: [rectangle('dark', 0, 0, 1, 1), rectangle('light', 1, 0, 1, 1)],
};

export const chequer = tilePattern({
  name: 'chequer',
  title: 'Chequer',
  summary: 'Squares or diamonds, every other one let in.',
  parameters: [
    {
      kind: 'choice',
      name: 'shape',
      meaning: 'Shape of the fields.',
      say: '…',
      default: 'squares',
      options: [
        { value: 'squares', meaning: 'squares with their sides upright' },
        { value: 'diamonds', meaning: 'rhombs on their points' },
      ],
    },
    {
      kind: 'angle',
      name: 'angle',
      meaning: 'Angle at the top of the diamonds.',
      say: 'diamonds would be … at the top',
      default: 60,
      min: 20,
      max: 160,
    },
  ],
  edge: { default: 11, meaning: "Length of the fields' edges." },
  kinds: SHADES,
  defaults: { plug: 'tiles', tiles: 'dark', wall: 1.6, centre: 'vertex' },
  source: (values) =>
    periodic(values.shape === 'squares' ? SQUARES : rhombCell(num(values, 'angle'), false), SHADES),
});
