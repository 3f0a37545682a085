/** Vapour that a tank generates over a rise of temperature: the Wade-Reddy equation. */
import {
  CUBIC_METRE_PER_US_GALLON,
  PASCAL_PER_INHG,
  PASCAL_PER_PSI,
  RANKINE_AT_ZERO_FAHRENHEIT,
} from '../units/exact-factors.ts';

/** Coefficients for one fuel at one altitude. */
export interface WadeReddyCoefficients {
  /** [g/gal] */
  readonly a: number;
  /** [1/psi] */
  readonly b: number;
  /** [1/degF] */
  readonly c: number;
}

/** The four sets of the emission model. Source: EPA-420-R-24-014 section 3.3; from memory. */
export const WADE_REDDY_COEFFICIENTS = {
  e0SeaLevel: { a: 0.00817, b: 0.2357, c: 0.0409 },
  e0Denver: { a: 0.00518, b: 0.2649, c: 0.0461 },
  e10SeaLevel: { a: 0.00875, b: 0.2056, c: 0.043 },
  e10Denver: { a: 0.00665, b: 0.2228, c: 0.0474 },
} as const satisfies Record<string, WadeReddyCoefficients>;

/** Barometer of the two altitudes [inHg]. Source: USEPA MOVES5. */
const LOW_ALTITUDE_INHG = 29.069;
const HIGH_ALTITUDE_INHG = 24.087;

/**
 * Vapour generated per volume of vapour space.
 *
 * Valid: Reid vapour pressure 7 to 13 psi, 40 to 105 degF; 0 when the temperature does not rise.
 * Source: Wade-Reddy equation as in USEPA MOVES5 (structure confirmed; coefficients from memory).
 * @param coefficients set for the fuel and altitude [g/gal, 1/psi, 1/degF]
 * @param reidVapourPressurePa Reid vapour pressure [Pa]
 * @param startTemperatureK temperature at the start [K]
 * @param endTemperatureK temperature at the end [K]
 * @returns vapour mass per volume of vapour space [kg/m3]
 */
export function vapourGeneration(
  coefficients: WadeReddyCoefficients,
  reidVapourPressurePa: number,
  startTemperatureK: number,
  endTemperatureK: number,
): number {
  if (endTemperatureK <= startTemperatureK) return 0;
  const { a, b, c } = coefficients;
  const start = startTemperatureK * 1.8 - RANKINE_AT_ZERO_FAHRENHEIT;
  const end = endTemperatureK * 1.8 - RANKINE_AT_ZERO_FAHRENHEIT;
  const gramsPerGallon =
    a * Math.exp((b * reidVapourPressurePa) / PASCAL_PER_PSI) * (Math.exp(c * end) - Math.exp(c * start));
  return (gramsPerGallon * 1e-3) / CUBIC_METRE_PER_US_GALLON;
}

/**
 * Vapour generation between sea level and the high altitude by the barometer.
 *
 * Valid: 24 to 29.1 inHg; extrapolates linearly, never below 0.
 * Source: USEPA MOVES5.
 * @param seaLevel generation at low altitude [kg/m3]
 * @param denver generation at high altitude [kg/m3]
 * @param barometerAbsPa ambient absolute pressure [Pa]
 * @returns generation at that barometer [kg/m3]
 */
export function vapourGenerationAtBarometer(seaLevel: number, denver: number, barometerAbsPa: number): number {
  const share = (barometerAbsPa / PASCAL_PER_INHG - LOW_ALTITUDE_INHG) / (HIGH_ALTITUDE_INHG - LOW_ALTITUDE_INHG);
  return Math.max(0, seaLevel + share * (denver - seaLevel));
}

/**
 * Vapour generation between fuel without ethanol and with ten per cent.
 *
 * Valid: ethanol 0 and up; held at the ten per cent value above.
 * Source: USEPA MOVES5.
 * @param withoutEthanol generation of E0 [kg/m3]
 * @param withTenPercent generation of E10 [kg/m3]
 * @param ethanolVolumeFraction volume of ethanol over volume of fuel [-]
 * @returns generation of the fuel [kg/m3]
 */
export function vapourGenerationAtEthanol(
  withoutEthanol: number,
  withTenPercent: number,
  ethanolVolumeFraction: number,
): number {
  const weight = Math.min(0.1, ethanolVolumeFraction) / 0.1;
  return withoutEthanol + weight * (withTenPercent - withoutEthanol);
}
