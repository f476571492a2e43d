import { MM_PER_INCH, numberText, type Units } from '../../schema/units.js';

/** A length as it is read off a drawing: to a tenth of a millimetre or a hundredth of an inch, small ones finer. */
export function readOff(mm: number, units: Units): string {
  if (units === 'in') {
    const inches = mm / MM_PER_INCH;
    return `${numberText(inches, inches < 4 ? 3 : 2)} in`;
  }
  return `${numberText(mm, mm < 10 ? 2 : 1)} mm`;
}
