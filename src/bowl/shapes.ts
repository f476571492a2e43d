import type { LengthParameter } from '../schema/parameter.js';

/** A shape that a profile may have. Sizes are diameters, mm, as callipers take them. */
export interface ProfileShape {
  readonly name: 'straight' | 'arc' | 'curve';
  readonly title: string;
  readonly parameters: readonly LengthParameter[];
}

const across = (name: string, meaning: string, say: string, preset: number): LengthParameter => ({
  kind: 'length',
  name,
  meaning,
  say,
  default: preset,
  min: 1,
  max: 3000,
});

const bottom = across('bottom', 'Diameter at the lower end.', '… across at the bottom', 120);
const top = across('top', 'Diameter at the upper end.', '… across at the top', 180);

export const profileShapes: readonly ProfileShape[] = [
  { name: 'straight', title: 'Straight', parameters: [bottom, top] },
  {
    name: 'arc',
    title: 'Arc',
    parameters: [
      bottom,
      top,
      {
        kind: 'length',
        name: 'belly',
        meaning: 'How far the arc stands off the straight line between its ends, outwards above 0.',
        say: 'bellied out by …',
        default: 5,
        min: -500,
        max: 500,
      },
    ],
  },
  // Its points are a list, which is read apart.
  { name: 'curve', title: 'Curve through points', parameters: [] },
];
