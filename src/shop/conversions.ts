import { MM_PER_INCH } from '../schema/units.js';

/**
 * Units of load and pressure. The pound-force and the inch are exact by definition (NIST SP 811 appendix B, from
 * memory), and the rest follows from them: 1 psi = 1 lbf / (25.4 mm)^2 = 6.894757... kPa; 1 kPa = 0.001 N/mm2.
 */
export const NEWTONS_PER_POUND = 4.4482216152605;

/** Newtons to a ton-force: US 2,000 lbf, metric 1,000 kg x 9.80665 m/s2. */
export const NEWTONS_PER_TON = { us: 2000 * NEWTONS_PER_POUND, metric: 9806.65 } as const;

export type Ton = keyof typeof NEWTONS_PER_TON;

export const KPA_PER_PSI = (1000 * NEWTONS_PER_POUND) / (MM_PER_INCH * MM_PER_INCH);

/** kPa of psi. */
export function fromPsi(psi: number): number {
  return psi * KPA_PER_PSI;
}

/** psi of kPa. */
export function toPsi(kPa: number): number {
  return kPa / KPA_PER_PSI;
}

/** N of tons-force. */
export function fromTons(tons: number, ton: Ton): number {
  return tons * NEWTONS_PER_TON[ton];
}

/** Tons-force of N. */
export function toTons(newtons: number, ton: Ton): number {
  return newtons / NEWTONS_PER_TON[ton];
}

/** kN of N. */
export function toKilonewtons(newtons: number): number {
  return newtons / 1000;
}
