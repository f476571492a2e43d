import { BadInput } from '../schema/fault.js';
import {
  type AngleParameter,
  type Clause,
  type CountParameter,
  clause,
  type LengthParameter,
  type Values,
} from '../schema/parameter.js';

/** Every generator takes a seed, so that one can be put in another's place without touching the rest of a recipe. */
export const seed: CountParameter = {
  kind: 'count',
  name: 'seed',
  meaning:
    'Number that fixes every choice left to chance; patterns with no chance in them draw alike for any seed.',
  say: 'chance seed …',
  default: 1,
  min: 0,
  max: 1_000_000,
};

export const turn: AngleParameter = {
  kind: 'angle',
  name: 'turn',
  meaning: 'Turn of the whole pattern, counter-clockwise.',
  say: 'turned …',
  default: 0,
  min: -360,
  max: 360,
};

export function length(
  name: string,
  meaning: string,
  say: Clause,
  value: number,
  min: number,
  max = 1000,
): LengthParameter {
  return { kind: 'length', name, meaning, ...clause(say), default: value, min, max };
}

export function bad(name: string, message: string): BadInput {
  return new BadInput([{ where: `pattern.${name}`, message }]);
}

/** A length for a message: at most two decimals, no trailing zeros. */
export function mm(value: number): string {
  return `${Number(value.toFixed(2))} mm`;
}

/** A limit rounded down to a hundredth, so that the printed one works. */
export function floor(value: number): number {
  return Math.floor(value * 100) / 100;
}

/** A limit rounded up to a hundredth, so that the printed one works. */
export function ceil(value: number): number {
  return Math.ceil(value * 100) / 100;
}

export function num(values: Values, name: string): number {
  return Number(values[name]);
}
