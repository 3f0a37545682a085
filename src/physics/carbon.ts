/** Activated carbon of a canister: how much it holds, how fast it takes up, and the heat of it. */
import { MOLAR_GAS_CONSTANT } from './constants.ts';

/** Parameters of the Langmuir isotherm of a carbon for fuel vapour. */
export interface LangmuirParameters {
  /** uptake at saturation, mass over mass of carbon [kg/kg] */
  readonly saturationKgPerKg: number;
  /** affinity at the reference temperature [1/Pa] */
  readonly affinityPerPa: number;
  /** heat of adsorption [J/mol] */
  readonly heatJPerMol: number;
  /** [K] */
  readonly referenceTemperatureK: number;
}

/**
 * Automotive carbon with butane-like vapour. Source: judgement, shaped so that the uptake at one atmosphere and 25 degC
 * is near 0.45 kg/kg and a purge with air leaves a heel; the heat is in the handbook range 35 to 60 kJ/mol.
 */
export const AUTOMOTIVE_CARBON: LangmuirParameters = {
  saturationKgPerKg: 0.47,
  affinityPerPa: 2e-4,
  heatJPerMol: 40e3,
  referenceTemperatureK: 298.15,
};

/** Rate constant of uptake [1/s]. Source: judgement; a grain of 2 mm loads within about a minute. */
export const CARBON_RATE_PER_S = 0.05;

/**
 * Adsorption potential: the work of compressing vapour from its partial pressure to saturation.
 *
 * Valid: 0 < partial pressure <= saturation pressure.
 * Source: Polanyi's potential theory.
 * @param temperatureK temperature [K]
 * @param partialPressurePa partial pressure of the vapour [Pa]
 * @param saturationPressurePa vapour pressure of its liquid [Pa]
 * @param molarMassKgPerMol molar mass [kg/mol]
 * @returns potential [J/kg]
 */
export function adsorptionPotential(
  temperatureK: number,
  partialPressurePa: number,
  saturationPressurePa: number,
  molarMassKgPerMol: number,
): number {
  return ((MOLAR_GAS_CONSTANT * temperatureK) / molarMassKgPerMol) * Math.log(saturationPressurePa / partialPressurePa);
}

/**
 * Equilibrium uptake by Dubinin and Astakhov.
 *
 * Valid: potential >= 0; for n-butane on Maxsorb III 298 to 328 K and 20 to 300 kPa.
 * Source: Saha et al., Int. J. Heat Mass Transfer 51 (2008) 1582; its parameters from memory, low confidence.
 * @param potentialJPerKg adsorption potential [J/kg]
 * @param limitingUptakeKgPerKg uptake at saturation [kg/kg]
 * @param characteristicEnergyJPerKg characteristic energy [J/kg]
 * @param exponent heterogeneity exponent [-]
 * @returns uptake, mass over mass of carbon [kg/kg]
 */
export function dubininAstakhovUptake(
  potentialJPerKg: number,
  limitingUptakeKgPerKg: number,
  characteristicEnergyJPerKg: number,
  exponent: number,
): number {
  return limitingUptakeKgPerKg * Math.exp(-((potentialJPerKg / characteristicEnergyJPerKg) ** exponent));
}

/**
 * Affinity of the Langmuir isotherm at a temperature.
 *
 * Valid: near room temperature, constant heat of adsorption.
 * Source: van 't Hoff's equation.
 * @param parameters of the carbon [kg/kg, 1/Pa, J/mol, K]
 * @param temperatureK temperature [K]
 * @returns affinity [1/Pa]
 */
export function langmuirAffinity(parameters: LangmuirParameters, temperatureK: number): number {
  const { affinityPerPa, heatJPerMol, referenceTemperatureK } = parameters;
  return affinityPerPa * Math.exp((heatJPerMol / MOLAR_GAS_CONSTANT) * (1 / temperatureK - 1 / referenceTemperatureK));
}

/**
 * Equilibrium uptake by Langmuir.
 *
 * Valid: partial pressure >= 0.
 * Source: Langmuir isotherm.
 * @param saturationKgPerKg uptake at saturation [kg/kg]
 * @param affinityPerPa affinity at the temperature [1/Pa]
 * @param partialPressurePa partial pressure of the vapour [Pa]
 * @returns uptake, mass over mass of carbon [kg/kg]
 */
export function langmuirUptake(saturationKgPerKg: number, affinityPerPa: number, partialPressurePa: number): number {
  const product = affinityPerPa * partialPressurePa;
  return (saturationKgPerKg * product) / (1 + product);
}

/**
 * Derivative of langmuirUptake by partial pressure.
 *
 * Valid: partial pressure >= 0.
 * Source: differentiation.
 * @param saturationKgPerKg uptake at saturation [kg/kg]
 * @param affinityPerPa affinity at the temperature [1/Pa]
 * @param partialPressurePa partial pressure of the vapour [Pa]
 * @returns derivative [1/Pa]
 */
export function langmuirUptakeDerivative(
  saturationKgPerKg: number,
  affinityPerPa: number,
  partialPressurePa: number,
): number {
  const denominator = 1 + affinityPerPa * partialPressurePa;
  return (saturationKgPerKg * affinityPerPa) / (denominator * denominator);
}

/**
 * Partial pressure in equilibrium with an uptake: inverse of langmuirUptake.
 *
 * Valid: 0 <= uptake < saturation; infinite at saturation.
 * Source: Langmuir isotherm.
 * @param saturationKgPerKg uptake at saturation [kg/kg]
 * @param affinityPerPa affinity at the temperature [1/Pa]
 * @param uptakeKgPerKg uptake [kg/kg]
 * @returns partial pressure [Pa]
 */
export function langmuirPressure(saturationKgPerKg: number, affinityPerPa: number, uptakeKgPerKg: number): number {
  return uptakeKgPerKg / (affinityPerPa * (saturationKgPerKg - uptakeKgPerKg));
}

/**
 * Rate of uptake towards equilibrium.
 *
 * Valid: grain small against the bed, near-linear approach.
 * Source: linear driving force (Glueckauf).
 * @param ratePerS rate constant [1/s]
 * @param equilibriumKgPerKg uptake in equilibrium with the gas [kg/kg]
 * @param uptakeKgPerKg uptake now [kg/kg]
 * @returns rate of uptake [kg/(kg s)]
 */
export function uptakeRate(ratePerS: number, equilibriumKgPerKg: number, uptakeKgPerKg: number): number {
  return ratePerS * (equilibriumKgPerKg - uptakeKgPerKg);
}

/**
 * Heat that adsorption releases.
 *
 * Valid: constant heat of adsorption; it really falls with loading.
 * Source: handbooks, 35 to 60 kJ/mol for n-butane on carbon; from memory.
 * @param adsorbedKgPerS mass flow into the carbon [kg/s]
 * @param heatJPerMol heat of adsorption [J/mol]
 * @param molarMassKgPerMol molar mass of the vapour [kg/mol]
 * @returns heat flow into the bed [W]
 */
export function adsorptionHeatFlow(adsorbedKgPerS: number, heatJPerMol: number, molarMassKgPerMol: number): number {
  return (adsorbedKgPerS * heatJPerMol) / molarMassKgPerMol;
}
