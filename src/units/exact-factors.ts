/**
 * Sizes of customary units in SI. Exact by definition unless a comment says otherwise.
 * Source: NIST SP 811 Appendix B; international yard and pound agreement of 1959.
 */

/** Inch [m]; exact. */
export const METRE_PER_INCH = 0.0254;
/** Foot [m]; exact. */
export const METRE_PER_FOOT = 0.3048;
/** Mile [m]; exact. */
export const METRE_PER_MILE = 1609.344;
/** Avoirdupois pound [kg]; exact. */
export const KILOGRAM_PER_POUND = 0.45359237;
/** US liquid gallon, 231 cubic inches [m3]; exact. */
export const CUBIC_METRE_PER_US_GALLON = 231 * METRE_PER_INCH ** 3;
/** Cubic foot [m3]; exact. */
export const CUBIC_METRE_PER_CUBIC_FOOT = METRE_PER_FOOT ** 3;
/** Standard acceleration of gravity [m/s2]; exact. */
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;
/** Standard atmosphere [Pa]; exact. */
export const PASCAL_PER_ATMOSPHERE = 101325;
/** Pound-force per square inch [Pa]; exact quotient. */
export const PASCAL_PER_PSI = (KILOGRAM_PER_POUND * STANDARD_GRAVITY_M_PER_S2) / METRE_PER_INCH ** 2;

/** Density of conventional water [kg/m3]; exact by convention. */
const WATER_CONVENTIONAL = 1000;
/** Density of water at 4 degC [kg/m3]. Source: tables of water at atmospheric pressure; gives SP 811's 249.082 Pa. */
const WATER_4C = 999.972;
/** Density of water at 60 degF [kg/m3]. Source: tables of water at atmospheric pressure; gives SP 811's 248.84 Pa. */
const WATER_60F = 999.014;
/** Density of water at 20 degC [kg/m3]. Source: tables of water at atmospheric pressure. */
const WATER_20C = 998.2071;
/** Density of conventional mercury [kg/m3]; exact by convention. */
const MERCURY_CONVENTIONAL = 13595.1;

const inchOf = (densityKgPerM3: number): number => densityKgPerM3 * STANDARD_GRAVITY_M_PER_S2 * METRE_PER_INCH;

/** Inch of water, conventional [Pa]; exact by convention, 249.08891. */
export const PASCAL_PER_INH2O = inchOf(WATER_CONVENTIONAL);
/** Inch of water at 4 degC [Pa]; 249.082. */
export const PASCAL_PER_INH2O_4C = inchOf(WATER_4C);
/** Inch of water at 60 degF [Pa]; 248.84. */
export const PASCAL_PER_INH2O_60F = inchOf(WATER_60F);
/** Inch of water at 20 degC [Pa]; 248.642. */
export const PASCAL_PER_INH2O_20C = inchOf(WATER_20C);
/** Millimetre of water, conventional [Pa]; exact by convention. */
export const PASCAL_PER_MMH2O = STANDARD_GRAVITY_M_PER_S2;
/** Inch of mercury, conventional [Pa]; exact by convention, 3386.389. */
export const PASCAL_PER_INHG = inchOf(MERCURY_CONVENTIONAL);
/** Millimetre of mercury, conventional [Pa]; exact by convention, 133.3224. */
export const PASCAL_PER_MMHG = (MERCURY_CONVENTIONAL * STANDARD_GRAVITY_M_PER_S2) / 1000;

/** Celsius zero [K]; exact. */
export const KELVIN_AT_ZERO_CELSIUS = 273.15;
/** Rankine temperature of zero degrees Fahrenheit [degR]; exact. */
export const RANKINE_AT_ZERO_FAHRENHEIT = 459.67;
/** Zero degrees Fahrenheit [K]. */
export const KELVIN_AT_ZERO_FAHRENHEIT = RANKINE_AT_ZERO_FAHRENHEIT / 1.8;
/** One degree Fahrenheit as a difference [K]; exact quotient. */
export const KELVIN_PER_FAHRENHEIT = 5 / 9;
