/** Resistance of a solenoid's copper winding against temperature. */

/** Temperature coefficient of annealed copper at 20 degC [1/K]. Source: IEC 60028; coefficient from memory. */
export const COPPER_TEMPERATURE_COEFFICIENT = 0.00393;

const REFERENCE_K = 293.15;

/**
 * Resistance of a copper winding at a temperature.
 *
 * Valid: -50 to 150 degC.
 * Source: IEC 60028, R20 (1 + alpha (T - 20 degC)).
 * @param resistanceAt20COhm resistance at 20 degC [ohm]
 * @param temperatureK winding temperature [K]
 * @returns resistance [ohm]
 */
export function coilResistance(resistanceAt20COhm: number, temperatureK: number): number {
  return resistanceAt20COhm * (1 + COPPER_TEMPERATURE_COEFFICIENT * (temperatureK - REFERENCE_K));
}

/**
 * Winding temperature from its resistance: inverse of coilResistance.
 *
 * Valid: as coilResistance.
 * Source: IEC 60028.
 * @param resistanceAt20COhm resistance at 20 degC [ohm]
 * @param resistanceOhm resistance now [ohm]
 * @returns winding temperature [K]
 */
export function coilTemperature(resistanceAt20COhm: number, resistanceOhm: number): number {
  return REFERENCE_K + (resistanceOhm / resistanceAt20COhm - 1) / COPPER_TEMPERATURE_COEFFICIENT;
}

/**
 * Resistance at 20 degC from a reading at another temperature, to compare with a stated value.
 *
 * Valid: as coilResistance.
 * Source: IEC 60028.
 * @param resistanceOhm reading [ohm]
 * @param temperatureK winding temperature at the reading [K]
 * @returns resistance at 20 degC [ohm]
 */
export function coilResistanceAt20C(resistanceOhm: number, temperatureK: number): number {
  return resistanceOhm / (1 + COPPER_TEMPERATURE_COEFFICIENT * (temperatureK - REFERENCE_K));
}
