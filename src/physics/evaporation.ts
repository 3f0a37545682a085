/** Finite-rate evaporation and condensation between liquid fuel and the vapour space. */
import { MOLAR_GAS_CONSTANT } from './constants.ts';

/**
 * Mass transfer coefficient of still gas above a liquid [m/s].
 * Source: textbook range of natural convection, 0.001 to 0.01 m/s; judgement within it.
 */
export const STILL_MASS_TRANSFER_COEFFICIENT = 2e-3;

/**
 * Mass flow of evaporation; negative when vapour condenses.
 *
 * Valid: ideal gas, well mixed vapour space, vapour pressure below total pressure (no boiling).
 * Source: film theory of mass transfer, k A (psat - p) M / (R T).
 * @param massTransferCoefficient of the gas film [m/s]
 * @param surfaceAreaM2 liquid surface [m2]
 * @param saturationPressurePa vapour pressure of the liquid [Pa]
 * @param vapourPartialPressurePa partial pressure of fuel vapour in the gas [Pa]
 * @param temperatureK temperature of the surface [K]
 * @param vapourMolarMassKgPerMol molar mass of the fuel vapour [kg/mol]
 * @returns mass flow from liquid to gas [kg/s]
 */
export function evaporationMassFlow(
  massTransferCoefficient: number,
  surfaceAreaM2: number,
  saturationPressurePa: number,
  vapourPartialPressurePa: number,
  temperatureK: number,
  vapourMolarMassKgPerMol: number,
): number {
  return (
    (massTransferCoefficient *
      surfaceAreaM2 *
      (saturationPressurePa - vapourPartialPressurePa) *
      vapourMolarMassKgPerMol) /
    (MOLAR_GAS_CONSTANT * temperatureK)
  );
}

/**
 * Time constant with which a closed vapour space approaches saturation.
 *
 * Valid: constant temperature and volume, no flow.
 * Source: mass balance of a closed space with film theory, V / (k A).
 * @param volumeM3 volume of the vapour space [m3]
 * @param massTransferCoefficient of the gas film [m/s]
 * @param surfaceAreaM2 liquid surface [m2]
 * @returns time constant [s]
 */
export function saturationTimeConstant(
  volumeM3: number,
  massTransferCoefficient: number,
  surfaceAreaM2: number,
): number {
  return volumeM3 / (massTransferCoefficient * surfaceAreaM2);
}

/**
 * Pressure that evaporation gives back after gas was drawn from a saturated space and the space was sealed:
 * vapour refills its own share of the gas drawn off, air does not.
 *
 * Valid: slow draw, saturated before, air not replaced; 0 <= saturation pressure < total pressure.
 * Source: Dalton's law; both gases fall in proportion, the vapour recovers and the air does not.
 * @param saturationPressurePa vapour pressure of the liquid [Pa]
 * @param totalPressureAbsPa absolute pressure before the draw [Pa]
 * @param drawnPressurePa pressure taken off by the draw [Pa]
 * @returns pressure that evaporation gives back in the end [Pa]
 */
export function vapourRecoveryPressure(
  saturationPressurePa: number,
  totalPressureAbsPa: number,
  drawnPressurePa: number,
): number {
  return (saturationPressurePa * drawnPressurePa) / totalPressureAbsPa;
}
