/** What purged vapour does to the fuel trim. */

/** Air to fuel by mass at which petrol burns completely [-]. Source: textbook, 14.7 (petrol without ethanol). */
export const STOICHIOMETRIC_AIR_FUEL = 14.7;

/**
 * Air that a throttled four-stroke engine takes in, by speed and manifold pressure.
 *
 * Valid: warm engine, manifold temperature near ambient; an estimate within some 15 %.
 * Source: speed-density relation, textbook.
 * @param manifoldAbsPa manifold pressure [Pa]
 * @param engineSpeedRpm engine speed [1/min]
 * @param displacementM3 displacement [m3]
 * @param volumetricEfficiency share of the displacement filled [-]
 * @param manifoldGasConstantTemperature specific gas constant times temperature [J/kg]
 * @returns mass flow of air [kg/s]
 */
export function engineAirFlow(
  manifoldAbsPa: number,
  engineSpeedRpm: number,
  displacementM3: number,
  volumetricEfficiency: number,
  manifoldGasConstantTemperature: number,
): number {
  return (
    (volumetricEfficiency * manifoldAbsPa * displacementM3 * engineSpeedRpm) / (120 * manifoldGasConstantTemperature)
  );
}

/**
 * Fuel correction that keeps the mixture right while purge brings fuel and air of its own.
 *
 * Valid: closed loop, not limited by the module's authority (limit separately); small purge against engine air.
 * Source: fuel balance at stoichiometric mixture.
 * @param purgedVapourKgPerS fuel vapour from the purge [kg/s]
 * @param purgedAirKgPerS air from the purge that the air measurement does not see [kg/s]
 * @param engineAirKgPerS air that the engine takes in [kg/s]
 * @returns trim as a fraction; negative when fuel is taken away [-]
 */
export function purgeTrim(purgedVapourKgPerS: number, purgedAirKgPerS: number, engineAirKgPerS: number): number {
  if (engineAirKgPerS <= 0) return 0;
  return (purgedAirKgPerS - STOICHIOMETRIC_AIR_FUEL * purgedVapourKgPerS) / engineAirKgPerS;
}
