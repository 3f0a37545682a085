/** Vapour pressure, vapour molar mass and density of petrol. */
import {
  CUBIC_METRE_PER_US_GALLON,
  KILOGRAM_PER_POUND,
  PASCAL_PER_PSI,
  RANKINE_AT_ZERO_FAHRENHEIT,
} from '../units/exact-factors.ts';

/** Slope of the ASTM distillation curve at 10 % evaporated, motor petrol [degF/%]. Source: AP-42 7.1, Table 7.1-2 notes. */
export const ASTM_SLOPE_MOTOR_PETROL = 3;

/** AP-42's offset between degrees Fahrenheit and Rankine [degF]; it uses 459.6, not 459.67. Source: AP-42 7.1. */
const AP42_RANKINE_OFFSET = 459.6;

/** Liquid density at 60 degF [kg/m3]; 5.6 lb/gal. Source: AP-42 7.1, Table 7.1-2. */
export const PETROL_DENSITY_60F = (5.6 * KILOGRAM_PER_POUND) / CUBIC_METRE_PER_US_GALLON;

/** Molar mass of the liquid [kg/mol]. Source: AP-42 7.1, Table 7.1-2. */
export const PETROL_LIQUID_MOLAR_MASS = 0.092;

/** Volumetric expansion of petrol near room temperature [1/K]. Source: handbook, 0.00095; from memory. */
export const PETROL_EXPANSION_PER_K = 0.00095;

/** Vapour molar masses that AP-42 prints: Reid vapour pressure [psi], molar mass [kg/mol]. Source: AP-42 Table 7.1-2. */
const VAPOUR_MOLAR_MASS_TABLE = [
  [7, 0.068],
  [10, 0.066],
  [13, 0.062],
] as const;

/** Coefficients of ln P[psia] = A - B / T[degR]. */
export interface AntoineCoefficients {
  /** [-] */
  readonly a: number;
  /** [degR] */
  readonly bRankine: number;
}

/** AP-42's temperature: degrees Fahrenheit plus 459.6. */
function ap42Rankine(temperatureK: number): number {
  return temperatureK * 1.8 - RANKINE_AT_ZERO_FAHRENHEIT + AP42_RANKINE_OFFSET;
}

/**
 * True vapour pressure of petrol from its Reid vapour pressure: the equation of refined stocks, not of crude oil.
 *
 * Valid: Reid vapour pressure 2 to 20 psi, about 0 to 40 degC; 1 to 2 % from AP-42's own printed table.
 * Source: AP-42 7.1, Fig. 7.1-14b.
 * @param reidVapourPressurePa Reid vapour pressure [Pa]
 * @param temperatureK liquid surface temperature [K]
 * @param astmSlope slope of the distillation curve at 10 % [degF/%]
 * @returns true vapour pressure, absolute [Pa]
 */
export function trueVapourPressure(
  reidVapourPressurePa: number,
  temperatureK: number,
  astmSlope: number = ASTM_SLOPE_MOTOR_PETROL,
): number {
  const t = ap42Rankine(temperatureK);
  const logRvp = Math.log10(reidVapourPressurePa / PASCAL_PER_PSI);
  const rootS = Math.sqrt(astmSlope);
  const exponent =
    (0.7553 - 413 / t) * rootS * logRvp - (1.854 - 1042 / t) * rootS + (2416 / t - 2.013) * logRvp - 8742 / t + 15.64;
  return PASCAL_PER_PSI * Math.exp(exponent);
}

/**
 * The same law as two coefficients for one fuel, for use in loops.
 *
 * Valid: as trueVapourPressure; differs from it by AP-42's rounding of coefficients, below 0.2 %.
 * Source: AP-42 7.1, Fig. 7.1-15.
 * @param reidVapourPressurePa Reid vapour pressure [Pa]
 * @param astmSlope slope of the distillation curve at 10 % [degF/%]
 * @returns coefficients A [-] and B [degR]
 */
