/** Permeation of fuel through walls and hoses, which depends steeply on temperature. */

/** Exponent of permeation by temperature [1/degF]; doubles per 18 degF. Source: USEPA MOVES5; value from memory. */
export const PERMEATION_EXPONENT_PER_F = 0.0385;

/**
 * Ratio of permeation at one temperature to that at another.
 *
 * Valid: 50 to 110 degF.
 * Source: USEPA MOVES5, EvaporativePermeationCalculator.sql (structure confirmed; exponent from memory).
 * @param temperatureK temperature of the fuel system [K]
 * @param referenceTemperatureK temperature of the reference [K]
 * @returns ratio [-]
 */
export function permeationRatio(temperatureK: number, referenceTemperatureK: number): number {
  return Math.exp(PERMEATION_EXPONENT_PER_F * 1.8 * (temperatureK - referenceTemperatureK));
}
