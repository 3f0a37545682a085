/** Pressure and temperature of the standard atmosphere by altitude. */

/** Radius by which geometric becomes geopotential altitude [m]. Source: US Standard Atmosphere 1976. */
const EARTH_RADIUS_M = 6356766;
/** Temperature at sea level [K], lapse rate [K/m], pressure [Pa]. Source: US Standard Atmosphere 1976. */
const SEA_LEVEL_TEMPERATURE_K = 288.15;
const LAPSE_K_PER_M = 0.0065;
const SEA_LEVEL_PRESSURE_PA = 101325;
/** g M / (R* L) with the constants of that standard: 9.80665 0.0289644 / (8.31432 0.0065) [-]. */
const PRESSURE_EXPONENT = (9.80665 * 0.0289644) / (8.31432 * LAPSE_K_PER_M);

/**
 * Geopotential altitude of a geometric one.
 *
 * Valid: troposphere.
 * Source: US Standard Atmosphere 1976.
 * @param altitudeM height above sea level [m]
 * @returns geopotential altitude [m]
 */
export function geopotentialAltitude(altitudeM: number): number {
  return (EARTH_RADIUS_M * altitudeM) / (EARTH_RADIUS_M + altitudeM);
}

/**
 * Temperature of the standard atmosphere.
 *
 * Valid: -2000 to 11 000 m.
 * Source: US Standard Atmosphere 1976.
 * @param altitudeM height above sea level [m]
 * @returns temperature [K]
 */
export function standardTemperature(altitudeM: number): number {
  return SEA_LEVEL_TEMPERATURE_K - LAPSE_K_PER_M * geopotentialAltitude(altitudeM);
}

/**
 * Pressure of the standard atmosphere; weather moves the real one by a few per cent.
 *
 * Valid: -2000 to 11 000 m.
 * Source: US Standard Atmosphere 1976.
 * @param altitudeM height above sea level [m]
 * @returns absolute pressure [Pa]
 */
export function standardPressure(altitudeM: number): number {
  return SEA_LEVEL_PRESSURE_PA * (standardTemperature(altitudeM) / SEA_LEVEL_TEMPERATURE_K) ** PRESSURE_EXPONENT;
}

/**
 * Altitude at which the standard atmosphere has a pressure: inverse of standardPressure.
 *
 * Valid: 23 to 127 kPa.
 * Source: US Standard Atmosphere 1976.
 * @param pressureAbsPa absolute pressure [Pa]
 * @returns height above sea level [m]
 */
export function altitudeFromPressure(pressureAbsPa: number): number {
  const ratio = (pressureAbsPa / SEA_LEVEL_PRESSURE_PA) ** (1 / PRESSURE_EXPONENT);
  const geopotential = (SEA_LEVEL_TEMPERATURE_K * (1 - ratio)) / LAPSE_K_PER_M;
  return (EARTH_RADIUS_M * geopotential) / (EARTH_RADIUS_M - geopotential);
}
