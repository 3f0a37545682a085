/** Flow through a hose or line: laminar at small pressure drops, turbulent beyond, one smooth law over both. */

/** Sharpness of the join of laminar and turbulent flow [-]. Source: judgement; the join errs by 8 % at the crossing. */
const JOIN_EXPONENT = 8;

/** Blasius friction factor of a smooth tube, Darcy form f = 0.3164 Re^-0.25 [-]. Source: Blasius (1913). */
const BLASIUS = 0.3164;

/**
 * Laminar volume flow of a round tube.
 *
 * Valid: Reynolds number below about 2000, length many diameters, near-constant density.
 * Source: Hagen-Poiseuille law.
 * @param diameterM bore [m]
 * @param lengthM length [m]
 * @param viscosityPaS dynamic viscosity [Pa s]
 * @param pressureDropPa pressure on side 1 minus side 2 [Pa]
 * @returns volume flow, positive from 1 to 2 [m3/s]
 */
export function laminarTubeVolumeFlow(
  diameterM: number,
  lengthM: number,
  viscosityPaS: number,
  pressureDropPa: number,
): number {
  return ((Math.PI * diameterM ** 4) / (128 * viscosityPaS * lengthM)) * pressureDropPa;
}

/**
 * Turbulent volume flow of a smooth round tube; signed.
 *
 * Valid: Reynolds number 4000 to 100 000, length many diameters, near-constant density.
 * Source: Darcy-Weisbach law with the Blasius friction factor, solved for the flow.
 * @param diameterM bore [m]
 * @param lengthM length [m]
 * @param densityKgPerM3 density [kg/m3]
 * @param viscosityPaS dynamic viscosity [Pa s]
 * @param pressureDropPa pressure on side 1 minus side 2 [Pa]
 * @returns volume flow, positive from 1 to 2 [m3/s]
 */
export function turbulentTubeVolumeFlow(
  diameterM: number,
  lengthM: number,
  densityKgPerM3: number,
  viscosityPaS: number,
  pressureDropPa: number,
): number {
  // dp = f L/D rho v^2/2 with f = B (rho v D/mu)^-1/4  =>  v^(7/4) = 2 D^(5/4) dp / (B L rho^(3/4) mu^(1/4))
  const base =
    (2 * diameterM ** 1.25 * Math.abs(pressureDropPa)) /
    (BLASIUS * lengthM * densityKgPerM3 ** 0.75 * viscosityPaS ** 0.25);
  return Math.sign(pressureDropPa) * 0.25 * Math.PI * diameterM * diameterM * base ** (4 / 7);
}

/**
 * Signed volume flow of a smooth tube over both regimes; smooth, monotone, laminar at zero.
 *
 * Valid: Reynolds number up to 100 000; within 8 % of either law in the transition, which is itself uncertain.
 * Source: Hagen-Poiseuille and Blasius laws; their join is judgement.
 * @param diameterM bore [m]
 * @param lengthM length [m]
 * @param densityKgPerM3 density [kg/m3]
 * @param viscosityPaS dynamic viscosity [Pa s]
 * @param pressureDropPa pressure on side 1 minus side 2 [Pa]
 * @returns volume flow, positive from 1 to 2 [m3/s]
 */
export function tubeVolumeFlow(
  diameterM: number,
  lengthM: number,
  densityKgPerM3: number,
  viscosityPaS: number,
  pressureDropPa: number,
): number {
  if (pressureDropPa === 0) return 0;
  const laminar = laminarTubeVolumeFlow(diameterM, lengthM, viscosityPaS, pressureDropPa);
  const turbulent = turbulentTubeVolumeFlow(diameterM, lengthM, densityKgPerM3, viscosityPaS, pressureDropPa);
  return laminar * (1 + (laminar / turbulent) ** JOIN_EXPONENT) ** (-1 / JOIN_EXPONENT);
}

/**
 * Derivative of tubeVolumeFlow by the pressure drop.
 *
 * Valid: as tubeVolumeFlow.
 * Source: differentiation of the joined laws.
 * @param diameterM bore [m]
 * @param lengthM length [m]
 * @param densityKgPerM3 density [kg/m3]
 * @param viscosityPaS dynamic viscosity [Pa s]
 * @param pressureDropPa pressure on side 1 minus side 2 [Pa]
 * @returns derivative, always positive [m3/(s Pa)]
 */
export function tubeVolumeFlowDerivative(
  diameterM: number,
  lengthM: number,
  densityKgPerM3: number,
  viscosityPaS: number,
  pressureDropPa: number,
): number {
  const conductance = laminarTubeVolumeFlow(diameterM, lengthM, viscosityPaS, 1);
  if (pressureDropPa === 0) return conductance;
  const laminar = conductance * pressureDropPa;
  const turbulent = turbulentTubeVolumeFlow(diameterM, lengthM, densityKgPerM3, viscosityPaS, pressureDropPa);
  // Logarithmic slope: 1 while laminar, 4/7 while turbulent, weighted by the share of each.
  const share = (laminar / turbulent) ** JOIN_EXPONENT;
  const flow = laminar * (1 + share) ** (-1 / JOIN_EXPONENT);
  return (flow / pressureDropPa) * ((1 + (4 / 7) * share) / (1 + share));
}

/**
 * Signed mass flow of a smooth tube: the volume flow times the density.
 *
 * Valid: as tubeVolumeFlow.
 * Source: as tubeVolumeFlow.
 * @param diameterM bore [m]
 * @param lengthM length [m]
 * @param densityKgPerM3 density of the gas on the side of higher pressure [kg/m3]
 * @param viscosityPaS dynamic viscosity [Pa s]
 * @param pressureDropPa pressure on side 1 minus side 2 [Pa]
 * @returns mass flow, positive from 1 to 2 [kg/s]
 */
export function tubeMassFlow(
  diameterM: number,
  lengthM: number,
  densityKgPerM3: number,
  viscosityPaS: number,
  pressureDropPa: number,
): number {
  return densityKgPerM3 * tubeVolumeFlow(diameterM, lengthM, densityKgPerM3, viscosityPaS, pressureDropPa);
}

/**
 * Reynolds number of flow in a round tube, to tell which regime a result lies in.
 *
 * Valid: any flow.
 * Source: definition.
 * @param volumeFlowM3PerS volume flow [m3/s]
 * @param diameterM bore [m]
 * @param densityKgPerM3 density [kg/m3]
 * @param viscosityPaS dynamic viscosity [Pa s]
 * @returns Reynolds number, not negative [-]
 */
export function tubeReynoldsNumber(
  volumeFlowM3PerS: number,
  diameterM: number,
  densityKgPerM3: number,
  viscosityPaS: number,
): number {
  return (4 * densityKgPerM3 * Math.abs(volumeFlowM3PerS)) / (Math.PI * diameterM * viscosityPaS);
}
