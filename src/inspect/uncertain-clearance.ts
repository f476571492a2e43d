import { lengthText } from '../schema/units.js';
import { clearanceLimits } from '../shop/limits.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/**
 * A clearance smaller than the machine's accuracy: one wall off its line by that alone closes it. That both are off at
 * once, which the sheet's least clearance counts with, is rare, and with a usual clearance no reason to warn.
 */
export function uncertainClearance({ recipe: { fit, machine, units } }: Setup): Finding[] {
  if (fit.clearance >= machine.accuracy - 1e-9) return [];
  const { least, greatest } = clearanceLimits(fit.clearance, machine.accuracy);
  const text = (mm: number): string => lengthText(mm, units);
  return [
    {
      code: 'uncertain-clearance',
      severity: 'warn',
      where: null,
      numbers: { clearance: fit.clearance, accuracy: machine.accuracy, least, greatest },
      do:
        `The clearance of ${text(fit.clearance)} is less than the ${text(machine.accuracy)} that a cut wall may be off: the parts may come out with an interference of up to ${text(-least)} per side. ` +
        `Use a clearance of ${text(machine.accuracy)} or more, or measure the machine and give machine.accuracy.`,
    },
  ];
}
