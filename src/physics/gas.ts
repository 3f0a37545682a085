/** The gas of a vapour system: an ideal mixture of air and fuel vapour. */
import {
  HEAT_CAPACITY_CP_AIR,
  HEAT_CAPACITY_CP_FUEL_VAPOUR,
  MOLAR_GAS_CONSTANT,
  SPECIFIC_GAS_CONSTANT_AIR,
} from './constants.ts';

/**
 * Specific gas constant of a gas from its molar mass.
 *
 * Valid: ideal gas.
 * Source: definition, molar gas constant over molar mass.
 * @param molarMassKgPerMol molar mass [kg/mol]
 * @returns specific gas constant [J/(kg K)]
 */
export function specificGasConstant(molarMassKgPerMol: number): number {
  return MOLAR_GAS_CONSTANT / molarMassKgPerMol;
}

/**
 * Specific gas constant of air mixed with fuel vapour.
 *
 * Valid: ideal mixture, 0 <= vapour mass fraction <= 1.
 * Source: Dalton's law; mass-weighted mean.
 * @param vapourMassFraction mass of fuel vapour over mass of gas [-]
 * @param vapourMolarMassKgPerMol molar mass of the fuel vapour [kg/mol]
 * @returns specific gas constant [J/(kg K)]
 */
export function mixtureSpecificGasConstant(vapourMassFraction: number, vapourMolarMassKgPerMol: number): number {
  return (
    (1 - vapourMassFraction) * SPECIFIC_GAS_CONSTANT_AIR +
    (vapourMassFraction * MOLAR_GAS_CONSTANT) / vapourMolarMassKgPerMol
  );
}

/**
 * Molar mass of air mixed with fuel vapour.
 *
 * Valid: ideal mixture, 0 <= vapour mass fraction <= 1.
 * Source: definition.
 * @param vapourMassFraction mass of fuel vapour over mass of gas [-]
 * @param vapourMolarMassKgPerMol molar mass of the fuel vapour [kg/mol]
 * @returns molar mass [kg/mol]
 */
export function mixtureMolarMass(vapourMassFraction: number, vapourMolarMassKgPerMol: number): number {
  return MOLAR_GAS_CONSTANT / mixtureSpecificGasConstant(vapourMassFraction, vapourMolarMassKgPerMol);
}

/**
 * Mole (volume) fraction of fuel vapour from its mass fraction.
 *
 * Valid: ideal mixture, 0 <= vapour mass fraction <= 1.
 * Source: definition.
 * @param vapourMassFraction mass of fuel vapour over mass of gas [-]
 * @param vapourMolarMassKgPerMol molar mass of the fuel vapour [kg/mol]
 * @returns mole fraction [-]
 */
export function vapourMoleFraction(vapourMassFraction: number, vapourMolarMassKgPerMol: number): number {
  const moles = vapourMassFraction / vapourMolarMassKgPerMol;
  return moles / (moles + ((1 - vapourMassFraction) * SPECIFIC_GAS_CONSTANT_AIR) / MOLAR_GAS_CONSTANT);
}

/**
 * Mass fraction of fuel vapour from its mole fraction: inverse of vapourMoleFraction.
 *
 * Valid: ideal mixture, 0 <= mole fraction <= 1.
 * Source: definition.
 * @param moleFraction moles of fuel vapour over moles of gas [-]
 * @param vapourMolarMassKgPerMol molar mass of the fuel vapour [kg/mol]
 * @returns mass fraction [-]
 */
export function vapourMassFraction(moleFraction: number, vapourMolarMassKgPerMol: number): number {
  const vapour = moleFraction * vapourMolarMassKgPerMol;
  return vapour / (vapour + ((1 - moleFraction) * MOLAR_GAS_CONSTANT) / SPECIFIC_GAS_CONSTANT_AIR);
}

/**
 * Heat capacity at constant pressure of air mixed with fuel vapour.
 *
 * Valid: near room temperature, 0 <= vapour mass fraction <= 1.
 * Source: mass-weighted mean of handbook values.
 * @param vapourMassFraction mass of fuel vapour over mass of gas [-]
 * @returns heat capacity [J/(kg K)]
 */
export function mixtureHeatCapacityCp(vapourMassFraction: number): number {
  return (1 - vapourMassFraction) * HEAT_CAPACITY_CP_AIR + vapourMassFraction * HEAT_CAPACITY_CP_FUEL_VAPOUR;
}

/**
 * Heat capacity at constant volume of air mixed with fuel vapour.
 *
 * Valid: as mixtureHeatCapacityCp.
 * Source: Mayer's relation.
 * @param vapourMassFraction mass of fuel vapour over mass of gas [-]
 * @param vapourMolarMassKgPerMol molar mass of the fuel vapour [kg/mol]
 * @returns heat capacity [J/(kg K)]
 */
