/** The small pump of a leak-check module. */

/**
 * Volume flow of a small pump against a pressure difference: a straight line from free flow to nothing at stall.
 *
 * Valid: 0 to the stall pressure; beyond it the line goes on (gas is pushed back), as a leaky vane pump does.
 * Source: usual shape of a vane pump's characteristic; judgement.
 * @param pressureRisePa outlet less inlet pressure [Pa]
 * @param freeFlowM3PerS flow without pressure difference [m3/s]
 * @param stallPa pressure difference at which nothing flows [Pa]
 * @returns volume flow at inlet state [m3/s]
 */
export function pumpVolumeFlow(pressureRisePa: number, freeFlowM3PerS: number, stallPa: number): number {
  return freeFlowM3PerS * (1 - pressureRisePa / stallPa);
}

/**
 * Derivative of pumpVolumeFlow by the pressure difference.
 *
 * Valid: as pumpVolumeFlow.
 * Source: differentiation.
 * @param freeFlowM3PerS flow without pressure difference [m3/s]
 * @param stallPa pressure difference at which nothing flows [Pa]
 * @returns derivative, negative [m3/(s Pa)]
 */
export function pumpVolumeFlowDerivative(freeFlowM3PerS: number, stallPa: number): number {
  return -freeFlowM3PerS / stallPa;
}
