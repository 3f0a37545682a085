/**
 * The one convention of leak size: the diameter of a thin sharp-edged hole of discharge coefficient 0.61
 * that flows as much as the leak. Two decimals of a millimetre are the usual print.
 */
import { DISCHARGE_THIN_EDGE } from './constants.ts';
import { orificeAreaFromMassFlow, orificeMassFlow } from './orifice.ts';

/** Equivalent diameter of the smaller common size limit, 0.020 in [m]; exact. A reference to compare with, not a legal ruling. */
export const LIMIT_DIAMETER_020_IN_M = 0.02 * 0.0254;

/** Equivalent diameter of the larger common size limit, 0.040 in [m]; exact. A reference to compare with, not a legal ruling. */
export const LIMIT_DIAMETER_040_IN_M = 0.04 * 0.0254;

/**
 * Effective area of a hole of an equivalent diameter.
 *
 * Valid: diameter >= 0; thin sharp edge.
 * Source: convention of this project, discharge coefficient 0.61 unless given.
 * @param diameterM equivalent diameter [m]
 * @param dischargeCoefficient discharge coefficient [-]
 * @returns effective area [m2]
 */
export function effectiveAreaFromDiameter(diameterM: number, dischargeCoefficient = DISCHARGE_THIN_EDGE): number {
  return 0.25 * Math.PI * dischargeCoefficient * diameterM * diameterM;
}

/**
 * Equivalent diameter of an effective area: inverse of effectiveAreaFromDiameter.
 *
 * Valid: area >= 0.
 * Source: convention of this project, discharge coefficient 0.61 unless given.
 * @param effectiveAreaM2 effective area [m2]
 * @param dischargeCoefficient discharge coefficient [-]
 * @returns equivalent diameter [m]
 */
export function diameterFromEffectiveArea(effectiveAreaM2: number, dischargeCoefficient = DISCHARGE_THIN_EDGE): number {
  return Math.sqrt((4 * effectiveAreaM2) / (Math.PI * dischargeCoefficient));
}

/**
 * Mass flow through a hole of an equivalent diameter.
 *
 * Valid: as orificeMassFlow.
 * Source: isentropic flow with the convention of this project.
 * @param diameterM equivalent diameter [m]
 * @param upstreamAbsPa absolute pressure upstream [Pa]
 * @param downstreamAbsPa absolute pressure downstream [Pa]
 * @param upstreamTemperatureK gas temperature upstream [K]
 * @param specificGasConstant of the gas [J/(kg K)]
 * @param gamma ratio of heat capacities [-]
 * @returns mass flow [kg/s]
 */
export function massFlowFromDiameter(
  diameterM: number,
  upstreamAbsPa: number,
  downstreamAbsPa: number,
  upstreamTemperatureK: number,
  specificGasConstant: number,
  gamma: number,
): number {
  return orificeMassFlow(
    effectiveAreaFromDiameter(diameterM),
    upstreamAbsPa,
    downstreamAbsPa,
    upstreamTemperatureK,
    specificGasConstant,
    gamma,
  );
}

/**
 * Equivalent diameter from a measured mass flow at known pressures, as in a leak test at constant pressure.
 *
 * Valid: upstream above downstream pressure; undefined otherwise. Subtract the flow of a blank run first.
 * Source: inversion of the isentropic law with the convention of this project.
 * @param massFlowKgPerS mass flow [kg/s]
 * @param upstreamAbsPa absolute pressure upstream [Pa]
 * @param downstreamAbsPa absolute pressure downstream [Pa]
 * @param upstreamTemperatureK gas temperature upstream [K]
 * @param specificGasConstant of the gas [J/(kg K)]
 * @param gamma ratio of heat capacities [-]
 * @returns equivalent diameter [m]
 */
export function diameterFromMassFlow(
  massFlowKgPerS: number,
  upstreamAbsPa: number,
  downstreamAbsPa: number,
  upstreamTemperatureK: number,
  specificGasConstant: number,
  gamma: number,
): number | undefined {
  const area = orificeAreaFromMassFlow(
    massFlowKgPerS,
    upstreamAbsPa,
    downstreamAbsPa,
    upstreamTemperatureK,
    specificGasConstant,
    gamma,
  );
  return area === undefined ? undefined : diameterFromEffectiveArea(area);
}

/**
 * One diameter for several holes in parallel: their areas add, their diameters do not.
 *
 * Valid: the same pressures and gas at every hole.
 * Source: additivity of flow.
 * @param diametersM equivalent diameters of the holes [m]
 * @returns equivalent diameter of all together [m]
 */
export function parallelDiameter(diametersM: readonly number[]): number {
  return Math.hypot(...diametersM);
}
