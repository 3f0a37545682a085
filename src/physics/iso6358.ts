/** Flow of a pneumatic part from its sonic conductance and critical pressure ratio, as on data sheets. */
import { chokedFlowFactor } from './orifice.ts';

/** Reference density of the standard reference atmosphere [kg/m3]. Source: ISO 6358 / ISO 8778. */
export const ISO6358_REFERENCE_DENSITY = 1.185;

/** Reference temperature of the standard reference atmosphere [K]. Source: ISO 6358 / ISO 8778. */
export const ISO6358_REFERENCE_TEMPERATURE_K = 293.15;

/**
 * Mass flow of a part by sonic conductance; one direction, elliptical below choking.
 *
 * Valid: air, 0 < critical ratio < 1, upstream at or above downstream pressure (0 otherwise).
 * Source: ISO 6358.
 * @param sonicConductance C [m3/(s Pa)]
 * @param criticalRatio b [-]
 * @param upstreamAbsPa absolute pressure upstream [Pa]
 * @param downstreamAbsPa absolute pressure downstream [Pa]
 * @param upstreamTemperatureK gas temperature upstream [K]
 * @returns mass flow [kg/s]
 */
export function iso6358MassFlow(
  sonicConductance: number,
  criticalRatio: number,
  upstreamAbsPa: number,
  downstreamAbsPa: number,
  upstreamTemperatureK: number,
): number {
  const ratio = downstreamAbsPa / upstreamAbsPa;
  if (ratio >= 1) return 0;
  const choked =
    sonicConductance *
    ISO6358_REFERENCE_DENSITY *
    upstreamAbsPa *
    Math.sqrt(ISO6358_REFERENCE_TEMPERATURE_K / upstreamTemperatureK);
  if (ratio <= criticalRatio) return choked;
  const ellipse = (ratio - criticalRatio) / (1 - criticalRatio);
  return choked * Math.sqrt(1 - ellipse * ellipse);
}

/**
 * Sonic conductance of a hole of given effective area: the same choked flow.
 *
 * Valid: choked flow of an ideal gas.
 * Source: ISO 6358 choked form equated with the isentropic choked orifice.
 * @param effectiveAreaM2 discharge coefficient times bore area [m2]
 * @param specificGasConstant of the gas [J/(kg K)]
 * @param gamma ratio of heat capacities [-]
 * @returns sonic conductance [m3/(s Pa)]
 */
export function sonicConductanceFromArea(effectiveAreaM2: number, specificGasConstant: number, gamma: number): number {
  return (
    (effectiveAreaM2 * chokedFlowFactor(gamma)) /
    (ISO6358_REFERENCE_DENSITY * Math.sqrt(specificGasConstant * ISO6358_REFERENCE_TEMPERATURE_K))
  );
}

/**
 * Effective area of a part of given sonic conductance: inverse of sonicConductanceFromArea.
 *
 * Valid: as sonicConductanceFromArea.
 * Source: as sonicConductanceFromArea.
 * @param sonicConductance C [m3/(s Pa)]
 * @param specificGasConstant of the gas [J/(kg K)]
 * @param gamma ratio of heat capacities [-]
 * @returns effective area [m2]
 */
export function areaFromSonicConductance(sonicConductance: number, specificGasConstant: number, gamma: number): number {
  return (
    (sonicConductance * ISO6358_REFERENCE_DENSITY * Math.sqrt(specificGasConstant * ISO6358_REFERENCE_TEMPERATURE_K)) /
    chokedFlowFactor(gamma)
  );
}
