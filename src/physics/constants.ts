/**
 * Constants of the physics room: each with its unit and where it comes from.
 * Nothing here depends on a car; what differs from car to car belongs to the system room.
 */

/** Molar gas constant [J/(mol K)]. Source: SI 2019, exact product of Boltzmann and Avogadro constants. */
export const MOLAR_GAS_CONSTANT = 8.31446261815324;

/** Molar mass of dry air [kg/mol]. Source: CIPM-2007 composition rounded as used in handbooks of flow measurement. */
export const MOLAR_MASS_AIR = 0.0289647;

/** Specific gas constant of dry air [J/(kg K)]; R over M, 287.055. */
export const SPECIFIC_GAS_CONSTANT_AIR = MOLAR_GAS_CONSTANT / MOLAR_MASS_AIR;

/** Ratio of heat capacities of air [-]. Source: textbook value for a diatomic gas near room temperature. */
export const GAMMA_AIR = 1.4;

/** Heat capacity of air at constant pressure [J/(kg K)]; follows from gamma and the gas constant, 1004.7. */
export const HEAT_CAPACITY_CP_AIR = (GAMMA_AIR / (GAMMA_AIR - 1)) * SPECIFIC_GAS_CONSTANT_AIR;

/** Heat capacity of air at constant volume [J/(kg K)]; 717.6. */
export const HEAT_CAPACITY_CV_AIR = HEAT_CAPACITY_CP_AIR - SPECIFIC_GAS_CONSTANT_AIR;

/** Molar mass of molecular nitrogen, the gas of a workshop leak test [kg/mol]. Source: IUPAC atomic weights. */
export const MOLAR_MASS_NITROGEN = 0.0280134;

/** Molar mass of n-butane, the gas by which canister carbon is rated [kg/mol]. Source: IUPAC atomic weights. */
export const MOLAR_MASS_BUTANE = 0.0581222;

/** Standard atmosphere [Pa]. Source: exact by definition (10th CGPM). */
export const P_ATM = 101325;

/** Zero of the Celsius scale [K]. Source: exact by definition. */
export const ZERO_CELSIUS_K = 273.15;

/** Reference temperature of flow figures in this project, 20 degrees Celsius [K]. Source: convention of this project. */
export const REFERENCE_TEMPERATURE_K = 293.15;

/** Standard acceleration of gravity [m/s2]. Source: exact by definition (3rd CGPM). */
export const STANDARD_GRAVITY = 9.80665;

/** Dynamic viscosity of air at 20 degrees Celsius [Pa s]. Source: Sutherland's formula, textbook. */
export const VISCOSITY_AIR = 1.813e-5;

/**
 * Discharge coefficient of a thin sharp-edged hole [-], the one convention of every diameter in this project.
 * Source: textbook value for a sharp-edged orifice with a small diameter ratio; an OBD size limit names no coefficient.
 */
export const DISCHARGE_THIN_EDGE = 0.61;

/**
 * Relative pressure difference below which the orifice law turns to a laminar one [-]; 5 Pa at one atmosphere.
 * Source: judgement. A 0.5 mm hole has a Reynolds number near 100 there, where the square-root law is ending.
 */
export const ORIFICE_LAMINAR_RELATIVE_DROP = 5 / P_ATM;

/** The same transition at one atmosphere [Pa]. Source: judgement. */
export const ORIFICE_LAMINAR_PRESSURE_DIFFERENCE_PA = ORIFICE_LAMINAR_RELATIVE_DROP * P_ATM;

/**
 * Heat capacity of petrol vapour at constant pressure near 25 degrees Celsius [J/(kg K)].
 * Source: handbook values of n-butane (1.70 kJ/(kg K)) and n-pentane (1.67), the main constituents; from memory.
 */
export const HEAT_CAPACITY_CP_FUEL_VAPOUR = 1680;

/** Heat of vaporisation of the light ends of petrol [J/kg]. Source: handbook, 330 to 380 kJ/kg for butane to hexane; from memory. */
export const HEAT_OF_VAPORISATION_FUEL = 355e3;
