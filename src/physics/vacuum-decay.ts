/** Decay of pressure through one hole in a rigid, isothermal space: the textbook law and its inverse. */

/**
 * Rate of the square-root law: the square root of the pressure difference falls by this much per second.
 *
 * Valid: pressure difference small against ambient; rigid, isothermal, no vapour generation.
 * Source: textbook orifice law, C A sqrt(2 R T p) / (2 V).
 * @param effectiveAreaM2 discharge coefficient times bore area [m2]
 * @param volumeM3 gas volume [m3]
 * @param temperatureK gas temperature [K]
 * @param ambientAbsPa ambient absolute pressure [Pa]
 * @param gasConstant specific gas constant [J/(kg K)]
 * @returns rate [Pa^0.5/s]
 */
export function decayRate(
  effectiveAreaM2: number,
  volumeM3: number,
  temperatureK: number,
  ambientAbsPa: number,
  gasConstant: number,
): number {
  return (effectiveAreaM2 * Math.sqrt(2 * gasConstant * temperatureK * ambientAbsPa)) / (2 * volumeM3);
}

/**
 * Pressure difference left after a time by the square-root law.
 *
 * Valid: as decayRate; reaches 0 in finite time and stays there.
 * Source: textbook orifice law integrated.
 * @param startDifferencePa pressure difference at the start, not negative [Pa]
 * @param timeS time [s]
 * @param ratePerS rate from decayRate [Pa^0.5/s]
 * @returns pressure difference [Pa]
 */
export function decayedDifference(startDifferencePa: number, timeS: number, ratePerS: number): number {
  const root = Math.sqrt(startDifferencePa) - ratePerS * timeS;
  return root > 0 ? root * root : 0;
}

/**
 * Time to fall from one pressure difference to another by the square-root law.
 *
 * Valid: as decayRate; start >= end >= 0.
 * Source: textbook orifice law integrated; 0.8 % short of the exact time from -2 kPa, 0.08 % short from +3 kPa.
 * @param startDifferencePa pressure difference at the start [Pa]
 * @param endDifferencePa pressure difference at the end [Pa]
 * @param ratePerS rate from decayRate [Pa^0.5/s]
 * @returns time [s]
 */
export function decayTime(startDifferencePa: number, endDifferencePa: number, ratePerS: number): number {
  return (Math.sqrt(startDifferencePa) - Math.sqrt(endDifferencePa)) / ratePerS;
}

/**
 * Effective area from an observed decay: the inverse of decayTime.
 *
 * Valid: as decayRate; a drift of temperature or vapour generation is not told apart from a leak.
 * Source: textbook orifice law inverted.
 * @param startDifferencePa pressure difference at the start [Pa]
 * @param endDifferencePa pressure difference at the end [Pa]
 * @param timeS time between [s]
 * @param volumeM3 gas volume [m3]
 * @param temperatureK gas temperature [K]
 * @param ambientAbsPa ambient absolute pressure [Pa]
 * @param gasConstant specific gas constant [J/(kg K)]
 * @returns effective area [m2]
 */
export function areaFromDecay(
  startDifferencePa: number,
  endDifferencePa: number,
  timeS: number,
  volumeM3: number,
  temperatureK: number,
  ambientAbsPa: number,
  gasConstant: number,
): number {
  const rootDifference = Math.sqrt(startDifferencePa) - Math.sqrt(endDifferencePa);
  return rootDifference / (timeS * decayRate(1, volumeM3, temperatureK, ambientAbsPa, gasConstant));
}

/**
 * Rate of pressure change of a rigid isothermal space from the mass that flows in.
 *
 * Valid: ideal gas of one kind, constant temperature and volume.
 * Source: ideal-gas law.
 * @param massFlowInKgPerS net mass flow in [kg/s]
 * @param volumeM3 gas volume [m3]
 * @param temperatureK gas temperature [K]
 * @param gasConstant specific gas constant [J/(kg K)]
 * @returns rate of pressure change [Pa/s]
 */
export function isothermalPressureRate(
  massFlowInKgPerS: number,
  volumeM3: number,
  temperatureK: number,
  gasConstant: number,
): number {
  return (massFlowInKgPerS * gasConstant * temperatureK) / volumeM3;
}

/**
 * Pressure drift of a sealed dry space per kelvin of gas temperature.
 *
 * Valid: ideal gas, no vapour; fuel vapour adds several times as much.
 * Source: ideal-gas law, p / T.
 * @param pressureAbsPa absolute pressure [Pa]
 * @param temperatureK gas temperature [K]
 * @returns drift [Pa/K]
 */
export function sealedTemperatureDrift(pressureAbsPa: number, temperatureK: number): number {
  return pressureAbsPa / temperatureK;
}
