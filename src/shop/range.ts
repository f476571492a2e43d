import { BadInput } from '../schema/fault.js';
import { numberText } from '../schema/units.js';

/** A range a value may have, both ends included, with its unit for messages. */
export interface Range {
  readonly min: number;
  readonly max: number;
  readonly unit: string;
}

/** Throws BadInput, naming the value `where`, its range and what to do, unless `value` lies in the range. */
export function inRange(where: string, value: number, { min, max, unit }: Range): void {
  if (value >= min && value <= max) return;
  const given = Number.isFinite(value) ? `is ${numberText(value)} ${unit}` : 'is not a number';
  const end =
    max < Number.MAX_VALUE
      ? `from ${numberText(min)} to ${numberText(max)} ${unit}`
      : `of ${numberText(min)} ${unit} or more`;
  throw new BadInput([{ where, message: `${given}: give a value ${end}` }]);
}

/** Throws BadInput unless `value` is a finite number over zero. */
export function overZero(where: string, value: number, unit: string): void {
  if (value > 0 && Number.isFinite(value)) return;
  const given = Number.isFinite(value) ? `is ${numberText(value)} ${unit}` : 'is not a number';
  throw new BadInput([{ where, message: `${given}: give a value over 0 ${unit}` }]);
}

/** Zero or more, and finite. */
export function atLeastZero(unit: string): Range {
  return { min: 0, max: Number.MAX_VALUE, unit };
}
