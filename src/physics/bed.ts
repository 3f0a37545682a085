/** Flow through a packed bed or a filter: pressure drop as a linear plus a quadratic term in mass flow. */

/** Coefficients of a bed: drop = linear * m + quadratic * m |m|. */
export interface BedResistance {
  /** [Pa s/kg] */
  readonly linearPaSPerKg: number;
  /** [Pa s2/kg2] */
  readonly quadraticPaS2PerKg2: number;
}

/**
 * Signed mass flow through a bed from its pressure drop; smooth and monotone, linear at zero.
 *
 * Valid: linear coefficient > 0, quadratic coefficient >= 0; drop small against absolute pressure (a few kPa).
 * Source: Forchheimer's form of the Ergun equation, solved for the flow.
 * @param linearPaSPerKg linear coefficient [Pa s/kg]
 * @param quadraticPaS2PerKg2 quadratic coefficient [Pa s2/kg2]
 * @param pressureDropPa pressure on side 1 minus side 2 [Pa]
 * @returns mass flow, positive from 1 to 2 [kg/s]
 */
export function bedMassFlow(linearPaSPerKg: number, quadraticPaS2PerKg2: number, pressureDropPa: number): number {
  const root = Math.sqrt(linearPaSPerKg * linearPaSPerKg + 4 * quadraticPaS2PerKg2 * Math.abs(pressureDropPa));
  return (2 * pressureDropPa) / (linearPaSPerKg + root);
}

/**
 * Derivative of bedMassFlow by the pressure drop.
 *
 * Valid: as bedMassFlow.
 * Source: differentiation of Forchheimer's form.
 * @param linearPaSPerKg linear coefficient [Pa s/kg]
 * @param quadraticPaS2PerKg2 quadratic coefficient [Pa s2/kg2]
 * @param pressureDropPa pressure on side 1 minus side 2 [Pa]
 * @returns derivative, always positive [kg/(s Pa)]
 */
export function bedMassFlowDerivative(
  linearPaSPerKg: number,
  quadraticPaS2PerKg2: number,
  pressureDropPa: number,
): number {
  return 1 / Math.sqrt(linearPaSPerKg * linearPaSPerKg + 4 * quadraticPaS2PerKg2 * Math.abs(pressureDropPa));
}

/**
 * Pressure drop of a bed at a mass flow: the inverse of bedMassFlow.
 *
 * Valid: any sign of flow; coefficients as in bedMassFlow.
 * Source: Forchheimer's form of the Ergun equation.
 * @param linearPaSPerKg linear coefficient [Pa s/kg]
 * @param quadraticPaS2PerKg2 quadratic coefficient [Pa s2/kg2]
 * @param massFlowKgPerS mass flow, positive from 1 to 2 [kg/s]
 * @returns pressure on side 1 minus side 2 [Pa]
 */
export function bedPressureDrop(linearPaSPerKg: number, quadraticPaS2PerKg2: number, massFlowKgPerS: number): number {
  return linearPaSPerKg * massFlowKgPerS + quadraticPaS2PerKg2 * massFlowKgPerS * Math.abs(massFlowKgPerS);
}

/**
 * Coefficients of a bed of grains by the Ergun equation.
 *
 * Valid: 0.3 < void fraction < 0.6, particle Reynolds number up to about 1000, near-constant density.
 * Source: Ergun (1952), constants 150 and 1.75.
 * @param lengthM length of the bed [m]
 * @param areaM2 open cross-section of the empty vessel [m2]
 * @param particleDiameterM equivalent diameter of the grains [m]
 * @param voidFraction share of the bed volume between the grains [-]
 * @param densityKgPerM3 gas density [kg/m3]
 * @param viscosityPaS gas viscosity [Pa s]
 * @returns linear and quadratic coefficients [Pa s/kg], [Pa s2/kg2]
 */
export function ergunResistance(
  lengthM: number,
  areaM2: number,
  particleDiameterM: number,
  voidFraction: number,
  densityKgPerM3: number,
  viscosityPaS: number,
): BedResistance {
  const solid = 1 - voidFraction;
  const voidCubed = voidFraction ** 3;
  const fluxFromFlow = 1 / (densityKgPerM3 * areaM2);
  return {
    linearPaSPerKg:
      ((150 * viscosityPaS * solid * solid * lengthM) / (voidCubed * particleDiameterM * particleDiameterM)) *
      fluxFromFlow,
    quadraticPaS2PerKg2:
      ((1.75 * densityKgPerM3 * solid * lengthM) / (voidCubed * particleDiameterM)) * fluxFromFlow * fluxFromFlow,
  };
}