export function mixtureHeatCapacityCv(vapourMassFraction: number, vapourMolarMassKgPerMol: number): number {
  return (
    mixtureHeatCapacityCp(vapourMassFraction) - mixtureSpecificGasConstant(vapourMassFraction, vapourMolarMassKgPerMol)
  );
}

/**
 * Ratio of heat capacities of air mixed with fuel vapour; 1.4 for air, near 1.08 for pure vapour.
 *
 * Valid: as mixtureHeatCapacityCp.
 * Source: definition.
 * @param vapourMassFraction mass of fuel vapour over mass of gas [-]
 * @param vapourMolarMassKgPerMol molar mass of the fuel vapour [kg/mol]
 * @returns ratio of heat capacities [-]
 */
export function mixtureGamma(vapourMassFraction: number, vapourMolarMassKgPerMol: number): number {
  const cp = mixtureHeatCapacityCp(vapourMassFraction);
  return cp / (cp - mixtureSpecificGasConstant(vapourMassFraction, vapourMolarMassKgPerMol));
}

/**
 * Density of an ideal gas.
 *
 * Valid: pressures of a vapour system, up to a few bar.
 * Source: ideal-gas law.
 * @param pressureAbsPa absolute pressure [Pa]
 * @param temperatureK temperature [K]
 * @param gasConstant specific gas constant [J/(kg K)]
 * @returns density [kg/m3]
 */
export function gasDensity(pressureAbsPa: number, temperatureK: number, gasConstant: number): number {
  return pressureAbsPa / (gasConstant * temperatureK);
}

/**
 * Pressure of air and fuel vapour together in a space.
 *
 * Valid: ideal mixture, volume > 0.
 * Source: ideal-gas law and Dalton's law.
 * @param airMassKg mass of air [kg]
 * @param vapourMassKg mass of fuel vapour [kg]
 * @param temperatureK gas temperature [K]
 * @param volumeM3 volume of the gas [m3]
 * @param vapourGasConstant specific gas constant of the fuel vapour [J/(kg K)]
 * @returns absolute pressure [Pa]
 */
export function mixturePressure(
  airMassKg: number,
  vapourMassKg: number,
  temperatureK: number,
  volumeM3: number,
  vapourGasConstant: number,
): number {
  return ((airMassKg * SPECIFIC_GAS_CONSTANT_AIR + vapourMassKg * vapourGasConstant) * temperatureK) / volumeM3;
}

/**
 * Partial pressure of one gas in a space.
 *
 * Valid: ideal gas, volume > 0.
 * Source: Dalton's law.
 * @param massKg mass of the gas [kg]
 * @param temperatureK gas temperature [K]
 * @param volumeM3 volume [m3]
 * @param gasConstant specific gas constant of the gas [J/(kg K)]
 * @returns partial pressure [Pa]
 */
export function partialPressure(massKg: number, temperatureK: number, volumeM3: number, gasConstant: number): number {
  return (massKg * gasConstant * temperatureK) / volumeM3;
}

/**
 * Standard volume flow of a mass flow: the volume it fills at a stated reference state.
 *
 * Valid: ideal gas.
 * Source: ideal-gas law.
 * @param massFlowKgPerS mass flow [kg/s]
 * @param referencePressureAbsPa reference absolute pressure [Pa]
 * @param referenceTemperatureK reference temperature [K]
 * @param gasConstant specific gas constant [J/(kg K)]
 * @returns volume flow at the reference state [m3/s]
 */
export function standardVolumeFlow(
  massFlowKgPerS: number,
  referencePressureAbsPa: number,
  referenceTemperatureK: number,
  gasConstant: number,
): number {
  return (massFlowKgPerS * gasConstant * referenceTemperatureK) / referencePressureAbsPa;
}

/**
 * Mass of a gas in a unit volume of mixture, from its volume fraction, as safety limits are quoted.
 *
 * Valid: ideal gas.
 * Source: ideal-gas law.
 * @param moleFraction volume fraction of the gas [-]
 * @param pressureAbsPa absolute pressure of the mixture [Pa]
 * @param temperatureK temperature [K]
 * @param molarMassKgPerMol molar mass of the gas [kg/mol]
 * @returns mass concentration [kg/m3]
 */
export function massConcentration(
  moleFraction: number,
  pressureAbsPa: number,
  temperatureK: number,
  molarMassKgPerMol: number,
): number {
  return (moleFraction * pressureAbsPa * molarMassKgPerMol) / (MOLAR_GAS_CONSTANT * temperatureK);
}
