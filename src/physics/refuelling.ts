/** Vapour displaced by filling a tank. */
import { CUBIC_METRE_PER_US_GALLON, PASCAL_PER_PSI, RANKINE_AT_ZERO_FAHRENHEIT } from '../units/exact-factors.ts';

/** Highest dispensing rate of a petrol pump [m3/s]; 10 gal/min. Source: 40 CFR 80.22(j), now 1090.1550 (from memory). */
export const DISPENSING_RATE_CAP_M3_PER_S = (10 * CUBIC_METRE_PER_US_GALLON) / 60;

/** Emission with on-board recovery [kg/m3]; 0.0361 g/gal. Source: USEPA MOVES5. */
export const RECOVERED_REFUELLING_LOSS = 0.0361e-3 / CUBIC_METRE_PER_US_GALLON;

/** Spillage while filling [kg/m3]; 0.31 g/gal. Source: USEPA MOVES5. */
export const REFUELLING_SPILLAGE = 0.31e-3 / CUBIC_METRE_PER_US_GALLON;

/**
 * Temperature of dispensed fuel from the ambient temperature.
 *
 * Valid: ambient about 30 to 100 degF; the model clamps its input.
 * Source: USEPA MOVES5, 20.30 + 0.81 T in degF.
 * @param ambientTemperatureK ambient temperature [K]
 * @returns temperature of the dispensed fuel [K]
 */
export function dispensedTemperature(ambientTemperatureK: number): number {
  const ambientF = ambientTemperatureK * 1.8 - RANKINE_AT_ZERO_FAHRENHEIT;
  return (20.3 + 0.81 * ambientF + RANKINE_AT_ZERO_FAHRENHEIT) / 1.8;
}

/**
 * Temperature of tank fuel above dispensed fuel.
 *
 * Valid: dispensed temperature about 40 to 110 degF; limited to 0 to 20 degF.
 * Source: USEPA MOVES5, 0.418 Td - 16.6 in degF.
 * @param dispensedTemperatureK temperature of the dispensed fuel [K]
 * @returns temperature difference [K]
 */
export function tankOverDispensed(dispensedTemperatureK: number): number {
  const dispensedF = dispensedTemperatureK * 1.8 - RANKINE_AT_ZERO_FAHRENHEIT;
  return Math.min(20, Math.max(0, 0.418 * dispensedF - 16.6)) / 1.8;
}

/**
 * Vapour displaced per volume of fuel dispensed, without recovery.
 *
 * Valid: Reid vapour pressure 7 to 15 psi, dispensed fuel 40 to 100 degF.
 * Source: USEPA MOVES5 refuelling loss.
 * @param dispensedTemperatureK temperature of the dispensed fuel [K]
 * @param tankOverDispensedK tank fuel above dispensed fuel [K]
 * @param reidVapourPressurePa Reid vapour pressure [Pa]
 * @returns vapour mass per fuel volume [kg/m3]
 */
export function displacedVapour(
  dispensedTemperatureK: number,
  tankOverDispensedK: number,
  reidVapourPressurePa: number,
): number {
  const dispensedF = dispensedTemperatureK * 1.8 - RANKINE_AT_ZERO_FAHRENHEIT;
  const gramsPerGallon = Math.exp(
    -1.2798 -
      0.0049 * tankOverDispensedK * 1.8 +
      0.0203 * dispensedF +
      (0.1315 * reidVapourPressurePa) / PASCAL_PER_PSI,
  );
  return (gramsPerGallon * 1e-3) / CUBIC_METRE_PER_US_GALLON;
}

/**
 * Vapour displaced per volume dispensed by the older linear fit.
 *
 * Valid: Reid vapour pressure 7 to 15 psi, measured dispensed temperature.
 * Source: AP-42 5.2; from memory.
 * @param dispensedTemperatureK temperature of the dispensed fuel [K]
 * @param tankOverDispensedK tank fuel above dispensed fuel [K]
 * @param reidVapourPressurePa Reid vapour pressure [Pa]
 * @returns vapour mass per fuel volume [kg/m3]
 */
export function displacedVapourAp42(
  dispensedTemperatureK: number,
  tankOverDispensedK: number,
  reidVapourPressurePa: number,
): number {
  const dispensedF = dispensedTemperatureK * 1.8 - RANKINE_AT_ZERO_FAHRENHEIT;
  const milligramsPerLitre =
    264.2 *
    (-5.909 -
      0.0949 * tankOverDispensedK * 1.8 +
      0.0884 * dispensedF +
      (0.485 * reidVapourPressurePa) / PASCAL_PER_PSI);
  return milligramsPerLitre * 1e-3;
}

/**
 * Volume flow of gas that must leave a tank while it fills at steady pressure.
 *
 * Valid: incompressible liquid; growth is 0 when vapour entering with the air is neglected.
 * Source: continuity.
 * @param fillRateM3PerS volume flow of liquid in [m3/s]
 * @param vapourGrowth volume of vapour made or taken up per volume displaced [-]
 * @returns volume flow of gas out [m3/s]
 */
export function displacedGasFlow(fillRateM3PerS: number, vapourGrowth: number): number {
  return fillRateM3PerS * (1 + vapourGrowth);
}
