import { polygon, type Region } from '../geometry/region.js';
import type { Values } from '../schema/parameter.js';
import { type DrawnShape, length, margin, size } from './shape.js';

/** One side of a many-sided blank: a symmetric trapezoid, standing. */
export const staveShape: DrawnShape = {
  name: 'stave',
  title: 'Stave',
  parameters: [
    length('bottom', 'Width at the bottom.', '… wide at the bottom', 70),
    length('top', 'Width at the top.', '… wide at the top', 100),
    length('height', 'Height along the middle.', '… high', 120),
    margin,
  ],
  face: (values) => stave(values, 0),
  inner: stave,
  deepest(values) {
    const { bottom, top, height, run } = sizes(values);
    // Half the height, or the inradius of the triangle that the sloping sides make with the longer end.
    const wide = Math.max(bottom, top);
    return Math.min(height / 2, (wide * height) / (Math.abs(top - bottom) + 2 * run));
  },
};

function sizes(values: Values): { bottom: number; top: number; height: number; run: number } {
  const bottom = size(values, 'bottom');
  const top = size(values, 'top');
  const height = size(values, 'height');
  const lean = (top - bottom) / 2;
  return { bottom, top, height, run: Math.sqrt(lean * lean + height * height) };
}

function stave(values: Values, m: number): Region {
  const { bottom, top, height, run } = sizes(values);
  // Each side moved in by m: the half width at height y is the face's less m * run / height.
  const half = (y: number): number => (bottom + (top - bottom) * (0.5 + y / height)) / 2 - (m * run) / height;
  const y = height / 2 - m;
  // A margin deeper than the shorter end is wide leaves a triangle.
  const slope = (top - bottom) / 2 / height;
  const tip = half(0) / -slope;
  const end = (at: number): [number, number][] =>
    half(at) > 0
      ? [
          [-half(at), at],
          [half(at), at],
        ]
      : [[0, tip]];
  return { contours: [polygon([...end(-y), ...end(y).reverse()])] };
}