export function antoineCoefficients(
  reidVapourPressurePa: number,
  astmSlope: number = ASTM_SLOPE_MOTOR_PETROL,
): AntoineCoefficients {
  const logRvp = Math.log(reidVapourPressurePa / PASCAL_PER_PSI);
  const rootS = Math.sqrt(astmSlope);
  return {
    a: 15.64 - 1.854 * rootS - (0.8742 - 0.328 * rootS) * logRvp,
    bRankine: 8742 - 1042 * rootS - (1049 - 179.4 * rootS) * logRvp,
  };
}

/**
 * Vapour pressure from the two coefficients.
 *
 * Valid: as antoineCoefficients.
 * Source: AP-42 7.1.
 * @param a coefficient A [-]
 * @param bRankine coefficient B [degR]
 * @param temperatureK liquid surface temperature [K]
 * @returns true vapour pressure, absolute [Pa]
 */
export function antoineVapourPressure(a: number, bRankine: number, temperatureK: number): number {
  return PASCAL_PER_PSI * Math.exp(a - bRankine / ap42Rankine(temperatureK));
}

/**
 * Derivative of antoineVapourPressure by temperature.
 *
 * Valid: as antoineCoefficients.
 * Source: differentiation.
 * @param a coefficient A [-]
 * @param bRankine coefficient B [degR]
 * @param temperatureK liquid surface temperature [K]
 * @returns derivative [Pa/K]
 */
export function antoineVapourPressureDerivative(a: number, bRankine: number, temperatureK: number): number {
  const t = ap42Rankine(temperatureK);
  return (antoineVapourPressure(a, bRankine, temperatureK) * 1.8 * bRankine) / (t * t);
}

/**
 * Reid vapour pressure of petrol blended with ethanol, from that of the petrol before blending.
 *
 * Valid: ethanol 0 to 15 % by volume (the fit; a maximum lies near 10 %); 0 % returns the petrol's own.
 * Source: USEPA MOVES5, TankFuelGenerator.java (kGas and kEth).
 * @param basePetrolRvpPa Reid vapour pressure of the petrol before blending [Pa]
 * @param ethanolVolumeFraction volume of ethanol over volume of blend [-]
 * @returns Reid vapour pressure of the blend [Pa]
 */
export function blendReidVapourPressure(basePetrolRvpPa: number, ethanolVolumeFraction: number): number {
  const e = 100 * ethanolVolumeFraction;
  if (e <= 0) return basePetrolRvpPa;
  const kGas = ((-7e-7 * e + 2e-4) * e + 2.4e-3) * e + 1;
  const kEthanol = 46.321 * e ** -0.8422;
  const ethanolRvpPa = 2.3 * PASCAL_PER_PSI;
  return (kGas * (100 - e) * basePetrolRvpPa + kEthanol * e * ethanolRvpPa) / 100;
}

/**
 * Molar mass of petrol vapour by Reid vapour pressure.
 *
 * Valid: 7 to 13 psi; held at the end values outside.
 * Source: AP-42 Table 7.1-2 (68, 66 and 62 g/mol at 7, 10 and 13 psi), linear between.
 * @param reidVapourPressurePa Reid vapour pressure [Pa]
 * @returns molar mass of the vapour [kg/mol]
 */
export function vapourMolarMass(reidVapourPressurePa: number): number {
  const rvp = reidVapourPressurePa / PASCAL_PER_PSI;
  const [low, middle, high] = VAPOUR_MOLAR_MASS_TABLE;
  const [left, right] = rvp < middle[0] ? [low, middle] : [middle, high];
  const share = Math.min(1, Math.max(0, (rvp - left[0]) / (right[0] - left[0])));
  return left[1] + share * (right[1] - left[1]);
}

/**
 * Density of liquid petrol at a temperature.
 *
 * Valid: -20 to 50 degC, linear expansion.
 * Source: AP-42 Table 7.1-2 (5.6 lb/gal at 60 degF); expansion from memory.
 * @param temperatureK liquid temperature [K]
 * @param density60FKgPerM3 density at 60 degF [kg/m3]
 * @returns density [kg/m3]
 */
export function petrolDensity(temperatureK: number, density60FKgPerM3: number = PETROL_DENSITY_60F): number {
  const kelvinAt60F = (60 + RANKINE_AT_ZERO_FAHRENHEIT) / 1.8;
  return density60FKgPerM3 / (1 + PETROL_EXPANSION_PER_K * (temperatureK - kelvinAt60F));
}
