import { numberText, type Units } from '../schema/units.js';

/** A volume for messages: cm3, or cubic inches. */
export function volumeText(mm3: number, units: Units): string {
  return units === 'mm'
    ? `${numberText(mm3 / 1000, 1)} cm\u00b3`
    : `${numberText(mm3 / (25.4 * 25.4 * 25.4), 2)} in\u00b3`;
}
