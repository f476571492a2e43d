import { inRange, type Range } from './range.js';

/** What the handbook's table covers (30 to 270 F, 5 to 95 %); the equation is held to it. */
export const TEMPERATURE: Range = { min: -1.2, max: 132.3, unit: 'degrees C' };
export const HUMIDITY: Range = { min: 5, max: 95, unit: '%' };

/**
 * Equilibrium moisture content, %: what wood comes to when left long in air of that temperature (degrees C) and
 * relative humidity (%). Estimate: Wood Handbook FPL-GTR-282 equation (4-5), Celsius set, read in a transcription;
 *
 *   M = 1800/W [ Kh/(1-Kh) + (K1 Kh + 2 K1 K2 K^2 h^2) / (1 + K1 Kh + K1 K2 K^2 h^2) ]
 *
 * with h the relative humidity as a fraction. One curve for all woods, midway between wetting and drying, mostly from
 * spruce; by its makers' word a tenth of a percent only shows trends.
 * Throws BadInput for a temperature or humidity the table does not cover.
 */
export function equilibriumMoisture(temperature: number, humidity: number): number {
  inRange('temperature', temperature, TEMPERATURE);
  inRange('humidity', humidity, HUMIDITY);
  const t = temperature;
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = (k * humidity) / 100;
  const one = k1 * kh;
  const two = k1 * k2 * kh * kh;
  return (1800 / w) * (kh / (1 - kh) + (one + 2 * two) / (1 + one + two));
}
