/** Saturated water vapour, for humid air. */
import { ZERO_CELSIUS_K } from './constants.ts';

/**
 * Vapour pressure of water over liquid.
 *
 * Valid: -20 to 50 degC, within 0.5 %.
 * Source: Magnus formula in the form of the WMO CIMO guide; from memory.
 * @param temperatureK temperature [K]
 * @returns saturation pressure [Pa]
 */
export function waterSaturationPressure(temperatureK: number): number {
  const t = temperatureK - ZERO_CELSIUS_K;
  return 611.2 * Math.exp((17.62 * t) / (243.12 + t));
}
