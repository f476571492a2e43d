import type { Region } from '../geometry/region.js';
import { BadInput } from '../schema/fault.js';
import { type Clause, clause, type LengthParameter, type Values } from '../schema/parameter.js';
import type { OutlineShape } from './outline.js';

/** A shape that can be drawn. */
export interface DrawnShape extends OutlineShape {
  /** The face, mm, wherever the shape finds it natural; `makeOutline` centres it. Throws BadInput on sizes at odds. */
  face(values: Values): Region;
  /** The face moved in by `margin` mm, exactly; `margin` is under `deepest`. */
  inner(values: Values, margin: number): Region;
  /** The margin at which nothing would be left, mm. */
  deepest(values: Values): number;
}

/** Every shape has a margin. */
export const margin: LengthParameter = {
  kind: 'length',
  name: 'margin',
  meaning: 'Wood left plain along every edge of the outline.',
  say: '… left plain at the edge',
  often: [0, 30],
  default: 6,
  min: 0,
  max: 1000,
};

export function length(name: string, meaning: string, say: Clause, value: number, min = 5): LengthParameter {
  return { kind: 'length', name, meaning, ...clause(say), default: value, min, max: 3000 };
}

export function bad(name: string, message: string): BadInput {
  return new BadInput([{ where: `outline.${name}`, message }]);
}

/** A length for a message: at most three decimals, no trailing zeros. */
export function mm(value: number): string {
  return `${Number(value.toFixed(3))} mm`;
}

export function size(values: Values, name: string): number {
  return Number(values[name]);
}
